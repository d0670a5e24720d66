import type { Metadata } from 'next'
import { openLink } from '#lib/auth/links.ts'
import { currentSession, signInPath } from '../../_http/actor.ts'
import { ActionForm } from '../../_ui/action-form.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { first, type Query } from '../../_ui/query.ts'
import { words } from '../../_words/index.ts'
import { redeemLink } from '../actions.ts'
import { NAME, NEW_PASSWORD, newPersonFields } from '../fields.ts'

const t = words('account')

export const generateMetadata = (): Metadata => ({
  title: t('link.title'),
  robots: { index: false },
  referrer: 'no-referrer',
})

/** Asks before a one-time link is used up: what only looks at mail would otherwise use it. */
export default async function OpenLink({ searchParams }: { searchParams: Promise<Query> }) {
  const secret = first((await searchParams).secret) ?? ''
  const opened = await openLink(secret, await currentSession())
  if (opened === null)
    return (
      <PageHead title={t('link.over')} lead={t('link.overLead')}>
        <p className="facts-line">
          <a href="/sign-in">{t('signIn.title')}</a>
        </p>
      </PageHead>
    )
  const { link, asks } = opened
  const lead = t(`link.${link.purpose}`, { email: link.email ?? '' })
  if (asks === 'sign-in')
    return (
      <PageHead title={t('link.title')} lead={lead}>
        <p>
          {t('link.signInFirst')}{' '}
          <a href={signInPath(`/sign-in/link?${new URLSearchParams({ secret })}`)}>{t('signIn.title')}</a>
        </p>
      </PageHead>
    )
  const optional = { ...NEW_PASSWORD, required: false, hint: t('hint.passwordOptional') }
  const fields = { nothing: [], name: [NAME, optional], all: newPersonFields() }[asks]
  return (
    <>
      <PageHead title={t('link.title')} lead={lead} />
      <ActionForm
        id="use-link"
        action={redeemLink}
        fields={fields}
        hidden={{ secret }}
        send={t(`link.send.${link.purpose}`)}
        faulty={t('form.faulty')}
      />
    </>
  )
}
