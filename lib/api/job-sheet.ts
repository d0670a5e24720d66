import { z } from 'zod'
import { LIME_STATES, ROLES } from '#lib/entry/terms.ts'
import { WARNING_IDS } from '#lib/mortar/job-types.ts'
import { BASES } from '#lib/mortar/range.ts'
import { SEQUENCE_IDS } from '#lib/mortar/sequence.ts'
import { KEEPING_IDS } from '#lib/mortar/storage.ts'
import { WORK_KINDS } from '#lib/mortar/takeoff.ts'
import { range, step } from './shapes.ts'

const litres = range.nullable()

/** A job sheet as the sums give it: ids, numbers and units, no words. */
export const jobSheet = z.object({
  version: z.int().positive(),
  netL: range,
  mortarL: range,
  unitCount: range.nullable(),
  /** Each piece of work with its own figures, in the order given. */
  works: z.array(
    z.object({ kind: z.enum(WORK_KINDS), netL: range, mortarL: range, unitCount: range.nullable() }),
  ),
  ingredients: z.array(
    z.object({
      index: z.int().nonnegative(),
      material: z.string(),
      role: z.enum(ROLES),
      state: z.enum([...LIME_STATES, 'dry', 'damp']),
      siteL: litres,
      siteKg: range.nullable(),
      order: z.object({ packKg: z.number(), packs: range, leftKg: z.number() }).nullable(),
      cost: range.nullable(),
    }),
  ),
  water: z.object({
    boundL: range,
    freeL: range,
    boiledL: range,
    fromSandL: range,
    fromLimeL: range,
    firstChargeL: range,
    likelyTotalL: range,
  }),
  /** Averages: dry spots run far hotter. */
  heat: z.object({ averageC: range, heatKJ: range }).nullable(),
  batch: z
    .object({
      gaugeBoxL: z.number(),
      parts: z.array(
        z.object({
          index: z.int().nonnegative(),
          material: z.string(),
          boxes: z.number().nullable(),
          litres: z.number().nullable(),
          kg: z.number(),
        }),
      ),
      loads: z.number(),
      mortarL: z.number(),
      roundingPercent: z.number(),
      /** Of one load, however large the work. */
      firstChargeL: range,
      likelyTotalL: range,
      makesL: range,
    })
    .nullable(),
  cost: z.object({ materials: range, labour: range.nullable(), total: range }).nullable(),
  warnings: z.array(
    z.object({
      id: z.enum(WARNING_IDS),
      material: z.string().optional(),
      value: z.number().optional(),
      unit: z.string().optional(),
    }),
  ),
  sequence: z.array(
    z.object({ id: z.enum(SEQUENCE_IDS), hours: range.optional(), source: z.string().optional() }),
  ),
  storage: z.array(z.object({ material: z.string(), id: z.enum(KEEPING_IDS), days: range.nullable() })),
  cautions: z.array(z.string()),
  unknowns: z.array(z.object({ material: z.string(), property: z.string() })),
  assumed: z.array(z.string()),
  /** What the figures turn on and nobody entered, or what stands in its place. */
  taken: z.array(
    z.object({
      field: z.string(),
      value: range,
      unit: z.string(),
      basis: z.enum(BASES),
      source: z.string().optional(),
    }),
  ),
  steps: z.array(step),
})
