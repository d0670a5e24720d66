import type { WrittenKind } from '#lib/entry/body.ts'
import { isErased } from '#lib/entry/erased.ts'
import { Prisma } from '../../prisma/generated/client.ts'
import { db } from './client.ts'
import { noSuchPage, pageSize } from './page.ts'

/** One revision that waits for a reviewer. */
export interface Waiting {
  readonly revisionId: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly number: number
  /** Of a visit, its case's; empty where there is none. */
  readonly title: string
  readonly note: string
  readonly authorKey: string
  readonly submittedAt: Date
  /** Whether an earlier revision of it is published. */
  readonly further: boolean
  /** Reviewers who approved it already, where two are needed. */
  readonly approvals: number
  /** Who has it in hand, and until when. */
  readonly heldBy: string | null
  readonly heldUntil: Date | null
}

/** What waits, oldest first. `after` is the `next` of the page before. */
export async function waitingRevisions(
  { kind }: { kind?: WrittenKind | undefined } = {},
  { after, limit = 30 }: { after?: string | undefined; limit?: number } = {},
): Promise<{ waiting: Waiting[]; total: number; next: string | null }> {
  const size = pageSize(limit)
  const ofKind = kind === undefined ? Prisma.sql`true` : Prisma.sql`e.kind = ${kind}::"Kind"`
  const from = after === undefined ? Prisma.sql`true` : afterKey(after)
  const [rows, totals] = await Promise.all([
    db().$queryRaw<Waiting[]>`
      SELECT r.id AS "revisionId", e.kind::text AS kind, e.slug, r.number,
        coalesce(r.body ->> 'title', v.title, '') AS title, r.note, r."authorKey",
        r."createdAt" AS "submittedAt", e."publishedRevisionId" IS NOT NULL AS further,
        (SELECT count(*)::int FROM "Decision" d WHERE d."revisionId" = r.id AND d.outcome = 'approve') AS approvals,
        c."reviewerKey" AS "heldBy", c.until AS "heldUntil"
      FROM "Revision" r JOIN "Entry" e ON e.id = r."entryId"
      LEFT JOIN "Claim" c ON c."revisionId" = r.id AND c.until > now()
      LEFT JOIN "CaseIndex" v ON v.slug = r.body ->> 'case'
      WHERE r.state = 'submitted' AND e."withdrawnAt" IS NULL AND ${ofKind} AND ${from}
      ORDER BY r."createdAt", r.id LIMIT ${size + 1}`,
    db().$queryRaw<{ total: number }[]>`
      SELECT count(*)::int AS total FROM "Revision" r JOIN "Entry" e ON e.id = r."entryId"
      WHERE r.state = 'submitted' AND e."withdrawnAt" IS NULL AND ${ofKind}`,
  ])
  const waiting = rows.slice(0, size)
  const last = waiting.at(-1)
  const next = rows.length > size && last ? `${last.submittedAt.toISOString()}_${last.revisionId}` : null
  return { waiting, total: totals[0]?.total ?? 0, next }
}

function afterKey(after: string): Prisma.Sql {
  const [, at, id] = /^(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z)_([0-9a-f-]{36})$/.exec(after) ?? []
  if (at === undefined || id === undefined || Number.isNaN(Date.parse(at))) throw noSuchPage(after)
  return Prisma.sql`(r."createdAt", r.id) > (${new Date(at)}, ${id}::uuid)`
}

/** A revision on the desk, with what it would take the place of. */
export interface OnDesk {
  readonly revisionId: string
  readonly entryId: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly number: number
  readonly state: string
  readonly body: unknown
  readonly shape: number
  readonly publishedNumber: number | null
  /** What it is laid beside: the version published now, else the one it started from; null for a first one. */
  readonly before: { readonly number: number; readonly body: unknown; readonly shape: number } | null
  readonly heldBy: string | null
  readonly heldUntil: Date | null
}

/** The revision of that id; null where there is none. */
export async function revisionOnDesk(revisionId: string): Promise<OnDesk | null> {
  if (!/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/.test(revisionId)) return null
  const [row] = await db().$queryRaw<OnDesk[]>`
    SELECT r.id AS "revisionId", e.id AS "entryId", e.kind::text AS kind, e.slug, r.number, r.state::text AS state,
      r.body, r.shape, p.number AS "publishedNumber", c."reviewerKey" AS "heldBy", c.until AS "heldUntil",
      CASE WHEN b.id IS NOT NULL THEN jsonb_build_object('number', b.number, 'body', b.body, 'shape', b.shape)
        END AS before
    FROM "Revision" r JOIN "Entry" e ON e.id = r."entryId"
    LEFT JOIN "Revision" p ON p.id = e."publishedRevisionId"
    LEFT JOIN "Revision" b ON b."entryId" = e.id AND b.number =
      coalesce(CASE WHEN p.number < r.number THEN p.number END, r."basedOn")
    LEFT JOIN "Claim" c ON c."revisionId" = r.id AND c.until > now()
    WHERE r.id = ${revisionId}::uuid`
  return row ?? null
}

/** Whether there is a revision of that id that can be read on the desk. */
export async function isOnDesk(revisionId: string): Promise<boolean> {
  const item = await revisionOnDesk(revisionId)
  return item !== null && !isErased(item.body)
}

/** A published entry that somebody disputes, and since when. */
export interface Disputed {
  readonly kind: WrittenKind
  readonly slug: string
  readonly title: string
  readonly since: Date
  readonly disputes: number
}

/** The entries whose disputes nobody has answered, the oldest first; a hundred at most. */
export const disputedNow = (): Promise<Disputed[]> => db().$queryRaw<Disputed[]>`
  WITH open AS MATERIALIZED (
    SELECT d."entryId", min(d.at) AS since, count(*)::int AS disputes FROM "Decision" d
    WHERE d.outcome = 'dispute' AND NOT EXISTS (
      SELECT FROM "Decision" a
      WHERE a."entryId" = d."entryId" AND a.outcome IN ('settle', 'uphold') AND a.number > d.number
    ) GROUP BY d."entryId"
  )
  SELECT e.kind::text AS kind, e.slug, coalesce(r.body ->> 'title', '') AS title, o.since, o.disputes
  -- Few are open, though many are guessed: each entry is looked up.
  FROM open o CROSS JOIN LATERAL (SELECT * FROM "Entry" f WHERE f.id = o."entryId" OFFSET 0) e
  JOIN "Revision" r ON r.id = e."publishedRevisionId"
  ORDER BY o.since, e.slug LIMIT 100`
