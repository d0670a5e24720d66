import type { WrittenKind } from '#lib/entry/body.ts'
import type { Db } from './client.ts'

/** Where an entry's two chains end: what is signed, so that a history written anew can be told. */
export interface Head {
  readonly entryId: string
  readonly kind: WrittenKind
  readonly slug: string
  /** How many revisions there are, and the digest of the last. */
  readonly revisions: number
  readonly revision: string
  /** How many decisions there are, and the digest of the last; null before the first. */
  readonly decisions: number
  readonly decision: string | null
}

/** The heads of all chains, by entry. */
export function readHeads(tx: Db): Promise<Head[]> {
  return tx.$queryRaw<Head[]>`
    SELECT e.id AS "entryId", e.kind::text AS kind, e.slug, r.number AS revisions, r.digest AS revision,
      coalesce(d.number, 0) AS decisions, d.digest AS decision
    FROM "Entry" e
    JOIN LATERAL (SELECT number, digest FROM "Revision" WHERE "entryId" = e.id ORDER BY number DESC LIMIT 1) r ON true
    LEFT JOIN LATERAL (SELECT number, digest FROM "Decision" WHERE "entryId" = e.id ORDER BY number DESC LIMIT 1) d
      ON true
    ORDER BY e.id`
}

/** Slugs of the signed heads that the record no longer leads to: a revision or decision is gone or another. */
export async function contradicted(tx: Db, signed: readonly Head[]): Promise<string[]> {
  const rows = await tx.$queryRaw<{ slug: string }[]>`
    SELECT h.slug FROM unnest(
      ${signed.map(({ entryId }) => entryId)}::uuid[], ${signed.map(({ slug }) => slug)}::text[],
      ${signed.map(({ revisions }) => revisions)}::int[], ${signed.map(({ revision }) => revision)}::text[],
      ${signed.map(({ decisions }) => decisions)}::int[], ${signed.map(({ decision }) => decision ?? '')}::text[]
    ) AS h(id, slug, revisions, revision, decisions, decision)
    LEFT JOIN "Revision" r ON r."entryId" = h.id AND r.number = h.revisions
    LEFT JOIN "Decision" d ON d."entryId" = h.id AND d.number = h.decisions
    WHERE r.digest IS DISTINCT FROM h.revision OR coalesce(d.digest, '') <> h.decision
    ORDER BY h.slug COLLATE "C"`
  return rows.map(({ slug }) => slug)
}
