import { type BodyOf, readBody, type WrittenKind } from '#lib/entry/body.ts'
import { ERASED } from '#lib/entry/erased.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { connections } from './client.ts'

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

const COLUMNS = `
  e.slug, e.id AS "entryId", r.number AS revision, p.number AS latest, r.body, r.shape, r."authorKey" AS author,
  r."createdAt" AS "submittedAt", d.at AS "publishedAt", r.note, r.digest
  FROM "Entry" e
  JOIN "Revision" p ON p.id = e."publishedRevisionId"`

const FIRST_PUBLISHED = `
  JOIN LATERAL (
    SELECT at FROM "Decision" WHERE "revisionId" = r.id AND outcome = 'publish' ORDER BY number LIMIT 1
  ) d ON true`

/**
 * The published revision at this address, or an earlier one that once was published; null when there is none,
 * when it never was published, when its body was erased, or when the entry is withdrawn.
 */
export async function publishedBySlug<K extends WrittenKind>(
  kind: K,
  slug: string,
  revision: number | null,
): Promise<Published<BodyOf<K>> | null> {
  // An address may hold anything, also what the database cannot read.
  if (!isSlug(slug)) return null
  const { rows } = await connections().query<Row>({
    name: 'published-by-slug',
    text: `SELECT ${ONE}`,
    values: [slug, kind, revision, ERASED],
  })
  const [row] = rows
  return row === undefined ? null : toPublished(kind, row)
}

/** {@link publishedBySlug} of a case together with the visits published for it now, by work, then date. */
export async function publishedWithVisits(
  slug: string,
  revision: number | null,
): Promise<{ found: Published<BodyOf<'case'>>; visits: Published<BodyOf<'visit'>>[] } | null> {
  if (!isSlug(slug)) return null
  // One round trip, planned once a connection: this is what most pages wait for, and planning took nine tenths of it.
  const { rows } = await connections().query<Row & { work: string | null; on: Date | null }>({
    name: 'published-with-visits',
    text: `SELECT NULL::text COLLATE "C" AS work, NULL::date AS "on", ${ONE}
    UNION ALL SELECT v.work, v."on", ${VISITS} ORDER BY work NULLS FIRST, "on", slug`,
    values: [slug, 'case', revision, ERASED],
  })
  const [row, ...visits] = rows.map(({ work, on: _, ...one }) => ({ isVisit: work !== null, one }))
  if (row === undefined || row.isVisit) return null
  return { found: toPublished('case', row.one), visits: visits.map(({ one }) => toPublished('visit', one)) }
}

const ONE = `${COLUMNS}
  JOIN "Revision" r ON r."entryId" = e.id AND r.number = coalesce($3::bigint, p.number)
  ${FIRST_PUBLISHED}
  WHERE e.slug = $1 AND e.kind = $2::"Kind" AND r.state IN ('published', 'superseded') AND r.body <> $4::jsonb`

const VISITS = `${COLUMNS}
  JOIN "Revision" r ON r.id = p.id
  JOIN "VisitIndex" v ON v."entryId" = e.id
  ${FIRST_PUBLISHED}
  WHERE v."caseEntryId" = (SELECT id FROM "Entry" WHERE slug = $1)`

function toPublished<K extends WrittenKind>(kind: K, row: Row): Published<BodyOf<K>> {
  const { shape, body, ...rest } = row
  return { ...rest, body: readBody(kind, body, shape) }
}
