import { type BodyOf, readBody, type WrittenKind } from '#lib/entry/body.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'

/** One published (or since superseded) revision of an entry, as anyone may read and cite it. */
export interface Published<B> {
  readonly slug: string
  readonly entryId: string
  readonly revision: number
  /** The number published now; greater than `revision` when an earlier one was asked for. */
  readonly latest: number
  readonly body: B
  /** Key of the author; the words shown for it are the page's business. */
  readonly author: string
  readonly submittedAt: Date
  readonly publishedAt: Date
  readonly note: string
  readonly digest: string
}

interface Row {
  slug: string
  entryId: string
  revision: number
  latest: number
  body: unknown
  shape: number
  author: string
  submittedAt: Date
  publishedAt: Date
  note: string
  digest: string
}

const COLUMNS = Prisma.sql`
  e.slug, e.id AS "entryId", r.number AS revision, p.number AS latest, r.body, r.shape, r."authorKey" AS author,
  r."createdAt" AS "submittedAt", d.at AS "publishedAt", r.note, r.digest
  FROM "Entry" e
  JOIN "Revision" p ON p.id = e."publishedRevisionId"`

const FIRST_PUBLISHED = Prisma.sql`
  JOIN LATERAL (
    SELECT at FROM "Decision" WHERE "revisionId" = r.id AND outcome = 'publish' ORDER BY number LIMIT 1
  ) d ON true`

/**
 * The published revision at this address, or an earlier one that once was published; null when there is none,
 * when it never was published, or when the entry is withdrawn.
 */
export async function publishedBySlug<K extends WrittenKind>(
  kind: K,
  slug: string,
  revision: number | null,
): Promise<Published<BodyOf<K>> | null> {
  // An address may hold anything, also what the database cannot read.
  if (!isSlug(slug)) return null
  const [row] = await db().$queryRaw<Row[]>`
    SELECT ${COLUMNS}
    JOIN "Revision" r ON r."entryId" = e.id AND r.number = coalesce(${revision}::bigint, p.number)
    ${FIRST_PUBLISHED}
    WHERE e.slug = ${slug} AND e.kind = ${kind}::"Kind" AND r.state IN ('published', 'superseded')`
  return row === undefined ? null : toPublished(kind, row)
}

/** The visits published now for a case, by work, then date. */
export async function publishedVisits(caseEntryId: string): Promise<Published<BodyOf<'visit'>>[]> {
  const rows = await db().$queryRaw<Row[]>`
    SELECT ${COLUMNS}
    JOIN "Revision" r ON r.id = p.id
    JOIN "VisitIndex" v ON v."entryId" = e.id
    ${FIRST_PUBLISHED}
    WHERE v."caseEntryId" = ${caseEntryId}::uuid
    ORDER BY v.work COLLATE "C", v."on", v.slug`
  return rows.map((row) => toPublished('visit', row))
}

function toPublished<K extends WrittenKind>(kind: K, row: Row): Published<BodyOf<K>> {
  const { shape, body, ...rest } = row
  return { ...rest, body: readBody(kind, body, shape) }
}
