import { type Db, db } from './client.ts'

/**
 * Counts one more try under this name and answers how many there were within the time, this one included. The time
 * begins with the first.
 *
 * @param bucket a name that tells nothing of whom it stands for
 */
export async function countTry(bucket: string, seconds: number, tx: Db = db()): Promise<number> {
  const [row] = await tx.$queryRaw<{ count: number }[]>`
    INSERT INTO "RateLimit" AS l (bucket, count, "expiresAt")
    VALUES (${bucket}, 1, now() + make_interval(secs => ${seconds}::float8))
    ON CONFLICT (bucket) DO UPDATE SET
      count = CASE WHEN l."expiresAt" <= now() THEN 1 ELSE l.count + 1 END,
      "expiresAt" = CASE WHEN l."expiresAt" <= now() THEN excluded."expiresAt" ELSE l."expiresAt" END
    RETURNING count`
  return row?.count ?? 1
}

/** How many tries there were under this name within its time. */
export async function triesSoFar(bucket: string): Promise<number> {
  const [row] = await db().$queryRaw<{ count: number }[]>`
    SELECT count FROM "RateLimit" WHERE bucket = ${bucket} AND "expiresAt" > now()`
  return row?.count ?? 0
}

/** Forgets the tries under these names: the right person got in. */
export async function forgetTries(buckets: readonly string[], tx: Db = db()): Promise<void> {
  await tx.rateLimit.deleteMany({ where: { bucket: { in: [...buckets] } } })
}

/** Takes away what has run out: counts, one-time links and sessions. */
export async function sweepExpired(): Promise<void> {
  const past = { expiresAt: { lt: new Date() } }
  await db().rateLimit.deleteMany({ where: past })
  await db().token.deleteMany({ where: past })
  await db().session.deleteMany({ where: past })
}
