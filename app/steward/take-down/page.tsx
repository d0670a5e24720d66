import type { Metadata } from 'next'
import { v7 } from 'uuid'
import { enter } from '../../_http/actor.ts'
import { ActionForm, type FormField } from '../../_ui/action-form.tsx'
import { NotYours } from '../../_ui/not-yours.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { first, type Query } from '../../_ui/query.ts'
import { Section } from '../../_ui/section.tsx'
import { words } from '../../_words/index.ts'
import { eraseBody, erasePhoto, restoreEntry, withdrawEntry } from '../actions.ts'
import { StewardPlaces } from '../places.tsx'
import { GROUND, NUMBER, SHA256, SLUG, WORDS } from './fields.ts'

const t = words('steward')

export const generateMetadata = (): Metadata => ({ title: t('takeDown.title'), robots: { index: false } })

/** Taking down, putting back and erasing; each is put on record with its reason. */
export default async function TakeDown({ searchParams }: { searchParams: Promise<Query> }) {
  if ((await enter('/steward/take-down', '/steward/take-down')) === null) return <NotYours />
  const asked = first((await searchParams).slug)?.slice(0, 80)
  const slug: FormField = { ...SLUG, ...(asked !== undefined && { value: asked }) }
  const faulty = words('account')('form.faulty')
  return (
    <>
      <PageHead title={t('takeDown.title')} kicker={t('title')} lead={t('takeDown.lead')}>
        <StewardPlaces />
      </PageHead>
      <Section id="withdraw" title={t('takeDown.withdraw')}>
        <ActionForm
          id="withdraw-entry"
          action={withdrawEntry}
          hidden={{ key: v7() }}
          fields={[slug, WORDS]}
          send={t('takeDown.withdrawSend')}
          faulty={faulty}
        />
      </Section>
      <Section id="restore" title={t('takeDown.restore')}>
        <ActionForm
          id="restore-entry"
          action={restoreEntry}
          hidden={{ key: v7() }}
          fields={[slug, WORDS]}
          send={t('takeDown.restoreSend')}
          faulty={faulty}
        />
      </Section>
      <Section id="erase" title={t('takeDown.erase')} note={t('takeDown.eraseNote')}>
        <ActionForm
          id="erase-body"
          action={eraseBody}
          hidden={{ key: v7() }}
          fields={[slug, NUMBER, GROUND, WORDS]}
          send={t('takeDown.eraseSend')}
          faulty={faulty}
        />
      </Section>
      <Section id="photo" title={t('takeDown.photo')} note={t('takeDown.photoNote')}>
        <ActionForm
          id="erase-photo"
          action={erasePhoto}
          fields={[SHA256, GROUND, WORDS]}
          send={t('takeDown.photoSend')}
          faulty={faulty}
        />
      </Section>
    </>
  )
}
