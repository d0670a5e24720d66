import type { Metadata } from 'next'
import { listSessions } from '#lib/db/sessions.ts'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { enterWithSession } from '../_http/actor.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { Facts } from '../_ui/facts.tsx'
import { Notice } from '../_ui/notice.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { formatList } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { signOut } from './actions.ts'
import { CloseSection, LanguageSection, PasswordSection, WhoSection } from './own-forms.tsx'
import { SessionsSection } from './sessions.tsx'

const t = words('account')
const inReview = words('review')

export const generateMetadata = (): Metadata => ({ title: t('account.title'), robots: { index: false } })

/** Everything about one's own account. */
export default async function Account({ searchParams }: { searchParams: Promise<Query> }) {
  const ended = first((await searchParams).ended)
  const session = await enterWithSession('/account', '/account')
  const unconfirmed = sendsMail() && session.emailVerifiedAt === null
  return (
    <>
      <PageHead title={session.name} kicker={t('account.title')} lead={t('account.lead')} />
      {unconfirmed && (
        <Notice kind="note" title={t('account.unconfirmed')}>
          <p>{t('account.unconfirmedLead')}</p>
        </Notice>
      )}
      <Section id="work" title={t('account.work')}>
        <p className="facts-line">
          <a href="/write">{t('account.write')}</a>
          <a href="/account/sheets">{words('kept')('title')}</a>
          <a href="/notices">{inReview('notices.title')}</a>
          <a href="/due">{inReview('due.title')}</a>
          {session.roles.includes('reviewer') && <a href="/review">{inReview('desk.title')}</a>}
          {session.roles.includes('steward') && <a href="/steward">{words('steward')('title')}</a>}
        </p>
      </Section>
      <Section id="who" title={t('account.who')}>
        <Facts
          facts={{
            [t('field.email')]: session.email ?? t('account.noAddress'),
            [t('account.roles')]:
              session.roles.length === 0
                ? t('account.reader')
                : formatList(session.roles.map((role) => t(`role.${role}`))),
            [t('account.key')]: session.key,
          }}
        />
        <ActionForm
          id="sign-out"
          action={signOut}
          send={t('account.signOut')}
          faulty={t('form.faulty')}
          plain
        />
      </Section>
      <WhoSection session={session} />
      <LanguageSection session={session} />
      <PasswordSection session={session} />
      <SessionsSection
        sessions={await listSessions(session.accountId)}
        own={session.sessionId}
        ended={ended}
      />
      <Section id="export" title={t('account.export')}>
        <p>{t('account.exportLead')}</p>
        <p>
          <a className="button button-plain" href="/account/export" download>
            {t('account.exportSend')}
          </a>
        </p>
      </Section>
      <CloseSection session={session} />
    </>
  )
}
