import { type Db, db } from '#lib/db/client.ts'
import { Refusal } from '#lib/errors.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'

export interface PhotoErasure {
  readonly sha256: string
  /** Key of the steward. */
  readonly by: string
  /** The lawful reason, which stays with the mark. */
  readonly reason: string
  readonly at: Date
}

/**
 * Marks a picture as erased: from the end of the transaction on nobody is shown it, and neither it nor the file
 * it came from is taken again. The caller has checked the right, and calls {@link removePhotoFiles} after.
 *
 * @throws Refusal `not-found`; `conflict` when it is erased already
 */
export async function erasePhotoIn(tx: Db, { sha256, by, reason, at }: PhotoErasure): Promise<void> {
  const { count } = await tx.photo.updateMany({
    where: { sha256, erasedAt: null },
    data: { erasedAt: at, erasedBy: by, eraseReason: reason },
  })
  if (count === 1) return
  const there = await tx.photo.count({ where: { sha256 } })
  if (there === 0) throw new Refusal('not-found', 'There is no such photo.')
  throw new Refusal('conflict', 'This photo is erased already.')
}

/**
 * Removes the files of a picture that is marked as erased; may be repeated.
 *
 * @throws Refusal `conflict` for a picture that is not marked
 */
export async function removePhotoFiles(sha256: string): Promise<void> {
  const marked = await db().photo.count({ where: { sha256, erasedAt: { not: null } } })
  if (marked === 0) throw new Refusal('conflict', 'This photo is not erased.')
  await photoStore().removeAll(nameOf.photo(sha256))
}
