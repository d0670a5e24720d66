import { v7 } from 'uuid'
import { recordAct } from '#lib/db/audit.ts'
import type { Db } from '#lib/db/client.ts'
import type { WayIn } from '#lib/db/sessions.ts'

export interface NewSession {
  readonly account: { readonly id: string; readonly key: string }
  /** SHA-256 of the random id that the browser carries. */
  readonly digest: string
  readonly how: WayIn
  /** What the browser says it is. */
  readonly agent: string
  readonly seconds: number
}

/** Signs a browser in. Every request reads this row; deleting it signs the browser out. */
export async function startSession(tx: Db, { account, seconds, ...told }: NewSession): Promise<void> {
  const now = new Date()
  const expiresAt = new Date(now.getTime() + seconds * 1000)
  await tx.session.create({
    data: { id: v7(), accountId: account.id, ...told, createdAt: now, seenAt: now, expiresAt },
  })
  await recordAct(tx, { kind: 'member', key: account.key, roles: [] }, 'sign-in', account.key, {
    how: told.how,
  })
}
