import type { Metadata } from 'next'
import { unitsWithin } from '#lib/api/units.ts'
import { listRecipes, recipeFacets } from '#lib/db/recipes.ts'
import { FAMILIES, USES } from '#lib/entry/terms.ts'
import { alternates } from '../_ui/alternates.ts'
import { type Facet, FilterForm, labelled, withChosen } from '../_ui/filter-form.tsx'
import { Downloads } from '../_ui/find/downloads.tsx'
import { InventedNotice } from '../_ui/invented.tsx'
import { labelOf, termIn } from '../_ui/label.ts'
import { backToStart, NextPage } from '../_ui/next-page.tsx'
import { PageHead } from '../_ui/page-head.tsx'
import { addressWith, first, oneOf, type Query } from '../_ui/query.ts'
import { RecipeIndex } from '../_ui/recipe-index.tsx'
import { unitOptions, unitPairs } from '../_ui/unit-tree.ts'
import { words } from '../_words/index.ts'

const t = words('pages')

export const generateMetadata = (): Metadata => ({
  title: t('recipes.title'),
  alternates: alternates('/recipes'),
})

/** Published recipes, narrowed by stone (and all kinds of it), use and family. */
export default async function RecipesPage({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams
  const unit = termIn('units', query.unit)
  const use = oneOf(USES, query.use)
  const family = oneOf(FAMILIES, query.family)
  const filter = { ...(unit && { unit: unitsWithin(unit) }), ...(use && { use }), ...(family && { family }) }
  const after = first(query.after)
  const [{ recipes, total, next }, counts] = await Promise.all([
    listRecipes(filter, { after }).catch(backToStart('/recipes')),
    recipeFacets(filter, unitPairs()),
  ])
  const facets: Facet[] = [
    { name: 'unit', value: unit, any: 'anyUnit', counts: unitOptions(withChosen(counts.unit, unit)) },
    { name: 'use', value: use, any: 'anyUse', counts: labelled('uses', counts.use, use) },
    { name: 'family', value: family, any: 'anyFamily', counts: labelled('families', counts.family, family) },
  ]
  return (
    <>
      <PageHead title={t('recipes.title')} lead={t('recipes.lead')} />
      <FilterForm action="/recipes" facets={facets} />
      {recipes.some(({ invented }) => invented) && <InventedNotice page="list" />}
      <p className="facts-line">
        {unit === undefined
          ? t('recipes.found', { count: total })
          : t('recipes.foundFor', { count: total, unit: labelOf('units', unit) })}
      </p>
      <RecipeIndex recipes={recipes} />
      <NextPage path="/recipes" choices={{ unit, use, family }} after={after} next={next} />
      <Downloads list="recipes" query={addressWith('', { unit, use, family })} />
    </>
  )
}
