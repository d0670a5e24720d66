import { v7 } from 'uuid'
import type { Actor } from '#lib/access/actor.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { type Db, db } from './client.ts'
import { every } from './facet.ts'
import { noSuchPage, pageSize } from './page.ts'

/** One thing that was done. */
export interface AuditLine {
  readonly id: string
  readonly at: Date
  /** Author key of who did it; `system` and `guest` are nobody's. */
  readonly actorKey: string
  readonly act: string
  /** What it was done to: an entry's address, an author key, a photo's digest. */
  readonly subject: string
  readonly detail: unknown
}

/**
 * Writes down that something was done, in the transaction that does it.
 *
 * @param act verb and noun in lower case with a hyphen between, such as `name-role`
 * @param detail ids, numbers and closed words only: no name, no address, nothing secret
 */
export async function recordAct(
  tx: Db,
  actor: Actor,
  act: string,
  subject: string,
  detail: Readonly<Record<string, string | number | boolean>> = {},
): Promise<void> {
  const actorKey = actor.kind === 'guest' ? 'guest' : actor.key
  await tx.audit.create({ data: { id: v7(), at: new Date(), actorKey, act, subject, detail: { ...detail } } })
}

export interface AuditFilter {
  readonly actorKey?: string | undefined
  readonly act?: string | undefined
  readonly subject?: string | undefined
}

/** What was done, the newest first, with the name of who did it where there still is one. */
export async function listActs(
  filter: AuditFilter,
  { after, limit = 50 }: { after?: string | undefined; limit?: number } = {},
): Promise<{ lines: (AuditLine & { name: string | null })[]; next: string | null }> {
  if (after !== undefined && !/^[0-9a-f-]{36}$/.test(after)) throw noSuchPage(after)
  const size = pageSize(limit)
  const conditions = [
    ...(filter.actorKey === undefined ? [] : [Prisma.sql`a."actorKey" = ${filter.actorKey}`]),
    ...(filter.act === undefined ? [] : [Prisma.sql`a.act = ${filter.act}`]),
    ...(filter.subject === undefined ? [] : [Prisma.sql`a.subject = ${filter.subject}`]),
    ...(after === undefined ? [] : [Prisma.sql`a.id < ${after}::uuid`]),
  ]
  const rows = await db().$queryRaw<(AuditLine & { name: string | null })[]>`
    SELECT a.id::text AS id, a.at, a."actorKey", a.act, a.subject, a.detail, nullif(p.name, '') AS name
    FROM "Audit" a LEFT JOIN "Account" p ON p.key = a."actorKey"
    WHERE ${every(conditions)} ORDER BY a.id DESC LIMIT ${size + 1}`
  const lines = rows.slice(0, size)
  return { lines, next: rows.length > size ? (lines.at(-1)?.id ?? null) : null }
}

/** Every act that was ever done, for the filter's list. */
export async function actsDone(): Promise<string[]> {
  // Walks the index from one act to the next; counting them all would read every row.
  const rows = await db().$queryRaw<{ act: string }[]>`
    WITH RECURSIVE step AS (
      (SELECT act FROM "Audit" ORDER BY act LIMIT 1)
      UNION ALL
      SELECT (SELECT a.act FROM "Audit" a WHERE a.act > step.act ORDER BY a.act LIMIT 1) FROM step
      WHERE step.act IS NOT NULL
    ) SELECT act FROM step WHERE act IS NOT NULL`
  return rows.map(({ act }) => act)
}
