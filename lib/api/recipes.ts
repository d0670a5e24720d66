import { z } from 'zod'
import { listRecipes, recipeBySlug } from '#lib/db/recipes.ts'
import { slug } from '#lib/entry/fields.ts'
import { recipeBody } from '#lib/entry/recipe.ts'
import { FAMILIES, STANDINGS, USES } from '#lib/entry/terms.ts'
import { Refusal } from '#lib/errors.ts'
import { operation } from './operation.ts'
import { page, paging, published, writePublished } from './published.ts'
import { unitsWithin } from './units.ts'

const recipeSummary = z.object({
  slug,
  revision: z.int().positive(),
  title: z.string(),
  summary: z.string(),
  family: z.enum(FAMILIES),
  uses: z.array(z.enum(USES)),
  standing: z.enum(STANDINGS),
  units: z.array(slug),
  cases: z.int().nonnegative(),
  longestYears: z.number().nonnegative().nullable(),
  invented: z.boolean(),
})

/** Published recipes, by stone or other unit (and all kinds of it), use and family. */
export const recipesOperation = operation({
  id: 'listRecipes',
  method: 'GET',
  path: '/api/v1/recipes',
  summary: 'Published recipes, by unit, use and family',
  query: z.strictObject({
    unit: slug.optional(),
    use: z.enum(USES).optional(),
    family: z.enum(FAMILIES).optional(),
    ...paging,
  }),
  answer: z.object({ recipes: z.array(recipeSummary), ...page }),
  async run({ query: { unit, use, family, after, limit } }) {
    const page = await listRecipes(
      { ...(unit && { unit: unitsWithin(unit) }), ...(use && { use }), ...(family && { family }) },
      { limit, ...(after && { after }) },
    )
    return { ...page, recipes: page.recipes.map((recipe) => ({ ...recipe })) }
  },
})

/** One recipe, as published now or at the revision asked for. */
export const recipeOperation = operation({
  id: 'readRecipe',
  method: 'GET',
  path: '/api/v1/recipes/{slug}',
  summary: 'One recipe, as published now or in an earlier published revision',
  params: z.strictObject({ slug }),
  query: z.strictObject({ revision: z.coerce.number().int().positive().optional() }),
  answer: z.object({ ...published, body: recipeBody }),
  async run({ params, query }) {
    const recipe = await recipeBySlug(params.slug, query.revision)
    if (!recipe) throw new Refusal('not-found', 'No such recipe is published.')
    return { ...writePublished(recipe), body: recipe.body }
  },
})
