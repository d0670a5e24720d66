import type { CaseBody } from '#lib/entry/case.ts'
import type { DampState, JointState, UnitState, Use, WallType } from '#lib/entry/terms.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import {
  type Broader,
  type Count,
  countArray,
  countColumn,
  countUnits,
  every,
  groupFacets,
  oneOrMore,
} from './facet.ts'
import { noSuchPage, pageSize } from './page.ts'
import { type Published, publishedBySlug, publishedVisits } from './published.ts'

export interface CaseSummary {
  readonly slug: string
  readonly revision: number
  readonly title: string
  readonly summary: string
  readonly country: string
  readonly region: string
  readonly units: string[]
  readonly wall: WallType
  readonly uses: Use[]
  readonly visits: number
  /** From a work's baseline (or its end) to the last visit to it, the longest of the works. */
  readonly yearsWatched: number | null
  readonly latest: {
    /** `YYYY-MM-DD`. */
    readonly on: string
    readonly joint: JointState
    readonly unit: UnitState
    readonly damp: DampState
  } | null
  readonly invented: boolean
}

export interface CaseFilter {
  readonly country?: string | undefined
  readonly unit?: string | readonly string[] | undefined
  readonly use?: Use | undefined
  readonly minYears?: number | undefined
  /** Slug of a recipe that a work of the case used, in any revision. */
  readonly recipe?: string | undefined
}

export interface CasePage {
  readonly cases: CaseSummary[]
  readonly total: number
  /** Give it as `after` for the next page; null on the last. */
  readonly next: string | null
}

const TABLE = Prisma.sql`"CaseIndex" i`
const YEARS_FACET = [1, 2, 5, 10]

/** Published cases, the longest watched first. */
export async function listCases(
  filter: CaseFilter = {},
  { after, limit = 20 }: { after?: string | undefined; limit?: number | undefined } = {},
): Promise<CasePage> {
  const size = pageSize(limit)
  const from = after === undefined ? Prisma.sql`true` : afterKey(after)
  const [rows, totals] = await Promise.all([
    select(
      Prisma.sql`WHERE ${where(filter)} AND ${from} ORDER BY i."yearsWatched" DESC, i.slug LIMIT ${size + 1}`,
    ),
    db().$queryRaw<{ total: number }[]>`SELECT count(*)::int AS total FROM ${TABLE} WHERE ${where(filter)}`,
  ])
  const cases = rows.slice(0, size)
  const last = cases.at(-1)
  const next = rows.length > size && last !== undefined ? `${last.yearsWatched ?? -1}_${last.slug}` : null
  return { cases, total: totals[0]?.total ?? 0, next }
}

/** The cases published last, newest first. */
export const newestCases = (limit = 6): Promise<CaseSummary[]> =>
  select(Prisma.sql`ORDER BY i."publishedAt" DESC, i.slug LIMIT ${pageSize(limit)}`)

/** What each further choice would leave; `years` counts cases watched for at least so many. */
export async function caseFacets(
  filter: CaseFilter = {},
  broader: Broader = [],
): Promise<Record<'country' | 'unit' | 'use' | 'years', Count[]>> {
  const query = {
    table: TABLE,
    where: (except: string) => where({ ...filter, [except === 'years' ? 'minYears' : except]: undefined }),
  }
  const rows = await db().$queryRaw<{ facet: string; id: string; count: number }[]>`
    ${countColumn(query, 'country', Prisma.sql`i.country`)} UNION ALL
    ${countUnits(query, broader)} UNION ALL
    ${countArray(query, 'use', Prisma.sql`i.uses`)} UNION ALL
    SELECT 'years', least::text, count(i."entryId")::int FROM unnest(${YEARS_FACET}::int[]) AS least
    JOIN ${TABLE} ON i."yearsWatched" >= least WHERE ${query.where('years')} GROUP BY least`
  const facets = groupFacets(['country', 'unit', 'use', 'years'], rows)
  facets.years.sort((a, b) => Number(a.id) - Number(b.id))
  return facets
}

/** A published case (or its earlier revision of that number) with the visits published for it now. */
export async function caseBySlug(
  slug: string,
  revision?: number,
): Promise<(Published<CaseBody> & { visits: Published<VisitBody>[] }) | null> {
  const found = await publishedBySlug('case', slug, revision ?? null)
  return found && { ...found, visits: await publishedVisits(found.entryId) }
}

interface Row extends Omit<CaseSummary, 'latest' | 'yearsWatched'> {
  yearsWatched: number
  latestOn: Date | null
  latestJoint: JointState
  latestUnit: UnitState
  latestDamp: DampState
}

async function select(rest: Prisma.Sql): Promise<CaseSummary[]> {
  const rows = await db().$queryRaw<Row[]>`
    SELECT i.slug, i.revision, i.title, i.summary, i.country, i.region, i.units, i.wall, i.uses, i.visits,
      i."yearsWatched", i."latestOn", i."latestJoint", i."latestUnit", i."latestDamp", i.invented
    FROM ${TABLE} ${rest}`
  return rows.map(({ latestOn, latestJoint, latestUnit, latestDamp, yearsWatched, ...row }) => ({
    ...row,
    yearsWatched: yearsWatched < 0 ? null : yearsWatched,
    latest: latestOn && {
      on: latestOn.toISOString().slice(0, 10),
      joint: latestJoint,
      unit: latestUnit,
      damp: latestDamp,
    },
  }))
}

function where({ country, unit, use, minYears, recipe }: CaseFilter): Prisma.Sql {
  return every([
    ...(country === undefined ? [] : [Prisma.sql`i.country = ${country}`]),
    ...(unit === undefined ? [] : [Prisma.sql`i.units && ${oneOrMore(unit)}::text[]`]),
    ...(use === undefined ? [] : [Prisma.sql`i.uses @> ${[use]}::text[]`]),
    ...(minYears === undefined ? [] : [Prisma.sql`i."yearsWatched" >= ${minYears}::float8`]),
    ...(recipe === undefined
      ? []
      : [
          Prisma.sql`i."entryId" IN (SELECT w."caseEntryId" FROM "WorkIndex" w
            JOIN "RecipeIndex" r ON r."entryId" = w."recipeEntryId" WHERE r.slug = ${recipe})`,
        ]),
  ])
}

/** Rows after the one whose key is given: a row comparison would need both columns to run the same way. */
function afterKey(after: string): Prisma.Sql {
  const [, years, slug] = /^(-1|\d{1,3}(?:\.\d{1,2})?)_([a-z0-9-]{1,80})$/.exec(after) ?? []
  if (years === undefined || slug === undefined) throw noSuchPage(after)
  return Prisma.sql`(i."yearsWatched" <= ${Number(years)}::float8
    AND (i."yearsWatched" < ${Number(years)}::float8 OR i.slug > ${slug}))`
}
