import { db } from '#lib/db/client.ts'
import { nameOf, photoStore, sweepWaitingFolder } from '#lib/photos/store.ts'

/** Days after which an upload is forgotten: one that nobody went on with, and one whose outcome was there to read. */
const FORGET_DAYS = 7

/** Uploads that one sweep lets go of. Every new upload sweeps, so more go than come. */
const AT_ONCE = 5

/** Forgets uploads that nobody has touched for a week, with what they left in the store. Pictures stay. */
export async function sweepUploads(): Promise<void> {
  await sweepWaitingFolder()
  const old = await db().upload.findMany({
    where: { touchedAt: { lt: new Date(Date.now() - FORGET_DAYS * 86_400_000) }, state: { not: 'waiting' } },
    orderBy: { touchedAt: 'asc' },
    take: AT_ONCE,
    select: { key: true },
  })
  for (const { key } of old) {
    await photoStore().removeAll(nameOf.upload(key))
    await db().upload.deleteMany({ where: { key } })
  }
}
