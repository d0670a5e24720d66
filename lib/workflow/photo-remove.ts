import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { db } from '#lib/db/client.ts'
import { isShownIn } from '#lib/db/photos.ts'
import { Refusal } from '#lib/errors.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import { holdPicture } from './photo-rows.ts'

/**
 * Deletes a picture of one's own that no revision shows. A draft that shows it has lost it, and says so when it is
 * submitted.
 *
 * @returns when it was sent
 * @throws Refusal `forbidden`; `not-found` when it is not one's own; `conflict` when a revision shows it, when it is
 *   erased, or when somebody else sent the same one
 */
export async function removePhoto(actor: Actor, sha256: string): Promise<{ uploadedAt: Date }> {
  const { key } = must(actor, 'uploadPhoto', undefined)
  const uploadedAt = await db().$transaction(async (tx) => {
    const [photo] = await tx.$queryRaw<{ uploaders: string[]; erased: boolean; createdAt: Date }[]>`
      SELECT uploaders, "erasedAt" IS NOT NULL AS erased, "createdAt" FROM "Photo" WHERE sha256 = ${sha256} FOR UPDATE`
    // Asked once the row is held: a submission that showed it meanwhile is seen only now.
    const shown = await isShownIn(tx, sha256)
    if (!photo?.uploaders.includes(key)) throw new Refusal('not-found', 'There is no such photo of yours.')
    if (photo.erased) throw new Refusal('conflict', 'This photo was taken down already.')
    if (shown) throw new Refusal('conflict', 'A visit shows this photo, so it stays on record.')
    if (photo.uploaders.length > 1)
      throw new Refusal('conflict', 'Somebody else sent the same photo, so it stays.')
    await tx.upload.deleteMany({ where: { sha256 } })
    await tx.photo.delete({ where: { sha256 } })
    await recordAct(tx, actor, 'delete-photo', sha256)
    return photo.createdAt
  })
  await removeFilesOfNone(sha256)
  return { uploadedAt }
}

/** Removes the files under a digest, unless somebody has sent the same picture again meanwhile. */
export const removeFilesOfNone = (sha256: string): Promise<void> =>
  db().$transaction(async (tx) => {
    await holdPicture(tx, sha256)
    if ((await tx.photo.count({ where: { sha256, erasedAt: null } })) === 0)
      await photoStore().removeAll(nameOf.photo(sha256))
  })
