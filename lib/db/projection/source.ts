import type { WrittenKind } from '#lib/entry/body.ts'
import type { Db } from '../client.ts'

/** A published revision as the projections are made from it. */
export interface PublishedRow {
  readonly entryId: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly revision: number
  readonly body: unknown
  readonly shape: number
  readonly authorKey: string
  /** When this revision was first published. */
  readonly publishedAt: Date
}

/** The published revisions of these entries; entries with none are left out. */
export function publishedRows(
  tx: Db,
  kind: WrittenKind,
  entryIds: readonly string[],
): Promise<PublishedRow[]> {
  return tx.$queryRaw<PublishedRow[]>`
    SELECT e.id AS "entryId", e.kind::text AS kind, e.slug, r.number AS revision, r.body, r.shape, r."authorKey",
      (SELECT min(d.at) FROM "Decision" d WHERE d."revisionId" = r.id AND d.outcome = 'publish') AS "publishedAt"
    FROM "Entry" e JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE e.id = ANY(${[...entryIds]}::uuid[]) AND e.kind = ${kind}::"Kind" ORDER BY e.slug`
}

/** Slug → entry id, for the entries of a kind that exist. */
export async function entryIds(
  tx: Db,
  kind: WrittenKind,
  slugs: Iterable<string>,
): Promise<ReadonlyMap<string, string>> {
  const wanted = [...new Set(slugs)]
  const rows = await tx.entry.findMany({
    where: { kind, slug: { in: wanted } },
    select: { id: true, slug: true },
  })
  return new Map(rows.map(({ id, slug }) => [slug, id]))
}

/** `slug@3` in its two halves. */
export function splitRef(ref: string): { slug: string; revision: number } {
  const at = ref.lastIndexOf('@')
  return { slug: ref.slice(0, at), revision: Number(ref.slice(at + 1)) }
}

/** A title in plain lower-case letters, so that every server sorts it alike under the "C" collation. */
export const sortable = (title: string): string =>
  title
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()

/** The items of a list without repeats, in plain order. */
export const distinct = (items: Iterable<string>): string[] => [...new Set(items)].sort()
