import { z } from 'zod'
import { HORIZONS } from '#lib/db/projection/horizon.ts'
import { RAINS } from '#lib/db/projection/state-code.ts'
import { QUALITIES, type Quality } from '#lib/entry/facets.ts'
import { labResult } from '#lib/entry/laboratory.ts'
import { MIXED } from '#lib/entry/mixed.ts'
import { DAMP_STATES, JOINT_STATES, SEASONS, UNIT_STATES } from '#lib/entry/terms.ts'
import { COMPETING, END_POINTS, LEFT_OUT } from '#lib/evidence/index.ts'
import { REPORTED, TRAITS } from '#lib/search/works.ts'
import { caseSummary } from './cases.ts'

const count = z.int().nonnegative()
const share = z.number().min(0).max(1)
const day = z.number().nonnegative()
const horizon = z.literal(HORIZONS.map(({ years }) => years))

/** The share without it at the end of a day: two bounds where nobody knows, and the band of 95 in 100. */
const point = z.object({
  day,
  low: share,
  high: share,
  bandLow: share,
  bandHigh: share,
  standing: count,
  happened: count,
})
const pointAt = point.extend({ years: horizon })

/** A share after so many years: two bounds where nobody knows, and the band of 95 in 100. */
const shareAt = z.object({ years: horizon, low: share, high: share, bandLow: share, bandHigh: share })

const size = z.object({ works: count, walls: count, buildings: count, watchedDays: day })

const endPoint = z.object({
  endPoint: z.enum(END_POINTS),
  reached: count,
  watched: count,
  competing: z.array(z.object({ how: z.enum(COMPETING), works: count })),
  /** Those looked at after their baseline, of the works that it could come to; a curve needs enough of them. */
  watching: z.object({ works: count, walls: count, watchedDays: day }),
  impossible: count,
  lostWorks: count,
  /** What is missing for a curve; null where there is one, or nothing could happen. */
  lacking: z.object({ walls: count, wallYears: z.number().nonnegative() }).nullable(),
  curve: z
    .object({
      /** Share of the works to which it came after day `from` and by `to`; null: not within what was watched. */
      masses: z.array(z.object({ from: day, to: day.nullable(), mass: share })),
      points: z.array(point),
      logLikelihood: z.number(),
      /** Kuhn-Tucker check: 0 at the maximum. */
      excess: z.number(),
      converged: z.boolean(),
    })
    .nullable(),
  horizons: z.array(pointAt),
  /** Days by which half had come to it, with the days on which the band crosses a half. */
  median: z
    .object({ from: day.nullable(), to: day.nullable(), low: day.nullable(), high: day.nullable() })
    .nullable(),
  endDays: day,
  /** The shares had it come to all walls lost to sight, and to none. */
  lost: z
    .object({
      horizons: z.array(z.object({ years: horizon, allChanged: share, noneChanged: share })),
    })
    .nullable(),
  incidence: z.array(
    z.object({
      cause: z.enum([...END_POINTS, ...COMPETING]),
      horizons: z.array(shareAt),
    }),
  ),
})

const agreement = z
  .object({ kappa: z.number(), low: z.number(), high: z.number(), agreed: share, byChance: share })
  .nullable()

const seen = z.union([
  z.object({
    joint: z.enum(JOINT_STATES),
    unit: z.enum(UNIT_STATES),
    damp: z.enum(DAMP_STATES),
    /** Last rain: up to two days before, up to a week, longer. */
    rain: z.enum(RAINS),
    season: z.enum(SEASONS),
  }),
  z.object({ ended: z.enum(['repointed-failed', 'replaced-other-reason', 'lost']) }),
])

/** Works it could come to, those found so, and the share found so after so many years, with its band. */
const drying = z.object({ works: count, found: count, horizons: z.array(shareAt) })

const signed = z.number().min(-1).max(1)

const comparison = z.object({
  endPoint: z.enum(END_POINTS),
  /** The filter is group 0, those of `compareWith` are 1 and 2. */
  groups: z.array(z.object({ key: z.string(), size, invented: count, figures: endPoint })),
  pairs: z.array(
    z.object({
      first: z.string(),
      second: z.string(),
      differences: z.array(
        z.object({
          years: horizon,
          day,
          low: signed,
          high: signed,
          bandLow: signed,
          bandHigh: signed,
        }),
      ),
    }),
  ),
  /** Pairs that have works in common; `whole` names the one that has nothing else, `both` are the same works. */
  overlaps: z.array(
    z.object({
      ...{ first: z.string(), second: z.string(), works: count, walls: count },
      whole: z.enum(['both', 'first', 'second']).nullable(),
    }),
  ),
  /** Null where there is nothing to test, or groups overlap: it would not hold of groups that are not apart. */
  test: z
    .object({
      groups: z.array(z.object({ group: z.string(), walls: count, score: z.number() })),
      chiSquare: z.number(),
      degrees: count,
      p: share,
      shuffles: count,
    })
    .nullable(),
  traits: z.array(
    z.object({
      trait: z.enum(TRAITS.map(({ trait }) => trait)),
      values: z.array(z.object({ value: z.string(), shares: z.record(z.string(), share) })),
      distance: share,
      differsMuch: z.boolean(),
      /** The groups were told apart by this trait itself. */
      chosenBy: z.boolean(),
    }),
  ),
})

export const evidenceAnswer = z.object({
  /** Day that the figures are for: walls not visited for long before it count as lost to sight. */
  asOf: z.iso.date(),
  size: size.extend({ longestDays: day }),
  /** Walls were chosen by what became of them or by how long they were watched: no curve of them says how walls fare. */
  chosenByOutcome: z.boolean(),
  invented: count,
  interested: count,
  contradicted: count,
  reported: z.object(Object.fromEntries(REPORTED.map((one) => [one, count]))),
  mixed: z.object(Object.fromEntries(MIXED.map((one) => [one, count]))),
  setAside: z.object({
    leftOut: z.array(z.object({ reason: z.enum(LEFT_OUT), works: count })),
    disputedCases: count,
    withdrawnCases: count,
    withdrawnVisits: count,
  }),
  /** Works in one state so many years on; `seen` is null where that time has come and nobody looked near it. */
  states: z.array(z.object({ years: horizon, seen: seen.nullable(), works: count })),
  /** Until walls damp at the finish were found dry; until walls found dry were found damp again. */
  drying: z.object({ dry: drying, again: drying }),
  agreement: z.object({
    visits: count,
    scales: z.array(
      z.object({
        scale: z.enum(['joint', 'unit', 'damp']),
        same: count,
        fleiss: agreement,
        cohen: agreement,
      }),
    ),
  }),
  endPoints: z.array(endPoint),
  /** The cases behind the figures, with those that tell too little to be counted and disputed ones. */
  cases: z.object({
    total: count,
    /** How many of them hold each thing; lists can be narrowed by the same names. */
    quality: z.object(
      Object.fromEntries(QUALITIES.map((one) => [one, count])) as Record<Quality, typeof count>,
    ),
    /** The longest watched; `list` is the address of all. */
    first: z.array(caseSummary),
    list: z.string(),
  }),
  /** Recipes and materials of these walls that carry laboratory results, each in the unit of its property. */
  laboratory: z.array(
    z.object({
      kind: z.enum(['recipe', 'material']),
      slug: z.string(),
      revision: z.int().positive(),
      title: z.string(),
      invented: z.boolean(),
      results: z.array(labResult.extend({ unit: z.string() })),
    }),
  ),
  comparisons: z.array(comparison),
})
export type EvidenceAnswer = z.infer<typeof evidenceAnswer>
