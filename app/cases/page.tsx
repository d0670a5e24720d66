import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { unitsWithin } from '#lib/api/units.ts'
import { caseFacets, listCases } from '#lib/db/cases.ts'
import { USES } from '#lib/entry/terms.ts'
import { Refusal } from '#lib/errors.ts'
import { CaseIndex } from '../_ui/case-index.tsx'
import { type Facet, FilterForm } from '../_ui/filter-form.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { labelOf } from '../_ui/label.ts'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query, termIn, wholeNumber } from '../_ui/query.ts'
import { unitOptions, unitPairs } from '../_ui/unit-tree.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const metadata: Metadata = { title: t('cases.title'), alternates: { canonical: '/cases' } }

/** Published cases, narrowed by country, stone, use and years watched; the longest watched first. */
export default async function CasesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const country = termIn('countries', query.country)
  const unit = termIn('units', query.unit)
  const years = wholeNumber(query.years)
  const after = first(query.after)
  const use = oneOf(USES, query.use)
  const filter = {
    ...(country && { country }),
    ...(unit && { unit: unitsWithin(unit) }),
    ...(use && { use }),
    ...(years && { minYears: years }),
  }
  const [page, counts] = await Promise.all([
    listCases(filter, { limit: 15, ...(after && { after }) }).catch(absentPage),
    caseFacets(filter, unitPairs()),
  ])
  const facets: Facet[] = [
    { name: 'country', value: country, any: 'anyCountry', counts: labelled('countries', counts.country) },
    { name: 'unit', value: unit, any: 'anyUnit', counts: unitOptions(counts.unit) },
    { name: 'use', value: use, any: 'anyUse', counts: labelled('uses', counts.use) },
    {
      name: 'years',
      value: years?.toString(),
      any: 'anyYears',
      counts: counts.years
        .map((one) => ({ ...one, label: t('cases.atLeast', { years: Number(one.id) }) }))
        .sort((a, b) => Number(a.id) - Number(b.id)),
    },
  ]
  return (
    <>
      <PageHead title={t('cases.title')} lead={t('cases.lead')} />
      <FilterForm action="/cases" facets={facets} />
      {page.cases.some(({ invented }) => invented) && <InventedNotice page="list" />}
      <p className="facts-line">{t('cases.found', { count: page.total })}</p>
      <CaseIndex cases={page.cases} />
      <p className="actions">
        {after !== undefined && (
          <a href={addressWith('/cases', { country, unit, use, years })}>{t('cases.start')}</a>
        )}
        {page.next !== null && (
          <a
            className="button button-plain"
            href={addressWith('/cases', { country, unit, use, years, after: page.next })}
          >
            {t('cases.next')}
          </a>
        )}
      </p>
    </>
  )
}

const labelled = (vocabulary: string, counts: readonly { id: string; count: number }[]) =>
  counts.map((one) => ({ ...one, label: labelOf(vocabulary, one.id) }))

/** A place to go on from that never was one leads nowhere; all other failures stay failures. */
function absentPage(error: unknown): never {
  if (error instanceof Refusal && error.code === 'invalid') notFound()
  throw error
}
