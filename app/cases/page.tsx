import type { Metadata } from 'next'
import { unitsWithin } from '#lib/api/units.ts'
import { caseFacets, listCases } from '#lib/db/cases.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'
import { USES } from '#lib/entry/terms.ts'
import { CaseIndex } from '../_ui/case-index.tsx'
import { type Facet, FilterForm, labelled, withChosen } from '../_ui/filter-form.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { termIn } from '../_ui/label.ts'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { first, oneOf, type Query, slugOf, wholeNumber } from '../_ui/query.ts'
import { unitOptions, unitPairs } from '../_ui/unit-tree.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const metadata: Metadata = { title: t('cases.title'), alternates: { canonical: '/cases' } }

/** Published cases, narrowed by country, stone, use, years watched and recipe; the longest watched first. */
export default async function CasesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const country = termIn('countries', query.country)
  const unit = termIn('units', query.unit)
  const years = wholeNumber(query.years)
  const after = first(query.after)
  const use = oneOf(USES, query.use)
  const recipe = slugOf(query.recipe)
  const filter = {
    ...(country && { country }),
    ...(unit && { unit: unitsWithin(unit) }),
    ...(use && { use }),
    ...(years && { minYears: years }),
    ...(recipe && { recipe }),
  }
  const [page, counts, used] = await Promise.all([
    listCases(filter, { limit: 15, ...(after && { after }) }).catch(backToStart('/cases')),
    caseFacets(filter, unitPairs()),
    recipe === undefined ? null : recipeBySlug(recipe),
  ])
  const facets: Facet[] = [
    {
      name: 'country',
      value: country,
      any: 'anyCountry',
      counts: labelled('countries', counts.country, country),
    },
    { name: 'unit', value: unit, any: 'anyUnit', counts: unitOptions(withChosen(counts.unit, unit)) },
    { name: 'use', value: use, any: 'anyUse', counts: labelled('uses', counts.use, use) },
    {
      name: 'years',
      value: years?.toString(),
      any: 'anyYears',
      counts: withChosen(counts.years, years?.toString(), page.total)
        .map((one) => ({ ...one, label: t('cases.atLeast', { years: Number(one.id) }) }))
        .sort((a, b) => Number(a.id) - Number(b.id)),
    },
  ]
  return (
    <>
      <PageHead title={t('cases.title')} lead={t('cases.lead')} />
      <FilterForm
        action="/cases"
        facets={facets}
        kept={recipe ? { name: 'recipe', value: recipe } : undefined}
      />
      {page.cases.some(({ invented }) => invented) && <InventedNotice page="list" />}
      <p className="facts-line">
        <span>{t('cases.found', { count: page.total })}</span>
        {used && (
          <span>
            {t.rich('cases.using', {
              title: used.body.title,
              link: (title) => <a href={`/recipes/${used.slug}`}>{title}</a>,
            })}
          </span>
        )}
      </p>
      <CaseIndex cases={page.cases} />
      <NextPage
        path="/cases"
        choices={{ country, unit, use, years, recipe }}
        after={after}
        next={page.next}
      />
    </>
  )
}
