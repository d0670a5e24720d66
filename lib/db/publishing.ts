import { type Db, db } from './client.ts'
import { lockPublishing } from './projection/refresh.ts'

/** One queue in a process, also where its modules are loaded more than once. */
const kept = globalThis as { putlogPublishing?: Promise<unknown> | undefined }

/**
 * Runs a transaction that publishes, with publishing locked. Those of this process wait for one another here, so that
 * however many wait, only one holds a connection of the pool; those of other processes wait at the lock.
 */
export function publishing<T>(work: (tx: Db) => Promise<T>): Promise<T> {
  const before = kept.putlogPublishing ?? Promise.resolve()
  const turn = before.then(() =>
    db().$transaction(async (tx) => {
      await lockPublishing(tx)
      return work(tx)
    }),
  )
  // The next comes whether or not this one got through.
  kept.putlogPublishing = turn.catch(() => {})
  return turn
}
