import { z } from 'zod'
import { BASES } from '#lib/mortar/range.ts'
import { gradeSand } from '#lib/mortar/sieve.ts'
import { blendSands } from '#lib/mortar/sieve-blend.ts'
import { GRADING_LIMITS } from '#lib/mortar/sieve-gradings.ts'
import { checkGrading } from '#lib/mortar/sieve-limits.ts'
import { blendToModulus } from '#lib/mortar/sieve-modulus.ts'
import { FINENESS_DEFINITIONS } from '#lib/mortar/sieve-series.ts'
import { range, step } from '../shapes.ts'
import { above, percent, sum } from './shapes.ts'

const grams = z.number().min(0)
const openingMm = z.number().positive()
const size = z.object({
  kind: z.enum(['size', 'finer-than', 'coarser-than']),
  mm: z.union([range, z.number()]),
})
const curve = z
  .array(z.strictObject({ openingMm, passing: percent }))
  .min(1)
  .max(30)
const limitIds = GRADING_LIMITS.map((limit) => limit.id) as [string, ...string[]]
const setIds = FINENESS_DEFINITIONS.map((definition) => definition.id)

const gradeOperation = sum(
  'grade-sand',
  'Grading of a sand from the masses on its sieves: curve, fineness moduli, D10 to D60, Cu, Cc, loss',
  z.strictObject({
    sieves: z
      .array(z.strictObject({ openingMm, retainedG: grams }))
      .min(1)
      .max(30),
    panG: grams,
    washedOutG: grams.optional(),
    startG: z.number().positive().optional(),
    balanceG: grams.optional(),
  }),
  z.object({
    totalG: z.number(),
    rows: z.array(z.object({ openingMm: z.number(), retained: range, cumulative: range, passing: range })),
    finenessModuli: z.array(z.object({ set: z.enum(setIds), value: range })),
    d10: size,
    d30: size,
    d50: size,
    d60: size,
    uniformity: range.nullable(),
    curvature: range.nullable(),
    lossPercent: z.number().nullable(),
    lossChecks: z.array(
      z.object({
        id: z.string(),
        limitPercent: z.number(),
        outcome: z.enum(['within', 'over', 'not-verified']),
        basis: z.enum(BASES),
        source: z.string().nullable(),
      }),
    ),
    steps: z.array(step),
  }),
  gradeSand,
)

const checkOperation = sum(
  'check-grading',
  'A grading curve against one named standard, sieve by sieve',
  z.strictObject({ curve, limits: z.enum(limitIds) }),
  z.object({
    id: z.string(),
    source: z.string(),
    basis: z.enum(BASES),
    rows: z.array(
      z.object({
        openingMm: z.number(),
        fromMm: z.number().optional(),
        low: z.number(),
        high: z.number(),
        found: range.nullable(),
        interpolated: z.boolean(),
        outcome: z.enum(['within', 'outside', 'borderline', 'no-data']),
      }),
    ),
  }),
  ({ curve, limits }) => {
    const limit = GRADING_LIMITS.find(({ id }) => id === limits)
    return limit === undefined
      ? { ok: false, faults: [{ field: 'limits', code: 'unknown', value: limits }] }
      : checkGrading(curve, limit)
  },
)

const blendOperation = sum(
  'blend-sands',
  'Shares of two or more sands that come nearest to a target grading, with the residual',
  z.strictObject({
    sands: z
      .array(z.strictObject({ curve, bulkDensityKgM3: above(5000).optional() }))
      .min(2)
      .max(8),
    target: z
      .array(z.strictObject({ openingMm, passing: z.number().min(0).max(100) }))
      .min(1)
      .max(30),
  }),
  z.object({
    shares: z.array(range),
    volumeShares: z.array(range).nullable(),
    rows: z.array(
      z.object({ openingMm: z.number(), target: z.number(), passing: range, residual: z.number() }),
    ),
    residual: range,
    steps: z.array(step),
  }),
  blendSands,
)

const modulusOperation = sum(
  'blend-to-modulus',
  'Share of the finer of two sands that gives a wanted fineness modulus',
  z.strictObject({ fine: z.number().min(0), coarse: z.number().min(0), wanted: z.number().min(0) }),
  z.object({ fineShare: z.number() }),
  ({ fine, coarse, wanted }) => {
    const outcome = blendToModulus(fine, coarse, wanted)
    return outcome.ok ? { ok: true, value: { fineShare: outcome.value } } : outcome
  },
)

export const sandSums = [gradeOperation, checkOperation, blendOperation, modulusOperation] as const
