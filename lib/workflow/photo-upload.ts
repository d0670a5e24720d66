import { rm } from 'node:fs/promises'
import { v7 } from 'uuid'
import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { type Db, db } from '#lib/db/client.ts'
import { type UploadStatus, uploadStatus } from '#lib/db/uploads.ts'
import { Refusal } from '#lib/errors.ts'
import { photoFault } from '#lib/photos/encode.ts'
import { MAX_A_DAY, MAX_BYTES, MAX_OPEN, MAX_PIECES } from '#lib/photos/limits.ts'
import { receive } from '#lib/photos/receive.ts'
import { nameOf, photoStore } from '#lib/photos/store.ts'
import { parse } from './parse.ts'
import { sweepUploads } from './photo-sweep.ts'

const announcement = z.strictObject({
  /** Made by the client, once for one file. */
  key: z.uuid(),
  /** Bytes that the whole file has. */
  size: z.int().nonnegative(),
  /** SHA-256 of the whole file: damage on the way is then found. */
  sha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  /** Whether the day that the camera wrote may be kept. Everything else that it wrote is dropped. */
  keepDate: z.boolean().default(false),
})
export type Announcement = z.input<typeof announcement>

/** The sender meant to go on at another place than where the file ends so far. */
export class WrongOffset extends Refusal {
  readonly offset: number

  constructor(offset: number) {
    super('conflict', `The next byte to send is number ${offset}.`)
    this.name = 'WrongOffset'
    this.offset = offset
  }
}

/**
 * Makes ready for a file. The same key again answers how far that file has come; a file that its sender sent
 * before need not be sent again.
 *
 * @throws Refusal `forbidden`; `invalid`, also for a file that is too large; `conflict` for a key that is another's;
 *   `too-many` when too much is on its way
 */
export async function beginUpload(actor: Actor, given: Announcement): Promise<UploadStatus> {
  const { key: uploaderKey } = must(actor, 'uploadPhoto', undefined)
  const { key, size, sha256, keepDate } = parse(announcement, given)
  await sweepUploads()
  if (size === 0) throw photoFault('photo-empty')
  if (size > MAX_BYTES) throw photoFault('photo-too-large', undefined, MAX_BYTES / 1024 / 1024)
  return db().$transaction(async (tx) => {
    // One at a time for each sender, so that the limits hold.
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('photo uploads'), hashtext(${uploaderKey}))`
    const first = await tx.upload.findUnique({ where: { key } })
    if (first !== null && (first.uploaderKey !== uploaderKey || first.size !== size))
      throw new Refusal('conflict', 'That key belongs to another upload.')
    if (first === null) {
      await refuseTooMany(tx, uploaderKey)
      const at = new Date()
      const known =
        sha256 === undefined
          ? null
          : await tx.photo.findFirst({
              where: { madeFrom: sha256, uploaders: { has: uploaderKey }, erasedAt: null },
              select: { sha256: true },
            })
      const done = known && { state: 'ready' as const, offset: size, sha256: known.sha256, known: true }
      const told = { key, uploaderKey, size, expected: sha256 ?? null, keepDate, pieces: [] }
      await tx.upload.create({ data: { ...told, createdAt: at, touchedAt: at, ...done } })
    }
    return found(await uploadStatus(tx, key, uploaderKey))
  })
}

/**
 * Adds a body to the file, from `offset` on. What a cut connection brought is kept; the last byte makes the file
 * wait for the work on it.
 *
 * @throws WrongOffset; Refusal `forbidden`, `not-found`; `invalid` when more came than was announced
 */
export async function appendUpload(
  actor: Actor,
  key: string,
  offset: number,
  body: AsyncIterable<Uint8Array>,
): Promise<UploadStatus> {
  const { key: uploaderKey } = must(actor, 'uploadPhoto', undefined)
  const upload = found(await uploadStatus(db(), key, uploaderKey))
  if (upload.state === 'refused' || offset !== upload.offset) throw new WrongOffset(upload.offset)
  if (upload.state !== 'receiving') return upload
  const { path, bytes, end } = await receive(body, upload.size - offset)
  try {
    if (end === 'too-long') throw photoFault('photo-too-long', offset + bytes, upload.size)
    if (bytes === 0) return upload
    const name = nameOf.piece(key, v7())
    await photoStore().put(name, path)
    return await db().$transaction(async (tx) => {
      const at = new Date()
      const whole = offset + bytes === upload.size
      const count = await tx.$executeRaw`
        UPDATE "Upload" SET "offset" = ${offset + bytes}, pieces = array_append(pieces, ${name}::text), "touchedAt" = ${at},
          state = (CASE WHEN ${whole} THEN 'waiting' ELSE 'receiving' END)::"UploadState"
        WHERE key = ${key}::uuid AND "offset" = ${offset} AND state = 'receiving'
          AND cardinality(pieces) < ${MAX_PIECES}`
      const now = found(await uploadStatus(tx, key, uploaderKey))
      if (count === 0 && now.offset === offset) throw photoFault('photo-too-many-pieces', MAX_PIECES)
      if (count === 0) throw new WrongOffset(now.offset)
      if (whole) await tx.photoJob.create({ data: { uploadKey: key, createdAt: at } })
      return now
    })
  } finally {
    await rm(path, { force: true })
  }
}

/** How far one's own upload has come. @throws Refusal `forbidden`, `not-found` */
export async function readUpload(actor: Actor, key: string): Promise<UploadStatus> {
  const { key: uploaderKey } = must(actor, 'uploadPhoto', undefined)
  return found(await uploadStatus(db(), key, uploaderKey))
}

/** Gives up an upload that has not become a picture. @throws Refusal `forbidden`, `not-found` */
export async function giveUpUpload(actor: Actor, key: string): Promise<void> {
  const { key: uploaderKey } = must(actor, 'uploadPhoto', undefined)
  const { count } = await db().upload.deleteMany({ where: { key, uploaderKey, state: { not: 'ready' } } })
  if (count === 0) found(await uploadStatus(db(), key, uploaderKey))
  await photoStore().removeAll(nameOf.upload(key))
}

async function refuseTooMany(tx: Db, uploaderKey: string): Promise<void> {
  const day = new Date(Date.now() - 86_400_000)
  const today = await tx.upload.count({ where: { uploaderKey, createdAt: { gt: day } } })
  const open = await tx.upload.count({ where: { uploaderKey, state: { in: ['receiving', 'waiting'] } } })
  if (open >= MAX_OPEN || today >= MAX_A_DAY)
    throw new Refusal(
      'too-many',
      open >= MAX_OPEN
        ? `${MAX_OPEN} files are on their way already. Let them finish, or give some up.`
        : `${MAX_A_DAY} files were sent within a day. Go on tomorrow.`,
    )
}

function found(status: UploadStatus | null): UploadStatus {
  if (status === null) throw new Refusal('not-found', 'There is no such upload of yours.')
  return status
}
