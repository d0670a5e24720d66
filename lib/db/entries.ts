import type { WrittenKind } from '#lib/entry/body.ts'
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
}

/** The withdrawal of the entry at this address; null when it stands or never was. */
export async function withdrawnEntry(slug: string): Promise<Withdrawn | null> {
  if (!isSlug(slug)) return null
  const [row] = await db().$queryRaw<Withdrawn[]>`
    SELECT e.kind::text AS kind, coalesce(r.body ->> 'title', '') AS title, d.at, d.words
    FROM "Entry" e
    JOIN "Decision" d ON d."entryId" = e.id AND d.outcome = 'withdraw'
    JOIN "Revision" r ON r.id = d."revisionId"
    WHERE e.slug = ${slug} AND e."withdrawnAt" IS NOT NULL
    ORDER BY d.number DESC LIMIT 1`
  return row ?? null
}
