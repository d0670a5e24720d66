import { content } from '#lib/content/index.ts'
import type { TableRow } from '#lib/content/types.ts'

/** The rows of the proportion tables that name a material. */
export const rowsWith = (material: string): TableRow[] =>
  [...content().rows.values()].filter(({ ingredients }) =>
    ingredients.some((ingredient) => ingredient.material === material),
  )
