import type { WrittenKind } from '#lib/entry/body.ts'
import { ERASED } from '#lib/entry/erased.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { db } from './client.ts'

/** How an entry stands today, for somebody who holds a copy of it. */
export interface Standing {
  readonly slug: string
  readonly kind: WrittenKind
  readonly state: 'published' | 'withdrawn' | 'erased'
  /** The revision published now. */
  readonly revision: number | null
}

/** How these entries stand; those that were never published are left out. */
export async function standingOf(slugs: readonly string[]): Promise<Standing[]> {
  const asked = slugs.filter(isSlug)
  if (asked.length === 0) return []
  return db().$queryRaw<Standing[]>`
    SELECT e.slug, e.kind::text AS kind, p.number AS revision,
      CASE WHEN last.body = ${ERASED}::jsonb THEN 'erased' WHEN e."withdrawnAt" IS NOT NULL THEN 'withdrawn' ELSE 'published' END AS state
    FROM "Entry" e
    LEFT JOIN "Revision" p ON p.id = e."publishedRevisionId"
    JOIN LATERAL (
      SELECT r.body FROM "Revision" r
      WHERE r."entryId" = e.id AND r.state IN ('published', 'withdrawn')
      ORDER BY r.number DESC LIMIT 1
    ) last ON true
    WHERE e.slug = ANY(${asked})
    ORDER BY e.slug COLLATE "C"`
}
