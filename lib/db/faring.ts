import type { Family } from '#lib/entry/terms.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type CaseFilter, caseWhere } from './case-filter.ts'
import { db } from './client.ts'
import type { Broader } from './facet.ts'

/** How the walls of some cases were last seen, by a family of mortar that a work of theirs used. */
export interface Faring {
  readonly family: Family
  /** Cases of the family; a case counts under each of its families. */
  readonly walls: number
  /** Those of them that are demonstration. */
  readonly invented: number
  /** Those that were visited, and carry no other family: the last look at the others may have been at another. */
  readonly seen: number
  /** Of those seen: joint sound or finely cracked, and unit sound, at the last visit. */
  readonly jointHolds: number
  readonly unitSound: number
  /** Years that the longest watched of those seen was watched; null where there is none. */
  readonly longestYears: number | null
}

export interface Fared {
  readonly families: readonly Faring[]
  /** Cases left out of all of this until a reviewer has answered. */
  readonly disputed: number
}

/** Of the cases that a filter takes. */
export const faringOf = (filter: CaseFilter, broader: Broader): Promise<Fared> =>
  faring(caseWhere(filter, broader))

/** Of these cases. */
export const faringOfCases = (slugs: readonly string[]): Promise<Fared> =>
  faring(Prisma.sql`i.slug = ANY(${[...slugs]}::text[])`)

const SEEN = Prisma.sql`i."latestOn" IS NOT NULL AND cardinality(i.families) = 1`

async function faring(where: Prisma.Sql): Promise<Fared> {
  const [families, [left]] = await Promise.all([
    familiesOf(where),
    db().$queryRaw<{ cases: number }[]>`
      SELECT count(*)::int AS cases FROM "CaseIndex" i WHERE ${where} AND i.disputed`,
  ])
  return { families, disputed: left?.cases ?? 0 }
}

const familiesOf = (where: Prisma.Sql) => db().$queryRaw<Faring[]>`
  SELECT family, count(*)::int AS walls, count(*) FILTER (WHERE i.invented)::int AS invented,
    count(*) FILTER (WHERE ${SEEN})::int AS seen,
    count(*) FILTER (WHERE ${SEEN} AND i."latestJoint" IN ('sound', 'fine-cracks'))::int AS "jointHolds",
    count(*) FILTER (WHERE ${SEEN} AND i."latestUnit" = 'sound')::int AS "unitSound",
    max(i."yearsWatched") FILTER (WHERE ${SEEN}) AS "longestYears"
  FROM "CaseIndex" i, unnest(i.families) AS family
  WHERE ${where} AND NOT i.disputed
  GROUP BY family ORDER BY walls DESC, family COLLATE "C"`
