import type { Db } from './client.ts'
import { db } from './client.ts'

/**
 * Keys of everyone who wrote a revision of this entry, up to the one of that number where one is given: those who work
 * on it, also where what they sent was declined.
 */
export async function authorsOf(entryId: string, upTo?: number, tx: Db = db()): Promise<string[]> {
  const rows = await tx.revision.findMany({
    where: { entryId, ...(upTo !== undefined && { number: { lte: upTo } }) },
    distinct: ['authorKey'],
    select: { authorKey: true },
  })
  return rows.map(({ authorKey }) => authorKey)
}

/**
 * Keys of those whose words a revision holds or grew from, in the order in which they first wrote: its author, and the
 * authors of the revision it was based on, and so on. What was declined, with nothing built on it, names nobody.
 */
export async function authorsBehind(entryId: string, number: number, tx: Db = db()): Promise<string[]> {
  const rows = await tx.$queryRaw<{ authorKey: string }[]>`
    WITH RECURSIVE line AS (
      SELECT number, "basedOn", "authorKey" FROM "Revision"
      WHERE "entryId" = ${entryId}::uuid AND number = ${number}
      UNION ALL
      SELECT r.number, r."basedOn", r."authorKey" FROM line l
      JOIN "Revision" r ON r."entryId" = ${entryId}::uuid AND r.number = l."basedOn" AND r.number < l.number
    )
    SELECT "authorKey" FROM line GROUP BY "authorKey" ORDER BY min(number)`
  return rows.map(({ authorKey }) => authorKey)
}

/** Whom the right to answer beside a visit is asked about. */
export async function partiesTo(
  visit: { readonly entryId: string; readonly caseSlug: string },
  tx: Db = db(),
): Promise<{ caseAuthorKeys: string[]; visitAuthorKeys: string[] }> {
  const visited = await tx.entry.findUnique({
    where: { slug: visit.caseSlug },
    select: { id: true, published: { select: { number: true } } },
  })
  const number = visited?.published?.number
  return {
    caseAuthorKeys:
      visited === null || number === undefined ? [] : await authorsBehind(visited.id, number, tx),
    visitAuthorKeys: await authorsOf(visit.entryId, undefined, tx),
  }
}

/**
 * Of the published visits to these cases, those of another person than the cases' authors. Whoever wrote the first
 * version of a visit saw the wall; who corrected its words later need not have.
 */
export async function visitsByOthers(
  caseEntryIds: readonly string[],
  tx: Db = db(),
): Promise<ReadonlySet<string>> {
  const ids = [...caseEntryIds]
  const rows = await tx.$queryRaw<{ entryId: string }[]>`
    WITH RECURSIVE line AS (
      SELECT r."entryId", r.number, r."basedOn", r."authorKey" FROM "Entry" e
      JOIN "Revision" r ON r.id = e."publishedRevisionId" WHERE e.id = ANY(${ids}::uuid[])
      UNION ALL
      SELECT r."entryId", r.number, r."basedOn", r."authorKey" FROM line l
      JOIN "Revision" r ON r."entryId" = l."entryId" AND r.number = l."basedOn" AND r.number < l.number
    )
    SELECT v."entryId" FROM "VisitIndex" v
    JOIN "Revision" f ON f."entryId" = v."entryId" AND f.number = 1
    WHERE v."caseEntryId" = ANY(${ids}::uuid[])
      AND NOT EXISTS (SELECT FROM line l WHERE l."entryId" = v."caseEntryId" AND l."authorKey" = f."authorKey")`
  return new Set(rows.map(({ entryId }) => entryId))
}

/** Of these entries, those of which this person wrote a revision. */
export async function writtenInBy(key: string, entryIds: readonly string[]): Promise<ReadonlySet<string>> {
  const rows = await db().revision.findMany({
    where: { entryId: { in: [...entryIds] }, authorKey: key },
    distinct: ['entryId'],
    select: { entryId: true },
  })
  return new Set(rows.map(({ entryId }) => entryId))
}

/** Stands for the last revision there is, whatever its number. */
const LAST = 2_147_483_647

/**
 * Keys of everyone who has a part in an entry: who wrote any revision of it, and who wrote what any of those was
 * adapted from, to the end of the chain. Circles end by themselves: what was followed once is not followed again. An
 * erased body no longer says what it was adapted from; the draft that it was sent from does.
 *
 * Also whoever wrote a later revision than the one to be judged: theirs waits to take its place.
 */
export async function writersOf(entryId: string, tx: Db = db()): Promise<string[]> {
  const rows = await tx.$queryRaw<{ authorKey: string }[]>`
    WITH RECURSIVE grown("entryId", "upTo") AS (
      SELECT ${entryId}::uuid, ${LAST}::int
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
