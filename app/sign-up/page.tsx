import type { Metadata } from 'next'
import { sendsMail } from '#lib/mail/send-mail.ts'
import { currentSession, pathWithin } from '../_http/actor.ts'
import { redirect } from '../_http/redirect.ts'
import { ActionForm } from '../_ui/action-form.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { words } from '../_words/index.ts'
import { sendLink, signUp } from '../sign-in/actions.ts'
import { linkFields, newPersonFields } from '../sign-in/fields.ts'

const t = words('account')

export const generateMetadata = (): Metadata => ({ title: t('signUp.title'), robots: { index: false } })

/** How to get an account: by mail where the site sends any, and with a password at once where it does not. */
export default async function SignUp({ searchParams }: { searchParams: Promise<Query> }) {
  const to = pathWithin(first((await searchParams).to))
  if ((await currentSession()) !== null) redirect(to)
  return (
    <>
      <PageHead title={t('signUp.title')} lead={t('signUp.lead')} />
      <Section
        id="open"
        title={t('signUp.open')}
        note={t(sendsMail() ? 'signUp.byMail' : 'signUp.withoutMail')}
      >
        {sendsMail() ? (
          <ActionForm
            id="send-link"
            action={sendLink}
            fields={linkFields()}
            send={t('signIn.sendLink')}
            faulty={t('form.faulty')}
          />
        ) : (
          <ActionForm
            id="sign-up"
            action={signUp}
            fields={newPersonFields()}
            hidden={{ to }}
            send={t('signUp.send')}
            faulty={t('form.faulty')}
          />
        )}
      </Section>
      <Section id="kept" title={t('signUp.kept')}>
        <p>{t('signUp.keptLead')}</p>
      </Section>
    </>
  )
}
