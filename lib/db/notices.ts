import type { WrittenKind } from '#lib/entry/body.ts'
import type { NoticeKind } from '#lib/entry/notices.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import { noSuchPage, pageSize } from './page.ts'

/** Something that somebody is told. */
export interface NoticeLine {
  readonly id: string
  readonly what: NoticeKind
  readonly kind: WrittenKind
  readonly slug: string
  /** Of a visit, its case's. */
  readonly title: string
  readonly caseSlug: string | null
  readonly number: number
  readonly at: Date
  readonly isRead: boolean
}

/** What somebody is told, the newest first. */
export async function noticesFor(
  forKey: string,
  { after, limit = 30 }: { after?: string | undefined; limit?: number } = {},
): Promise<{ notices: NoticeLine[]; next: string | null }> {
  if (after !== undefined && !/^[0-9a-f-]{36}$/.test(after)) throw noSuchPage(after)
  const size = pageSize(limit)
  // Ids are made in the order of time, so one column pages.
  const from = after === undefined ? Prisma.sql`true` : Prisma.sql`n.id < ${after}::uuid`
  const rows = await db().$queryRaw<NoticeLine[]>`
    SELECT n.id::text AS id, n.what, e.kind::text AS kind, e.slug, n.number, n.at, n."readAt" IS NOT NULL AS "isRead",
      coalesce(r.body ->> 'title', c.title, e.slug) AS title, r.body ->> 'case' AS "caseSlug"
    FROM "Notice" n JOIN "Entry" e ON e.id = n."entryId"
    JOIN LATERAL (SELECT body FROM "Revision" r WHERE r."entryId" = e.id ORDER BY r.number DESC LIMIT 1) r ON true
    LEFT JOIN "CaseIndex" c ON c.slug = r.body ->> 'case'
    WHERE n."forKey" = ${forKey} AND ${from} ORDER BY n.id DESC LIMIT ${size + 1}`
  const notices = rows.slice(0, size)
  return { notices, next: rows.length > size ? (notices.at(-1)?.id ?? null) : null }
}

/** How many they have not read. */
export const unreadNotices = (forKey: string): Promise<number> =>
  db().notice.count({ where: { forKey, readAt: null } })
