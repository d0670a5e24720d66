import type { WrittenKind } from '#lib/entry/body.ts'
import type { RevisionState } from '#lib/entry/state.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import { isSha256, shows } from './photos.ts'

/** A revision that shows a picture. */
export interface Showing {
  readonly entryId: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly revision: number
  readonly state: RevisionState
}

export interface SimilarPhoto {
  readonly sha256: string
  /** Bits of 64 in which the two likenesses differ; 0 also for the same picture. */
  readonly differs: number
  /** Where it is shown, but for the entry that is asked about; never empty. */
  readonly shownBy: readonly Showing[]
}

/**
 * Pictures of other entries that are this one or look like it, the likest first: for the review desk.
 *
 * @param exceptEntryId the entry under review, whose own pictures are no news
 * @param bits most bits of 64 that may differ
 */
export async function similarPhotos(
  sha256: string,
  exceptEntryId: string | null = null,
  bits = 10,
  limit = 20,
): Promise<SimilarPhoto[]> {
  if (!isSha256(sha256)) return []
  const rows = await db().$queryRaw<(Showing & { sha256: string; differs: number })[]>`
    WITH likeness AS (
      SELECT p.sha256, bit_count(('x' || p.likeness)::bit(64) # ('x' || q.likeness)::bit(64))::int AS differs
      FROM "Photo" p, "Photo" q WHERE q.sha256 = ${sha256} AND p."erasedAt" IS NULL
    ), alike AS MATERIALIZED (
      SELECT * FROM likeness WHERE differs <= ${bits} ORDER BY differs, sha256 LIMIT 200
    )
    SELECT DISTINCT ON (a.differs, a.sha256, e.id) a.sha256, a.differs, e.id AS "entryId", e.kind::text AS kind,
      e.slug, r.number AS revision, r.state::text AS state
    FROM alike a
    -- Few revisions show a picture, though many are guessed: each is looked up, not all of them read.
    CROSS JOIN LATERAL (SELECT * FROM "Revision" r WHERE ${shows(Prisma.sql`a.sha256`)} OFFSET 0) r
    CROSS JOIN LATERAL (SELECT * FROM "Entry" f WHERE f.id = r."entryId" OFFSET 0) e
    WHERE e.id IS DISTINCT FROM ${exceptEntryId}::uuid
    ORDER BY a.differs, a.sha256, e.id, r.number DESC LIMIT ${limit * 5}`
  const found = new Map<string, SimilarPhoto & { shownBy: Showing[] }>()
  for (const { sha256: other, differs, ...showing } of rows) {
    const known = found.get(other) ?? { sha256: other, differs, shownBy: [] }
    known.shownBy.push(showing)
    found.set(other, known)
  }
  return [...found.values()].slice(0, limit)
}
