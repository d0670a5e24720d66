import { readBody } from '#lib/entry/body.ts'
import type { Work } from '#lib/entry/case.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { Db } from '../client.ts'
import { distinct, splitRef } from './source.ts'

/** The recipe revisions that works name, as they were written: `slug@3` → body. */
export async function usedRecipes(tx: Db, refs: readonly string[]): Promise<ReadonlyMap<string, RecipeBody>> {
  const wanted = distinct(refs).map(splitRef)
  const rows = await tx.$queryRaw<{ ref: string; body: unknown; shape: number }[]>`
    SELECT e.slug || '@' || r.number AS ref, r.body, r.shape
    FROM unnest(${wanted.map(({ slug }) => slug)}::text[], ${wanted.map(({ revision }) => revision)}::bigint[])
      AS w(slug, number)
    JOIN "Entry" e ON e.slug = w.slug AND e.kind = 'recipe'
    JOIN "Revision" r ON r."entryId" = e.id AND r.number = w.number`
  return new Map(rows.map(({ ref, body, shape }) => [ref, readBody('recipe', body, shape)]))
}

/** What went into a work's mixer, or else what the recipe revision that it used says: ids of materials, each once. */
export function materialsOf({ mixed, recipe }: Work, used: ReadonlyMap<string, RecipeBody>): string[] {
  const told: readonly { material: string }[] = mixed?.ingredients ?? []
  const ingredients = told.length > 0 ? told : (used.get(recipe ?? '')?.ingredients ?? [])
  return distinct(ingredients.map(({ material }) => material))
}
