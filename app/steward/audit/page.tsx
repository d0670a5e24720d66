import type { Metadata } from 'next'
import { actsDone, listActs } from '#lib/db/audit.ts'
import { enter } from '../../_http/actor.ts'
import { Field, SelectField } from '../../_ui/field.tsx'
import { ListForm } from '../../_ui/list-form.tsx'
import { backToStart, NextPage } from '../../_ui/next-page.tsx'
import { NotYours } from '../../_ui/not-yours.tsx'
import { PageHead } from '../../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query } from '../../_ui/query.ts'
import { words } from '../../_words/index.ts'
import { StewardPlaces } from '../places.tsx'
import { ActsTable } from './acts-table.tsx'

const t = words('steward')

export const generateMetadata = (): Metadata => ({ title: t('audit.title'), robots: { index: false } })

/** Who did what and when. */
export default async function Audit({ searchParams }: { searchParams: Promise<Query> }) {
  const search = await searchParams
  const here = addressWith('/steward/audit', { act: first(search.act), person: first(search.person) })
  if ((await enter('/steward/audit', here)) === null) return <NotYours />
  const acts = await actsDone()
  const choices = {
    act: oneOf(acts, search.act),
    person: first(search.person)?.slice(0, 80),
    subject: first(search.subject)?.slice(0, 80),
  }
  const { person: actorKey, ...rest } = choices
  const { lines, next } = await listActs({ ...rest, actorKey }, { after: first(search.after) }).catch(
    backToStart('/steward/audit'),
  )
  return (
    <>
      <PageHead title={t('audit.title')} kicker={t('title')} lead={t('audit.lead')}>
        <StewardPlaces />
      </PageHead>
      <ListForm action="/steward/audit" send={t('audit.show')}>
        <SelectField
          name="act"
          label={t('audit.act')}
          any={t('audit.anyAct')}
          {...(choices.act !== undefined && { value: choices.act })}
          options={acts.map((act) => ({ value: act, label: act.replaceAll('-', ' ') }))}
        />
        <Field name="person" label={t('audit.person')}>
          {(control) => <input {...control} type="text" maxLength={80} defaultValue={choices.person} />}
        </Field>
        <Field name="subject" label={t('audit.subject')} hint={t('audit.subjectHint')}>
          {(control) => <input {...control} type="text" maxLength={80} defaultValue={choices.subject} />}
        </Field>
      </ListForm>
      <ActsTable lines={lines} />
      <NextPage path="/steward/audit" choices={choices} after={first(search.after)} next={next} />
    </>
  )
}
