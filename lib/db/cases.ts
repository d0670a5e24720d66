import type { CaseBody } from '#lib/entry/case.ts'
import type { DampState, JointState, UnitState, Use, WallType } from '#lib/entry/terms.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type CaseFilter, caseWhere } from './case-filter.ts'
import { db } from './client.ts'
import type { Broader } from './facet.ts'
import { materialsIn, readMaterials } from './materials.ts'
import { noSuchPage, pageSize } from './page.ts'
import { type Published, publishedWithVisits } from './published.ts'

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

export interface CasePage {
  readonly cases: CaseSummary[]
  readonly total: number
  /** Give it as `after` for the next page; null on the last. */
  readonly next: string | null
}

const TABLE = Prisma.sql`"CaseIndex" i`

/** Published cases, the longest watched first. */
export async function listCases(
  filter: CaseFilter = {},
  { after, limit = 20 }: { after?: string | undefined; limit?: number | undefined } = {},
  broader: Broader = [],
): Promise<CasePage> {
  const size = pageSize(limit)
  const where = caseWhere(filter, broader)
  const from = after === undefined ? Prisma.sql`true` : afterKey(after)
  const [rows, totals] = await Promise.all([
    select(Prisma.sql`WHERE ${where} AND ${from} ORDER BY i."yearsWatched" DESC, i.slug LIMIT ${size + 1}`),
    db().$queryRaw<{ total: number }[]>`SELECT count(*)::int AS total FROM ${TABLE} WHERE ${where}`,
  ])
  const cases = rows.slice(0, size)
  const last = cases.at(-1)
  const next = rows.length > size && last !== undefined ? `${last.yearsWatched ?? -1}_${last.slug}` : null
  return { cases, total: totals[0]?.total ?? 0, next }
}

/** The cases published last, newest first. */
export const newestCases = (limit = 6): Promise<CaseSummary[]> =>
  select(Prisma.sql`ORDER BY i."publishedAt" DESC, i.slug LIMIT ${pageSize(limit)}`)

/** A published case (or its earlier revision of that number) with the visits published for it now. */
export async function caseBySlug(
  slug: string,
  revision?: number,
): Promise<(Published<CaseBody> & { visits: Published<VisitBody>[] }) | null> {
  const read = await publishedWithVisits(slug, revision ?? null)
  await readMaterials(materialsIn(read?.found.body ?? {}))
  return read && { ...read.found, visits: read.visits }
}

interface Row extends Omit<CaseSummary, 'latest' | 'yearsWatched'> {
  yearsWatched: number
  latestOn: Date | null
  latestJoint: JointState
  latestUnit: UnitState
  latestDamp: DampState
}

const COLUMNS = Prisma.sql`i.slug, i.revision, i.title, i.summary, i.country, i.region, i.units, i.wall, i.uses,
  i.visits, i."yearsWatched", i."latestOn", i."latestJoint", i."latestUnit", i."latestDamp", i.invented`

const select = async (rest: Prisma.Sql): Promise<CaseSummary[]> =>
  (await db().$queryRaw<Row[]>`SELECT ${COLUMNS} FROM ${TABLE} ${rest}`).map(summaryOf)

const summaryOf = ({
  latestOn,
  latestJoint,
  latestUnit,
  latestDamp,
  yearsWatched,
  ...row
}: Row): CaseSummary => ({
  ...row,
  yearsWatched: yearsWatched < 0 ? null : yearsWatched,
  latest: latestOn && {
    on: latestOn.toISOString().slice(0, 10),
    joint: latestJoint,
    unit: latestUnit,
    damp: latestDamp,
  },
})

/** Rows after the one whose key is given: a row comparison would need both columns to run the same way. */
function afterKey(after: string): Prisma.Sql {
  const [, years, slug] = /^(-1|\d{1,3}(?:\.\d{1,2})?)_([a-z0-9-]{1,80})$/.exec(after) ?? []
  if (years === undefined || slug === undefined) throw noSuchPage(after)
  return Prisma.sql`(i."yearsWatched" <= ${Number(years)}::float8
    AND (i."yearsWatched" < ${Number(years)}::float8 OR i.slug > ${slug}))`
}
