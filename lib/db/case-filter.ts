import type { CaseFacet, Quality } from '#lib/entry/facets.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type Broader, every } from './facet.ts'

/** Which cases are meant: of each facet any of the values, of all facets together. An absent facet takes all. */
export type CaseFilter = { readonly [F in CaseFacet]?: readonly string[] } & {
  /** Whole years for which the longest of its works was watched, both ends included. */
  readonly minYears?: number
  readonly maxYears?: number
}

/**
 * The filter as a condition on `"CaseIndex" i`.
 *
 * @param broader pairs of a unit and what covers it (`broaderPairs('units')`): choosing limestone then takes chalk too
 */
export function caseWhere(filter: CaseFilter, broader: Broader): Prisma.Sql {
  const facets = Object.entries(CONDITIONS).flatMap(([facet, condition]) => {
    const values = filter[facet as CaseFacet]
    return values === undefined || values.length === 0 ? [] : [condition([...values], broader)]
  })
  const { minYears, maxYears } = filter
  return every([
    ...facets,
    ...(minYears === undefined ? [] : [Prisma.sql`i."yearsWatched" >= ${minYears}::float8`]),
    ...(maxYears === undefined ? [] : [Prisma.sql`i."yearsWatched" < ${maxYears + 1}::float8`]),
  ])
}

type Condition = (values: string[], broader: Broader) => Prisma.Sql

const oneOf =
  (column: Prisma.Sql): Condition =>
  (values) =>
    Prisma.sql`i.${column} = ANY(${values}::text[])`

const anyOf =
  (column: Prisma.Sql): Condition =>
  (values) =>
    Prisma.sql`i.${column} && ${values}::text[]`

const QUALITY_COLUMNS = {
  analysis: Prisma.sql`i."hasAnalysis"`,
  photos: Prisma.sql`i."hasPhotos"`,
  'second-observer': Prisma.sql`i."secondObserver"`,
  'past-five': Prisma.sql`i."pastFive"`,
} as const satisfies Record<Quality, Prisma.Sql>

const CONDITIONS = {
  unit: (values, broader) => Prisma.sql`i.units && ${covered(values, broader)}::text[]`,
  wall: oneOf(Prisma.sql`wall`),
  use: anyOf(Prisma.sql`uses`),
  family: anyOf(Prisma.sql`families`),
  binder: anyOf(Prisma.sql`materials`),
  method: anyOf(Prisma.sql`methods`),
  country: oneOf(Prisma.sql`country`),
  region: (values) => Prisma.sql`(i.country || ':' || i.region) = ANY(${values}::text[])
    AND i.country = ANY(${values.map((value) => value.slice(0, 2))}::text[])`,
  rain: oneOf(Prisma.sql`"drivingRain"`),
  frost: oneOf(Prisma.sql`frost`),
  salt: anyOf(Prisma.sql`salts`),
  ground: oneOf(Prisma.sql`ground`),
  structure: oneOf(Prisma.sql`structure`),
  joint: oneOf(Prisma.sql`"latestJoint"`),
  unitState: oneOf(Prisma.sql`"latestUnit"`),
  damp: oneOf(Prisma.sql`"latestDamp"`),
  recipe: anyOf(Prisma.sql`recipes`),
  row: anyOf(Prisma.sql`rows`),
  quality: (values) =>
    Prisma.sql`(${Prisma.join(
      values.map((value) => QUALITY_COLUMNS[value as Quality] ?? Prisma.sql`false`),
      ' OR ',
    )})`,
  disputed: (values) => Prisma.sql`i.disputed = ANY(${values.map((value) => value === 'yes')}::bool[])`,
} as const satisfies Record<CaseFacet, Condition>

/** The terms and all that they cover. */
const covered = (terms: readonly string[], broader: Broader): string[] => [
  ...new Set([...terms, ...broader.flatMap(([unit, term]) => (terms.includes(term) ? [unit] : []))]),
]
