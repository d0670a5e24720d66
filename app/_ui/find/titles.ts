import { content } from '#lib/content/index.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { recipeBySlug } from '#lib/db/recipes.ts'

/** More than anyone chooses by following links; beyond them an address must do. */
const MOST_TITLES = 8

/** Titles of the recipes and rows that a filter names, by slug and ref. */
export async function titlesOf({ recipe = [], row = [] }: CaseFilter): Promise<ReadonlyMap<string, string>> {
  const recipes = await Promise.all(recipe.slice(0, MOST_TITLES).map((slug) => recipeBySlug(slug)))
  const rows = row.flatMap((ref) => content().rows.get(ref) ?? [])
  return new Map([
    ...recipes.flatMap((found) => (found ? [[found.slug, found.body.title] as const] : [])),
    ...rows.map(({ ref, label }) => [ref, label] as const),
  ])
}
