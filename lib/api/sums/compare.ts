import { z } from 'zod'
import { FAMILIES, LIME_STATES } from '#lib/entry/terms.ts'
import { comparePlausible, PLAUSIBLE_IDS } from '#lib/mortar/plausible.ts'
import { comparePractice } from '#lib/mortar/practice.ts'
import { REASON_IDS } from '#lib/mortar/practice-sayings.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { BASES } from '#lib/mortar/range.ts'
import { compareYields, YIELD_REASON_IDS } from '#lib/mortar/yield-tables.ts'
import { range } from '../shapes.ts'
import { material, ranged, recipe, sum } from './shapes.ts'

const known = { basis: z.enum(BASES), source: z.string().optional() }

/** What practice and books say, beside the sums; where they disagree, with the reason. */
export const comparisonSums = [
  sum(
    'compare-practice',
    'What practice says of lime and sand in round numbers beside the sums, with the reason where they disagree',
    z.strictObject({ lime: material, sand: material }),
    z.array(
      z.object({
        id: z.string(),
        state: z.enum(LIME_STATES),
        said: z.object({ low: z.number(), high: z.number() }),
        ours: range,
        inside: z.boolean(),
        reason: z.enum(REASON_IDS).nullable(),
        ...known,
      }),
    ),
    ({ lime, sand }) => comparePractice(lime, sand),
  ),
  sum(
    'compare-yields',
    'Mortar that books say a heap makes beside the sums, with the reason where they disagree',
    z.strictObject({ lime: material, sand: material, cement: material }),
    z.array(
      z.object({
        book: z.string(),
        binder: z.enum(['cement', 'lump-quicklime']),
        sandParts: z.number(),
        said: z.number(),
        ours: range,
        differencePercent: z.number(),
        reason: z.enum(YIELD_REASON_IDS).nullable(),
        ...known,
      }),
    ),
    compareYields,
  ),
  sum(
    'compare-plausible',
    'A recipe, and its strength where measured, beside the bounds that practice knows for its family; no verdict',
    z.strictObject({
      ...recipe,
      family: z.enum(FAMILIES),
      strengthMPa: ranged({ min: 0, max: 1000 }).describe('At about three months').optional(),
    }),
    z.array(
      z.object({
        id: z.enum(PLAUSIBLE_IDS),
        low: z.number(),
        high: z.number(),
        unit: z.string(),
        basis: z.literal('practice'),
        found: range,
        touches: z.boolean(),
      }),
    ),
    ({ family, strengthMPa, ...given }) => {
      const found = proportions(given)
      return found.ok ? { ok: true, value: comparePlausible(family, found.value, strengthMPa) } : found
    },
  ),
] as const
