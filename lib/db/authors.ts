import type { Db } from './client.ts'
import { db } from './client.ts'

/** Keys of everyone who wrote a revision of this entry, up to the one of that number where one is given. */
export async function authorsOf(entryId: string, upTo?: number, tx: Db = db()): Promise<string[]> {
  const rows = await tx.revision.findMany({
    where: { entryId, ...(upTo !== undefined && { number: { lte: upTo } }) },
    distinct: ['authorKey'],
    select: { authorKey: true },
  })
  return rows.map(({ authorKey }) => authorKey)
}

/** Stands for the last revision there is, whatever its number. */
const LAST = 2_147_483_647

/**
 * Keys of everyone who wrote a part of a revision: of it and the ones before it, and of every version that any of those
 * was adapted from, to the end of the chain. Circles end by themselves: what was followed once is not followed again. An
 * erased body no longer says what it was adapted from; the draft that it was sent from does.
 *
 * @param upTo number of the revision; without one, of the whole entry
 */
export async function writersOf(entryId: string, upTo: number = LAST, tx: Db = db()): Promise<string[]> {
  const rows = await tx.$queryRaw<{ authorKey: string }[]>`
    WITH RECURSIVE grown("entryId", "upTo") AS (
      SELECT ${entryId}::uuid, ${upTo}::int
      UNION
      SELECT e.id, split_part(f.ref, '@', 2)::int
      FROM grown g
      JOIN "Revision" r ON r."entryId" = g."entryId" AND r.number <= g."upTo"
      LEFT JOIN "Draft" d ON d."submittedRevisionId" = r.id
      CROSS JOIN LATERAL (SELECT coalesce(r.body ->> 'adaptedFrom', d."adaptedFrom") AS ref) f
      JOIN "Entry" e ON e.slug = split_part(f.ref, '@', 1)
      WHERE f.ref ~ '^[^@]+@[0-9]{1,9}$'
    )
    SELECT DISTINCT r."authorKey" FROM grown g
    JOIN "Revision" r ON r."entryId" = g."entryId" AND r.number <= g."upTo"`
  return rows.map(({ authorKey }) => authorKey)
}
