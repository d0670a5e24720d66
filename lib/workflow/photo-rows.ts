import type { Db } from '#lib/db/client.ts'
import { type Encoded, photoFault, widthsOf } from '#lib/photos/encode.ts'
import type { UploadModel } from '../../prisma/generated/models.ts'
import { isStored, storePicture } from './photo-files.ts'

/** The picture that a file became, and whether it had been there before. */
export interface Added {
  readonly sha256: string
  readonly known: boolean
}

/** Until the transaction ends, nobody else adds a picture of this digest or removes its files. */
export async function holdPicture(tx: Db, sha256: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('picture'), hashtext(${sha256}))`
}

/**
 * Makes a picture that is there also this person's.
 *
 * @throws Refusal `invalid` where it was erased, or is gone, since it was looked at
 */
export async function addUploader(tx: Db, sha256: string, uploaderKey: string): Promise<Added> {
  // Held before its uploaders are looked at: erasing and deleting hold it too.
  const [row] = await tx.$queryRaw<{ erased: boolean }[]>`
    SELECT "erasedAt" IS NOT NULL AS erased FROM "Photo" WHERE sha256 = ${sha256} FOR UPDATE`
  if (row === undefined) throw new PictureGone()
  if (row.erased) throw photoFault('photo-erased')
  await tx.$executeRaw`
    UPDATE "Photo" SET uploaders = array_append(uploaders, ${uploaderKey}::text)
    WHERE sha256 = ${sha256} AND NOT ${uploaderKey} = ANY(uploaders)`
  return { sha256, known: true }
}

/** A picture that was there has been deleted since: the work on the file begins again. */
export class PictureGone extends Error {}

/**
 * Adds a picture whose files are stored. Whoever deleted the same one a moment ago may have removed them: then they are
 * stored once more, before anybody is shown the picture.
 *
 * @param madeFrom SHA-256 of the file that was sent
 * @throws as {@link addUploader}
 */
export async function addPhoto(
  tx: Db,
  picture: Encoded,
  { keepDate, uploaderKey }: Pick<UploadModel, 'keepDate' | 'uploaderKey'>,
  madeFrom: string,
): Promise<Added> {
  const { sha256, width, height, likeness, kept, takenOn } = picture
  await holdPicture(tx, sha256)
  if (!(await isStored(sha256))) await storePicture(picture)
  const told = { sha256, width, height, likeness, madeFrom, bytes: kept.byteLength, sizes: widthsOf(width) }
  const day = keepDate && takenOn !== null ? new Date(`${takenOn}T00:00:00Z`) : null
  const { count } = await tx.photo.createMany({
    data: [{ ...told, takenOn: day, uploaders: [uploaderKey], createdAt: new Date() }],
    skipDuplicates: true,
  })
  return count === 0 ? addUploader(tx, sha256, uploaderKey) : { sha256, known: false }
}
