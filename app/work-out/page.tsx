import type { Metadata } from 'next'
import { unitsWithin } from '#lib/api/units.ts'
import { listRecipes, recipeFacets } from '#lib/db/recipes.ts'
import { USES } from '#lib/entry/terms.ts'
import { alternates } from '../_ui/alternates.ts'
import { asWritten } from '../_ui/as-written.ts'
import { DataTable } from '../_ui/data-table.tsx'
import { FilterForm, labelled, withChosen } from '../_ui/filter-form.tsx'
import { InventedMark, InventedNotice } from '../_ui/invented.tsx'
import { labelList, labelOf, termIn } from '../_ui/label.ts'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query } from '../_ui/query.ts'
import { Section } from '../_ui/section.tsx'
import { unitOptions, unitPairs } from '../_ui/unit-tree.ts'
import { words } from '../_words/index.ts'
import { CalculationList } from './calculation-list.tsx'

const t = words('pages')

export const generateMetadata = (): Metadata => ({
  title: t('workOut.title'),
  alternates: alternates('/work-out'),
})

/** Recipes in use, to pick one and work out a job from it. */
export default async function WorkOutPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const unit = termIn('units', query.unit)
  const use = oneOf(USES, query.use)
  const after = first(query.after)
  const fitting = { ...(unit && { unit: unitsWithin(unit) }), ...(use && { use }) }
  const filter = { ...fitting, standing: 'in-use' as const }
  const [{ recipes, total, next }, all, counts] = await Promise.all([
    listRecipes(filter, { after }).catch(backToStart('/work-out')),
    listRecipes(fitting, { limit: 1 }),
    recipeFacets(filter, unitPairs()),
  ])
  return (
    <>
      <PageHead title={t('workOut.title')} lead={t('workOut.lead')} />
      <CalculationList />
      <Section id="recipes" title={words('workOut')('fromRecipe')}>
        <FilterForm
          action="/work-out"
          facets={[
            {
              name: 'use',
              value: use,
              any: 'anyUse',
              counts: labelled('uses', counts.use, use),
            },
            { name: 'unit', value: unit, any: 'anyUnit', counts: unitOptions(withChosen(counts.unit, unit)) },
          ]}
        />
        {recipes.some(({ invented }) => invented) && <InventedNotice page="list" />}
        <p className="facts-line">{t('workOut.found', { count: total })}</p>
        <DataTable
          label={t('workOut.table')}
          caption={t('workOut.table')}
          hideCaption
          stack
          columns={[
            { key: 'recipe', head: t('workOut.recipe'), names: true },
            { key: 'family', head: t('filter.family') },
            { key: 'uses', head: t('filter.use') },
            { key: 'job', head: t('workOut.sheet'), tight: true },
          ]}
          rows={recipes.map((recipe) => ({
            key: recipe.slug,
            cells: {
              recipe: (
                <>
                  <a href={`/recipes/${recipe.slug}`} {...asWritten()}>
                    {recipe.title}
                  </a>{' '}
                  {recipe.invented && <InventedMark />}
                </>
              ),
              family: labelOf('families', recipe.family),
              uses: labelList('uses', recipe.uses),
              job: (
                <a
                  href={addressWith(`/recipes/${recipe.slug}/job`, { r: recipe.revision })}
                  aria-label={t('workOut.openFor', { title: recipe.title })}
                >
                  {t('workOut.open')}
                </a>
              ),
            },
          }))}
        />
        <NextPage path="/work-out" choices={{ unit, use }} after={after} next={next} />
        {all.total > total && <p className="note">{t('workOut.leftOut', { count: all.total - total })}</p>}
      </Section>
    </>
  )
}
