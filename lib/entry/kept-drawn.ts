import { z } from 'zod'
import { isRange } from '#lib/mortar/range.ts'

/**
 * What a drawing of a kept sheet is drawn from: its numbers, and the names that stand in it. It is drawn anew each time
 * it is looked at, so that it suits screen and paper; what it shows never changes.
 */

const short = z.string().max(600)
const id = z.string().min(1).max(200)
const system = z.enum(['metric', 'us'])
const positive = z.number().positive()

/** What else a range of the sums carries is left out. */
const range = z
  .object({ low: z.number(), typical: z.number(), high: z.number() })
  .refine(isRange, 'out-of-order')

export const drawn = z.discriminatedUnion('of', [
  /** Depth and width of a joint, mm; null where its width was not given. */
  z.strictObject({ of: z.literal('joint'), system, depthMm: range, jointMm: range.nullable() }),
  /** Units of a wall and their joints, mm. */
  z.strictObject({
    of: z.literal('face'),
    system,
    lengthMm: positive,
    heightMm: positive,
    jointMm: z.number().nonnegative(),
    heads: z.strictObject({ widthMm: positive, share: z.number() }).exactOptional(),
  }),
  /** A mix by volume, a line for each state of its lime and for the mortar, in measures of its dry filler. */
  z.strictObject({
    of: z.literal('composition'),
    lines: z
      .array(
        z.strictObject({
          state: z.enum(['lump-quicklime', 'ground-quicklime', 'dry-hydrate', 'putty', 'mortar']),
          when: z.enum(['before', 'after', 'mixed']),
          parts: z
            .array(
              z.strictObject({
                kind: z.enum(['lime', 'filler', 'other', 'solids', 'water', 'air']),
                material: id.exactOptional(),
                amount: z.number(),
              }),
            )
            .min(1)
            .max(30)
            .readonly(),
        }),
      )
      .min(1)
      .max(10)
      .readonly(),
    /** What states and materials were called, by id. */
    states: z.record(id, short),
    materials: z.record(id, short),
  }),
  /** Grading curves and the limits that they were held against: openings in mm, passing in %. */
  z.strictObject({
    of: z.literal('grading'),
    title: short,
    openings: z.array(positive).min(1).max(60).readonly(),
    curves: z
      .array(
        z.strictObject({
          label: short,
          drawn: z.enum(['main', 'target', 'part']),
          curve: z
            .array(z.strictObject({ openingMm: positive, passing: range }))
            .max(60)
            .readonly(),
        }),
      )
      .max(20)
      .readonly(),
    band: z
      .strictObject({
        label: short,
        points: z
          .array(z.strictObject({ openingMm: positive, low: z.number(), high: z.number() }))
          .min(1)
          .max(60)
          .readonly(),
      })
      .optional(),
  }),
  /** Average temperature in °C and free water in kg by the share of the lime that has slaked. */
  z.strictObject({
    of: z.literal('slake'),
    system,
    points: z
      .array(z.strictObject({ share: z.number().min(0).max(1), averageC: range, freeKg: range }))
      .min(2)
      .max(60)
      .readonly(),
  }),
])
export type Drawn = z.infer<typeof drawn>
