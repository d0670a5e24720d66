import type { Metadata } from 'next'
import { ROLES } from '#lib/access/actor.ts'
import { isRole, listPeople } from '#lib/db/accounts.ts'
import { enter } from '../_http/actor.ts'
import { Field, SelectField } from '../_ui/field.tsx'
import { ListForm } from '../_ui/list-form.tsx'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { NotYours } from '../_ui/not-yours.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, type Query } from '../_ui/query.ts'
import { words } from '../_words/index.ts'
import { PeopleTable } from './people-table.tsx'
import { StewardPlaces } from './places.tsx'

const t = words('steward')

export const generateMetadata = (): Metadata => ({ title: t('people.title'), robots: { index: false } })

/** Everybody with an account, to name reviewers among. */
export default async function People({ searchParams }: { searchParams: Promise<Query> }) {
  const search = await searchParams
  const choices = { q: first(search.q)?.slice(0, 100), role: first(search.role) }
  if ((await enter('/steward', addressWith('/steward', choices))) === null) return <NotYours />
  const role = choices.role !== undefined && isRole(choices.role) ? choices.role : undefined
  const { people, next } = await listPeople({ words: choices.q, role }, { after: first(search.after) }).catch(
    backToStart('/steward'),
  )
  return (
    <>
      <PageHead title={t('people.title')} kicker={t('title')} lead={t('people.lead')}>
        <StewardPlaces />
      </PageHead>
      <ListForm action="/steward" send={t('people.show')}>
        <Field name="q" label={t('people.find')}>
          {(control) => <input {...control} type="search" maxLength={100} defaultValue={choices.q} />}
        </Field>
        <SelectField
          name="role"
          label={t('people.role')}
          any={t('people.anyRole')}
          {...(role !== undefined && { value: role })}
          options={ROLES.map((one) => ({ value: one, label: words('account')(`role.${one}`) }))}
        />
      </ListForm>
      <PeopleTable people={people} />
      <NextPage path="/steward" choices={choices} after={first(search.after)} next={next} />
    </>
  )
}
