import { z } from 'zod'
import { compareWithWall } from '#lib/mortar/compatibility.ts'
import { MORTAR_CONTENTS, WALL_CONDITIONS } from '#lib/mortar/compatibility-rules.ts'
import { BASES } from '#lib/mortar/range.ts'
import { range } from '../shapes.ts'
import { percent, ranged, sum } from './shapes.ts'

const figure = ranged({ min: 0 }).optional()
const measures = z.strictObject({
  compressiveStrength: figure,
  vapourResistance: figure,
  capillarity: figure,
})
const salt = percent.optional()

export const wallSums = [
  sum(
    'compare-with-wall',
    'A mortar against the units, the old mortar and the wall, rule by rule, each with its source; no verdict',
    z.strictObject({
      mortar: z.strictObject({ measures, contents: z.array(z.enum(MORTAR_CONTENTS)).max(6) }),
      unit: measures,
      oldMortar: measures,
      wall: z.strictObject({
        conditions: z.array(z.enum(WALL_CONDITIONS)).max(5),
        salts: z.strictObject({ nitrate: salt, sulfate: salt, chloride: salt }),
      }),
    }),
    z.array(
      z.object({
        rule: z.string(),
        kind: z.enum(['not-above', 'not-below', 'salt', 'pair']),
        outcome: z.enum(['no-conflict-found', 'check', 'conflict-reported']),
        figure: range.nullable(),
        against: range.nullable(),
        unit: z.string(),
        missing: z.array(z.string()),
        basis: z.enum(BASES),
        source: z.string().nullable(),
      }),
    ),
    (input) => compareWithWall(input),
  ),
] as const
