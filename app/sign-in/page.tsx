import type { Metadata } from 'next'
import { readSettings } from '#lib/env.ts'
import { currentSession, pathWithin } from '../_http/actor.ts'
import { redirect } from '../_http/redirect.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { Notice } from '../_ui/notice.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { sendLink, signIn } from './actions.ts'
import { linkFields, passwordFields } from './fields.ts'

const t = words('account')

export const generateMetadata = (): Metadata => ({ title: t('signIn.title'), robots: { index: false } })

/** Every way in that this site offers. */
export default async function SignIn({ searchParams }: { searchParams: Promise<Query> }) {
  const search = await searchParams
  const to = pathWithin(first(search.to))
  if ((await currentSession()) !== null) redirect(to)
  const { mail, oidc } = readSettings()
  const faulty = t('form.faulty')
  return (
    <>
      <PageHead title={t('signIn.title')} lead={t('signIn.lead')} />
      {first(search.problem) !== undefined && (
        <Notice kind="caution" title={t('signIn.serviceFailed')}>
          <p>{t(first(search.problem) === 'address' ? 'signIn.serviceAddress' : 'signIn.serviceAgain')}</p>
        </Notice>
      )}
      <Section id="password" title={t('signIn.withPassword')}>
        <ActionForm
          id="sign-in"
          action={signIn}
          fields={passwordFields()}
          hidden={{ to }}
          send={t('signIn.send')}
          faulty={faulty}
        />
        {mail === undefined && <p>{t('signIn.noMail')}</p>}
      </Section>
      {mail !== undefined && (
        <Section id="link" title={t('signIn.withLink')} note={t('signIn.withLinkNote')}>
          <ActionForm
            id="send-link"
            action={sendLink}
            fields={linkFields()}
            send={t('signIn.sendLink')}
            faulty={faulty}
            plain
          />
        </Section>
      )}
      {oidc !== undefined && (
        <Section id="service" title={t('signIn.withService')}>
          <p>
            <a className="button button-plain" href={`/sign-in/service?${new URLSearchParams({ to })}`}>
              {t('signIn.service', { name: oidc.name })}
            </a>
          </p>
        </Section>
      )}
      <Section id="new" title={t('signIn.noAccount')}>
        <p>
          {t('signIn.noAccountLead')}{' '}
          <a href={addressWith('/sign-up', { to: first(search.to) })}>{t('signUp.title')}</a>
        </p>
      </Section>
    </>
  )
}
