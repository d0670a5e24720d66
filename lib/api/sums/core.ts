import { z } from 'zod'
import { LIME_STATES, MEASURED_STATES, MEASURES, ROLES } from '#lib/entry/terms.ts'
import { LIME_STATES as STATES } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { BASES } from '#lib/mortar/range.ts'
import { restateRecipe } from '#lib/mortar/restate.ts'
import { slakeBatch } from '#lib/mortar/slaking.ts'
import { takeOff } from '#lib/mortar/takeoff.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { work } from '../job-request.ts'
import { amount, range, step } from '../shapes.ts'
import { material, recipe, stated, sum } from './shapes.ts'

const state = z.enum(LIME_STATES)
const steps = z.array(step)
const limeAmount = z.object({ massKg: range, volumeL: range.nullable() })
const GROWTHS = ['lump-to-hydrate', 'lump-to-putty', 'ground-to-hydrate', 'ground-to-putty'] as const

const convertOperation = sum(
  'convert-lime',
  'An amount of lime in each of its states, by mass and volume, with its growth on slaking',
  z.strictObject({
    amount: amount({ above: 0 }),
    unit: z.enum(['kg', 'L']),
    state,
    lime: material,
    hydratedMgOShare: amount({ min: 0, max: 1 }).optional(),
  }),
  z.object({
    states: z.record(z.enum(STATES), limeAmount.nullable()),
    boundWaterKg: range,
    puttyWaterKg: range.nullable(),
    growth: z.record(z.enum(GROWTHS), range.nullable()),
    steps,
  }),
  ({ lime, ...given }) => convertLime({ ...stated(given), properties: lime }),
)

const slakeOperation = sum(
  'slake-batch',
  'Energy balance of one batch of quicklime: average temperature, water boiled off; never a sign that it is safe',
  z.strictObject({
    quicklimeKg: amount({ above: 0 }),
    freeCaO: amount({ min: 0, max: 1 }),
    waterKg: amount({ min: 0 }),
    sandKg: amount({ min: 0 }).optional(),
    sandMoisturePercent: amount({ min: 0, max: 100 }).optional(),
    waterC: amount({ min: 0, max: 100 }),
    sandC: amount({ min: -30, max: 100 }).optional(),
  }),
  z.object({ heatKJ: range, averageC: range, boiledKg: range, freeKg: range, steps }),
  (given) => slakeBatch(stated(given)),
)

const stateProportions = z.object({
  state,
  aggregateDry: range.nullable(),
  aggregateDamp: range.nullable(),
  limePercent: range.nullable(),
  parts: z.array(z.object({ index: z.int(), material: z.string(), dry: range, damp: range })),
})

const proportionsOperation = sum(
  'find-proportions',
  'A recipe’s proportions for each lime state, by volume with dry and damp sand and by mass, with binder, clay and fibre',
  z.strictObject({ ...recipe, sandMoisturePercent: amount({ min: 0, max: 100 }).optional() }),
  z.object({
    states: z.record(z.enum(STATES), stateProportions.nullable()),
    binderPercent: range.nullable(),
    clayPercent: range.nullable(),
    fibreKgM3: range.nullable(),
    unknowns: z.array(z.object({ material: z.string(), property: z.string() })),
    steps,
  }),
  (given) => proportions(stated(given)),
)

const restateOperation = sum(
  'restate-recipe',
  'A recipe on another basis: its lime in one state, its sand dry or damp, all by volume or all by mass',
  z.strictObject({
    ...recipe,
    as: z.strictObject({ limeState: state, aggregate: z.enum(['dry', 'damp']), by: z.enum(MEASURES) }),
  }),
  z.array(
    z.object({
      material: z.string(),
      role: z.enum(ROLES),
      parts: range,
      by: z.enum(MEASURES),
      state: z.enum(MEASURED_STATES),
    }),
  ),
  restateRecipe,
)

const yieldOperation = sum(
  'find-yield',
  'Mortar that a recipe’s parts make, by absolute volumes, beside the factors that handbooks give',
  z.strictObject(recipe),
  z.object({
    mortarL: range,
    solidL: range,
    freeWaterL: range,
    perFiller: range.nullable(),
    handbooks: z.array(
      z.object({
        id: z.string(),
        factor: z.number(),
        of: z.enum(['filler', 'all-dry']),
        basis: z.enum(BASES),
        source: z.string().optional(),
        mortarL: z.number(),
        differencePercent: z.number(),
      }),
    ),
    steps,
  }),
  yieldOf,
)

const takeOffOperation = sum(
  'take-off',
  'Litres of mortar in place for one piece of work',
  z.strictObject({ work }),
  z.object({ netL: range, unitCount: range.nullable(), steps }),
  (given) => takeOff(given.work),
)

export const coreSums = [
  convertOperation,
  slakeOperation,
  proportionsOperation,
  restateOperation,
  yieldOperation,
  takeOffOperation,
] as const
