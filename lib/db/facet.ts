import { Prisma } from '../../prisma/generated/client.ts'

/** How many entries a choice would leave. */
export interface Count {
  readonly id: string
  readonly count: number
}

/**
 * Pairs of a unit and a term that covers it (itself included), as content's hierarchy has them. With them the
 * unit facet counts at every level, each entry once; without them it counts the terms as written.
 */
export type Broader = readonly (readonly [unit: string, broader: string])[]

interface FacetRow {
  facet: string
  id: string
  count: number
}

/** One `id, count` selection per facet, made into one query; `where` leaves the facet's own choice out. */
export interface FacetQuery {
  readonly table: Prisma.Sql
  readonly where: (except: string) => Prisma.Sql
}

/** Counts of a plain column, of an array column, and of units under their hierarchy. */
export const countColumn = ({ table, where }: FacetQuery, facet: string, column: Prisma.Sql) => Prisma.sql`
  SELECT ${facet} AS facet, ${column} COLLATE "C" AS id, count(*)::int AS count FROM ${table}
  WHERE ${where(facet)} GROUP BY ${column} COLLATE "C"`

// Few sets of terms are shared by many entries, so entries are counted by set first and taken apart after.
export const countArray = (query: FacetQuery, facet: string, column: Prisma.Sql) => Prisma.sql`
  SELECT ${facet} AS facet, item COLLATE "C" AS id, sum(s.count)::int AS count
  FROM (${countSets(query, facet, column)}) s, unnest(s.items) AS item GROUP BY item COLLATE "C"`

export function countUnits(query: FacetQuery, broader: Broader): Prisma.Sql {
  if (broader.length === 0) return countArray(query, 'unit', Prisma.sql`i.units`)
  return Prisma.sql`
    SELECT 'unit' AS facet, t.broader COLLATE "C" AS id, sum(t.count)::int AS count
    FROM (
      SELECT DISTINCT s.items, s.count, b.broader
      FROM (${countSets(query, 'unit', Prisma.sql`i.units`)}) s, unnest(s.items) AS item
      JOIN unnest(${broader.map(([unit]) => unit)}::text[], ${broader.map(([, term]) => term)}::text[])
        AS b(unit, broader) ON b.unit = item
    ) t GROUP BY t.broader COLLATE "C"`
}

const countSets = ({ table, where }: FacetQuery, facet: string, column: Prisma.Sql) => Prisma.sql`
  SELECT ${column} AS items, count(*) AS count FROM ${table} WHERE ${where(facet)} GROUP BY ${column}`

/** Rows of all facets → one list per facet, most first. */
export function groupFacets<F extends string>(
  facets: readonly F[],
  rows: readonly FacetRow[],
): Record<F, Count[]> {
  const groups = Object.fromEntries(facets.map((facet): [F, Count[]] => [facet, []])) as Record<F, Count[]>
  for (const { facet, id, count } of rows) groups[facet as F]?.push({ id, count })
  for (const facet of facets) groups[facet].sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
  return groups
}

/** All conditions together; none means every row. */
export const every = (conditions: readonly Prisma.Sql[]): Prisma.Sql =>
  conditions.length === 0 ? Prisma.sql`true` : Prisma.join([...conditions], ' AND ')

export const oneOrMore = (value: string | readonly string[]): string[] =>
  typeof value === 'string' ? [value] : [...value]
