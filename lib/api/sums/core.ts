import { z } from 'zod'
import { ingredient } from '#lib/entry/recipe.ts'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { takeOff } from '#lib/mortar/takeoff.ts'
import { work } from '../job-request.ts'
import { amount, range, step } from '../shapes.ts'
import { material, sum } from './shapes.ts'

const stateProportions = z.object({
  state: z.enum(LIME_STATES),
  aggregateDry: range.nullable(),
  aggregateDamp: range.nullable(),
  limePercent: range,
  parts: z.array(z.object({ index: z.int(), material: z.string(), dry: range, damp: range })),
})

const proportionsOperation = sum(
  'restate-proportions',
  'A recipe’s proportions for each lime state, by volume with dry and damp sand and by mass, with binder, clay and fibre',
  z.strictObject({
    ingredients: z
      .array(ingredient.omit({ note: true }))
      .min(1)
      .max(12),
    /** By the ingredients’ material names; ids of this site’s materials or figures of one’s own. */
    materials: z.record(z.string(), material),
    sandMoisturePercent: amount({ min: 0, max: 100 }).optional(),
  }),
  z.object({
    states: z.record(z.enum(LIME_STATES), stateProportions.nullable()),
    binderPercent: range,
    clayPercent: range,
    fibreKgM3: range.nullable(),
    unknowns: z.array(z.object({ material: z.string(), property: z.string() })),
    steps: z.array(step),
  }),
  ({ sandMoisturePercent, ...given }) =>
    proportions(sandMoisturePercent === undefined ? given : { ...given, sandMoisturePercent }),
)

const takeOffOperation = sum(
  'take-off',
  'Litres of mortar in place for one piece of work',
  z.strictObject({ work }),
  z.object({ netL: range, unitCount: range.nullable(), steps: z.array(step) }),
  (given) => takeOff(given.work),
)

export const coreSums = [proportionsOperation, takeOffOperation] as const
