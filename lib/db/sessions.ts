import type { Role } from '#lib/access/actor.ts'
import type { Language } from '#lib/entry/languages.ts'
import { type Db, db } from './client.ts'

/** How somebody came in: with a password, by a one-time link, or through another service. */
export const WAYS_IN = ['password', 'link', 'service'] as const
export type WayIn = (typeof WAYS_IN)[number]

/** Who a session belongs to, as every request reads it. */
export interface SignedIn {
  readonly sessionId: string
  readonly accountId: string
  readonly key: string
  readonly name: string
  readonly email: string | null
  readonly emailVerifiedAt: Date | null
  readonly hasPassword: boolean
  /** Of their mail and calendar. */
  readonly language: Language
  readonly roles: readonly Role[]
  readonly how: WayIn
  readonly createdAt: Date
}

/** How often a session's row is told that it is in use. */
const SEEN_EVERY_S = 300

/** The session of this digest, if it is there and has time left. */
export async function sessionByDigest(digest: string): Promise<SignedIn | null> {
  const [row] = await db().$queryRaw<(SignedIn & { stale: boolean })[]>`
    SELECT s.id::text AS "sessionId", a.id::text AS "accountId", a.key, a.name, a.email, a."emailVerifiedAt",
      a."passwordHash" IS NOT NULL AS "hasPassword", a.language, s.how, s."createdAt",
      s."seenAt" < now() - make_interval(secs => ${SEEN_EVERY_S}) AS stale,
      ARRAY(SELECT g.role::text FROM "RoleGrant" g WHERE g."accountId" = a.id ORDER BY g.role) AS roles
    FROM "Session" s JOIN "Account" a ON a.id = s."accountId"
    WHERE s.digest = ${digest} AND s."expiresAt" > now() AND a."closedAt" IS NULL`
  if (row === undefined) return null
  const { stale, ...signedIn } = row
  if (stale) await db().session.updateMany({ where: { digest }, data: { seenAt: new Date() } })
  return signedIn
}

/** One browser that is signed in, as its owner sees it. */
export interface SessionLine {
  readonly id: string
  readonly how: WayIn
  /** Browser and system in a few words. */
  readonly agent: string
  readonly createdAt: Date
  readonly seenAt: Date
}

/** The sessions of an account that have time left, the one used last first. */
export async function listSessions(accountId: string): Promise<SessionLine[]> {
  const rows = await db().session.findMany({
    where: { accountId, expiresAt: { gt: new Date() } },
    orderBy: [{ seenAt: 'desc' }, { id: 'desc' }],
    select: { id: true, how: true, agent: true, createdAt: true, seenAt: true },
  })
  return rows.map((row) => ({ ...row, how: row.how as WayIn }))
}

/** Ends sessions of an account: all, all but one, or one. Resolves with how many. */
export async function deleteSessions(
  tx: Db,
  accountId: string,
  which: 'all' | { readonly but: string } | { readonly only: string } = 'all',
): Promise<number> {
  const id = which === 'all' ? undefined : 'but' in which ? { not: which.but } : which.only
  const { count } = await tx.session.deleteMany({ where: { accountId, ...(id !== undefined && { id }) } })
  return count
}
