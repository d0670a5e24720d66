import { content } from '#lib/content/index.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Properties } from '#lib/mortar/material.ts'
import { type Proportions, proportions } from '#lib/mortar/proportions.ts'

const MOST_KEPT = 500
const kept = new Map<string, Outcome<Proportions>>()

/**
 * A recipe's or row's proportions from the site's own material figures. The same ingredients always give
 * the same answer, so the last few hundred are kept.
 */
export function workedProportions(ingredients: readonly IngredientInput[]): Outcome<Proportions> {
  const key = JSON.stringify(ingredients)
  const before = kept.get(key)
  if (before) return before
  const outcome = proportions({ ingredients, materials: propertiesOf(ingredients) })
  const [oldest] = kept.keys()
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  kept.set(key, outcome)
  return outcome
}

function propertiesOf(ingredients: readonly IngredientInput[]): Record<string, Properties> {
  const { materials } = content()
  return Object.fromEntries(
    ingredients.flatMap(({ material }) => {
      const known = materials.get(material)
      return known ? [[material, known.properties]] : []
    }),
  )
}
