import type { WrittenKind } from '#lib/entry/body.ts'
import { ERASED } from '#lib/entry/erased.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { db } from './client.ts'

/** What may still be said about an entry that was taken down. */
export interface Withdrawn {
  readonly kind: WrittenKind
  /** Title of the revision that was withdrawn; empty for a visit. */
  readonly title: string
  readonly at: Date
  /** Why, in the words of the one who withdrew it. */
  readonly words: string
  /** Its body is gone for good; the words say why. */
  readonly erased: boolean
}

/** How an address stands, and the revision published there now (null when none is). */
export interface AddressState {
  readonly state: 'open' | 'gone' | 'absent'
  readonly latest: number | null
}

const ABSENT: AddressState = { state: 'absent', latest: null }

/**
 * Whether an entry's address can be read (`open`), was taken down or erased (`gone`), or holds nothing (`absent`): no
 * published entry of this kind, or the revision asked for was never published, as `publishedBySlug` has it.
 */
export async function addressState(
  kind: WrittenKind,
  slug: string,
  revision?: number,
): Promise<AddressState> {
  if (!isSlug(slug)) return ABSENT
  const [row] = await db().$queryRaw<AddressState[]>`
    SELECT p.number AS latest,
      CASE WHEN e."withdrawnAt" IS NOT NULL OR r.body = ${ERASED}::jsonb THEN 'gone' WHEN r.id IS NOT NULL THEN 'open' ELSE 'absent' END AS state
    FROM "Entry" e
    LEFT JOIN "Revision" p ON p.id = e."publishedRevisionId"
    LEFT JOIN "Revision" r ON r."entryId" = e.id AND r.number = coalesce(${revision ?? null}::bigint, p.number)
      AND p.id IS NOT NULL AND r.state IN ('published', 'superseded')
    WHERE e.slug = ${slug} AND e.kind = ${kind}::"Kind"`
  return row ?? ABSENT
}

/** The withdrawal of the entry at this address; null when it stands or never was. */
export async function withdrawnEntry(slug: string): Promise<Withdrawn | null> {
  if (!isSlug(slug)) return null
  const [row] = await db().$queryRaw<Withdrawn[]>`
    SELECT e.kind::text AS kind, coalesce(r.body ->> 'title', '') AS title, d.at, d.words,
      r.body = ${ERASED}::jsonb AS erased
    FROM "Entry" e
    JOIN "Decision" d ON d."entryId" = e.id AND d.outcome IN ('withdraw', 'uphold', 'erase')
    JOIN "Revision" r ON r.id = d."revisionId" AND r.state = 'withdrawn'
    WHERE e.slug = ${slug} AND e."withdrawnAt" IS NOT NULL
    ORDER BY d.number DESC LIMIT 1`
  return row ?? null
}
