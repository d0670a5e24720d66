import { v7 } from 'uuid'
import { SYSTEM } from '#lib/access/actor.ts'
import { type Db, db } from '#lib/db/client.ts'
import { lockPublishing, refresh } from '#lib/db/projection/refresh.ts'
import { carryOutIn } from './withdraw.ts'

/**
 * Withdraws every published entry that says it is invented, in one transaction. Their addresses then say that
 * they were taken down; `loadDemo` leaves them so until it is told to restore them.
 *
 * @returns how many were withdrawn
 */
export async function removeDemo(): Promise<number> {
  return db().$transaction(
    async (tx) => {
      await lockPublishing(tx)
      const invented = await tx.$queryRaw<{ id: string; slug: string }[]>`
        SELECT e.id, e.slug FROM "Entry" e JOIN "Revision" r ON r.id = e."publishedRevisionId"
        WHERE r.body @> '{"invented": true}' ORDER BY e.slug`
      const words = 'This entry was invented to show what the site does, and the demo has been taken out.'
      await refresh(tx, await withdrawAll(tx, invented, words))
      return invented.length
    },
    { timeout: 300_000, maxWait: 60_000 },
  )
}

/** Withdraws these published entries for one reason; resolves with their ids. Publishing must be locked. */
export async function withdrawAll(
  tx: Db,
  entries: readonly { readonly id: string; readonly slug: string }[],
  words: string,
): Promise<string[]> {
  for (const { slug } of entries) await carryOutIn(tx, SYSTEM, 'withdraw', { key: v7(), slug, words })
  return entries.map(({ id }) => id)
}
