import type { Client } from 'pg'
import { openSession } from './connect.ts'

/** The lock of the work that servers do at start beside migrating; any number that nothing else uses. */
const START = 72707370

/** Takes a lock for as long as the session lasts, telling when it has to wait for another server. */
export async function takeTurn(client: Client, lock: number, onWait: () => void): Promise<void> {
  const free = await client.query<{ got: boolean }>('SELECT pg_try_advisory_lock($1) AS got', [lock])
  if (free.rows[0]?.got === true) return
  onWait()
  await client.query('SELECT pg_advisory_lock($1)', [lock])
}

/**
 * Does some work while no other server does the same on this database. The wait is on a session without the
 * time limit of ordinary statements: the other may take its time.
 *
 * @throws Halt when the database can't be reached
 */
export async function inTurn<T>(
  url: string,
  options: { connectMs: number; say: (line: string) => void },
  work: () => Promise<T>,
): Promise<T> {
  const client = await openSession(url, options.connectMs)
  try {
    await takeTurn(client, START, () => options.say('  another server is at it; waiting for it'))
    return await work()
  } finally {
    await client.end()
  }
}
