import { z } from 'zod'
import { slug, text } from '#lib/entry/fields.ts'
import { LIME_STATES } from '#lib/entry/terms.ts'
import { ASSUMED_LIMITS } from '#lib/mortar/assumptions.ts'
import type { Limits } from '#lib/mortar/inspect.ts'
import { MOST_WORKS } from '#lib/mortar/job-works.ts'
import { PROPERTY_LIMITS } from '#lib/mortar/material.ts'
import { WORK_KINDS, type Work, type WorkKind, workFields } from '#lib/mortar/takeoff.ts'
import { amount } from './shapes.ts'

const workOf = (kind: WorkKind) =>
  z.strictObject({
    kind: z.literal(kind),
    ...Object.fromEntries(
      Object.entries(workFields(kind)).map(([name, { limits, fallback, usual, unit }]) => {
        const bounded = amount(limits).describe(usual ? `${unit}; usually ${usual.typical}` : unit)
        return [name, fallback ? bounded.optional() : bounded]
      }),
    ),
  })

const [first, ...others] = WORK_KINDS.map(workOf)
if (!first) throw new RangeError('there is no kind of work')
/** The piece of work; the dimensions of each kind are those of the take-off. */
export const work = z.discriminatedUnion('kind', [first, ...others]) as unknown as z.ZodType<Work>

const percent = (max: number) => amount({ min: 0, max })
const perMaterial = z.record(slug, z.number().positive().max(1e6))

/** Any of some figures, each within its limits. */
const figures = <N extends string>(limits: Readonly<Record<N, Limits>>) =>
  z.strictObject(
    Object.fromEntries(
      (Object.keys(limits) as N[]).map((name) => [name, amount(limits[name]).optional()]),
    ) as Record<N, z.ZodOptional<ReturnType<typeof amount>>>,
  )

/** A recipe, a piece of work and what is on site. Lengths, volumes and masses are metric, as the names say. */
export const jobRequest = z.strictObject({
  recipe: slug,
  /** The revision published now where left out. */
  revision: z.int().positive().optional(),
  work,
  lossPercent: percent(500).optional(),
  /** More work of the same mortar, each with its own loss. */
  furtherWorks: z
    .array(z.strictObject({ work, lossPercent: percent(500).optional() }))
    .max(MOST_WORKS - 1)
    .optional(),
  limeState: z.enum(LIME_STATES).optional(),
  limePurityPercent: percent(100).optional(),
  sandMoisturePercent: percent(100).optional(),
  sandBulkingPercent: percent(100).optional(),
  waterC: amount({ min: 0, max: 100 }).optional(),
  sandC: amount({ min: -40, max: 100 }).optional(),
  /** The site's own figures of the recipe's materials, in the units that materials are kept in. */
  materialFigures: z.record(slug, figures(PROPERTY_LIMITS)).optional(),
  /** The site's own figures in place of what the sums assume. */
  assumed: figures(ASSUMED_LIMITS).optional(),
  packsKg: perMaterial.optional(),
  packPrices: perMaterial.optional(),
  /** Counted only where both are entered. */
  labour: z
    .strictObject({ hours: amount({ min: 0, max: 1e6 }), ratePerHour: z.number().min(0).max(1e9) })
    .optional(),
  gaugeBoxL: z.number().positive().max(1000).optional(),
  mixerL: z.number().positive().max(10_000).optional(),
  /** Needed for a recipe that is not in use: why it is wanted all the same. It goes on the sheet. */
  override: z.strictObject({ reason: text(300) }).optional(),
})
export type JobRequest = z.infer<typeof jobRequest>
