import type { FieldFault } from '#lib/errors.ts'
import type { Db } from './client.ts'
import type { PhotoFacts } from './photos.ts'

/** A file on its way in, and what became of it. */
export interface UploadStatus {
  readonly key: string
  readonly state: 'receiving' | 'waiting' | 'ready' | 'refused'
  readonly size: number
  /** Bytes that have arrived: where to go on. */
  readonly offset: number
  /** True when the same picture had been uploaded before; it is stored once. */
  readonly known: boolean
  /** Why it was refused. */
  readonly fault: FieldFault | null
  /** The picture it became. */
  readonly photo: (PhotoFacts & { readonly takenOn: string | null }) | null
}

/** One's own upload of this key; null when there is none. */
export async function uploadStatus(tx: Db, key: string, uploaderKey: string): Promise<UploadStatus | null> {
  const row = await tx.upload.findUnique({ where: { key } })
  if (row === null || row.uploaderKey !== uploaderKey) return null
  const { state, size, offset, known, fault, sha256, keepDate } = row
  const photo = sha256 === null ? null : await tx.photo.findUnique({ where: { sha256 } })
  return {
    key,
    state,
    size,
    offset,
    known,
    fault: fault as FieldFault | null,
    photo: photo && {
      sha256: photo.sha256,
      width: photo.width,
      height: photo.height,
      sizes: photo.sizes,
      erased: photo.erasedAt !== null,
      takenOn: (keepDate && photo.takenOn?.toISOString().slice(0, 10)) || null,
    },
  }
}
