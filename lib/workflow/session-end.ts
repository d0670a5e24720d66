import type { Member } from '#lib/access/actor.ts'
import { recordAct } from '#lib/db/audit.ts'
import { db } from '#lib/db/client.ts'
import { deleteSessions } from '#lib/db/sessions.ts'

/**
 * Ends sessions of the actor's own account, at once: the next request of those browsers is a guest's.
 *
 * @returns how many were ended
 */
export async function endSessions(
  actor: Member,
  accountId: string,
  which: 'all' | { readonly but: string } | { readonly only: string },
): Promise<number> {
  return db().$transaction(async (tx) => {
    const ended = await deleteSessions(tx, accountId, which)
    if (ended > 0) await recordAct(tx, actor, 'end-sessions', actor.key, { ended })
    return ended
  })
}
