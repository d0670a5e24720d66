import { content } from '#lib/content/index.ts'
import { materialBy } from '#lib/content/known-materials.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Properties } from '#lib/mortar/material.ts'
import { type Proportions, proportions } from '#lib/mortar/proportions.ts'
import { type MortarYield, yieldOf } from '#lib/mortar/yield.ts'

const MOST_KEPT = 500
const kept = new Map<string, Outcome<Proportions>>()

/**
 * A recipe's or row's proportions from the figures of its materials. The same ingredients with the same figures
 * always give the same answer, so the last few hundred are kept.
 */
export function workedProportions(ingredients: readonly IngredientInput[]): Outcome<Proportions> {
  const materials = propertiesOf(ingredients)
  // Content stands still; the figures of an entry change with its versions.
  const changing = Object.entries(materials).filter(([id]) => !content().materials.has(id))
  const key = JSON.stringify([ingredients, changing])
  const before = kept.get(key)
  if (before) return before
  const outcome = proportions({ ingredients, materials })
  const [oldest] = kept.keys()
  if (kept.size >= MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  kept.set(key, outcome)
  return outcome
}

/**
 * The mortar that a recipe makes, by its typical figures alone: the ranges of a yield are on the job sheet.
 * Undefined where a figure that it needs is not known.
 */
export function workedYield(ingredients: readonly IngredientInput[]): MortarYield | undefined {
  const outcome = yieldOf({ ingredients, materials: propertiesOf(ingredients), draws: 1 })
  return outcome.ok ? outcome.value : undefined
}

function propertiesOf(ingredients: readonly IngredientInput[]): Record<string, Properties> {
  return Object.fromEntries(
    ingredients.flatMap(({ material }) => {
      const known = materialBy(material)
      return known ? [[material, known.properties]] : []
    }),
  )
}
