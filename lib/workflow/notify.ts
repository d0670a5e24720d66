import { v7 } from 'uuid'
import type { Db } from '#lib/db/client.ts'
import type { NoticeKind } from '#lib/entry/notices.ts'

export interface News {
  readonly what: NoticeKind
  readonly entryId: string
  /** Of the revision, or of the deed where one revision may meet many. */
  readonly number: number
}

/** Tells these people once, in the transaction of the deed; nobody is told of what they did themselves. */
export async function notify(
  tx: Db,
  forKeys: Iterable<string>,
  by: string,
  { what, entryId, number }: News,
): Promise<void> {
  const keys = [...new Set(forKeys)].filter((key) => key !== by)
  const at = new Date()
  await tx.notice.createMany({
    data: keys.map((forKey) => ({ id: v7(), forKey, what, entryId, number, at })),
    skipDuplicates: true,
  })
}

/** Number of the deed just recorded. */
export async function lastDeed(tx: Db, entryId: string): Promise<number> {
  const { _max } = await tx.decision.aggregate({ where: { entryId }, _max: { number: true } })
  return _max.number ?? 0
}
