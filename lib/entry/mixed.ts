import type { Work } from './case.ts'
import type { Parts } from './fields.ts'
import type { RecipeBody } from './recipe.ts'

/** How what went into the mixer stands to the recipe that the work names. */
export const MIXED = ['as-stated', 'differs', 'not-told', 'no-recipe'] as const
export type Mixed = (typeof MIXED)[number]

/** Measuring by the bucket, nobody keeps to a recipe closer than this. */
const CLOSE = 0.1

/**
 * Whether a work's mortar was mixed as its recipe says: the same materials measured in the same states, and each
 * one's parts to those of the first ingredient within what the recipe allows, a tenth either way.
 *
 * @param recipe the revision that the work names; undefined where it names none
 */
export function compareMix(recipe: RecipeBody | undefined, mixed: Work['mixed']): Mixed {
  if (recipe === undefined) return 'no-recipe'
  const used = mixed?.ingredients ?? []
  const [first, ...others] = recipe.ingredients
  if (used.length === 0 || first === undefined) return 'not-told'
  const same = (one: Used) =>
    used.find(({ material, by, state }) => material === one.material && by === one.by && state === one.state)
  const base = same(first)
  if (base === undefined || used.length !== recipe.ingredients.length) return 'differs'
  const isClose = others.every((one) => {
    const found = same(one)
    return found !== undefined && overlaps(ratio(found.parts, base.parts), ratio(one.parts, first.parts))
  })
  return isClose ? 'as-stated' : 'differs'
}

type Used = Pick<RecipeBody['ingredients'][number], 'material' | 'by' | 'state'>

const ratio = (parts: Parts, base: Parts) => ({ low: parts.low / base.high, high: parts.high / base.low })

const overlaps = (a: { low: number; high: number }, b: { low: number; high: number }) =>
  a.low <= b.high * (1 + CLOSE) && b.low <= a.high * (1 + CLOSE)
