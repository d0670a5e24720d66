import { randomUUID } from 'node:crypto'
import { rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Actor } from '#lib/access/actor.ts'
import { recordAct } from '#lib/db/audit.ts'
import { type Db, db } from '#lib/db/client.ts'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { encodePhoto, photoFault } from '#lib/photos/encode.ts'
import { nameOf, photoStore, prepareWaitingFolder } from '#lib/photos/store.ts'
import type { UploadModel } from '../../prisma/generated/models.ts'
import { assemble, storePicture } from './photo-files.ts'
import { removeFilesOfNone } from './photo-remove.ts'
import { type Added, addPhoto, addUploader } from './photo-rows.ts'

/** How long a worker may be silent before another takes over: twice what one step on a picture may take. */
const LEASE_S = 120

/** A file that brought down so many workers is given up. */
const MAX_ATTEMPTS = 3

/** Next may load this module more than once; the global keeps one worker a process. */
const kept = globalThis as { putlogPhotoWork?: Promise<number> | undefined }

/**
 * Works on waiting files, one after the other, until none is to be had; resolves with how many it took. One
 * worker a process: while it runs, further calls wait for it. Any number of processes share the work.
 */
export function workPhotos(): Promise<number> {
  kept.putlogPhotoWork ??= workAll().finally(() => {
    kept.putlogPhotoWork = undefined
  })
  return kept.putlogPhotoWork
}

async function workAll(): Promise<number> {
  for (let count = 0; ; count += 1) {
    const job = await claimJob()
    if (job === null) return count
    await workOn(job)
  }
}

export interface ClaimedJob {
  readonly uploadKey: string
  /** Proof that the job is ours; another's once the lease ran out and they took it. */
  readonly lease: string
  readonly attempts: number
}

/** Takes the file that has waited longest; null when none waits. No two workers are given the same one. */
export async function claimJob(): Promise<ClaimedJob | null> {
  const lease = randomUUID()
  const [job] = await db().$queryRaw<ClaimedJob[]>`
    UPDATE "PhotoJob" SET lease = ${lease}::uuid, "leasedUntil" = now() + make_interval(secs => ${LEASE_S}),
      attempts = attempts + 1
    WHERE "uploadKey" = (
      SELECT "uploadKey" FROM "PhotoJob" WHERE "leasedUntil" IS NULL OR "leasedUntil" < now()
      ORDER BY "createdAt", "uploadKey" LIMIT 1 FOR UPDATE SKIP LOCKED)
    RETURNING "uploadKey", lease, attempts`
  return job ?? null
}

/** How long a file waits after the store, the disk or the database failed it. */
const AGAIN_S = 10

/** Makes the picture of one file, or records why there is none. */
export async function workOn(job: ClaimedJob): Promise<void> {
  const upload = await db().upload.findUnique({ where: { key: job.uploadKey } })
  if (upload === null) return
  if (await attempt(upload, job)) await photoStore().removeAll(nameOf.upload(job.uploadKey))
}

/** Resolves with whether the job was still ours to end. */
async function attempt(upload: UploadModel, job: ClaimedJob): Promise<boolean> {
  try {
    if (job.attempts > MAX_ATTEMPTS) throw photoFault('photo-unworkable')
    return await makePhoto(upload, job)
  } catch (error) {
    if (error instanceof Refusal && error.code === 'invalid') return refuse(job, error.faults[0])
    // Not the picture's fault, so it does not count against it.
    await db().$executeRaw`
      UPDATE "PhotoJob" SET attempts = attempts - 1, "leasedUntil" = now() + make_interval(secs => ${AGAIN_S})
      WHERE "uploadKey" = ${job.uploadKey}::uuid AND lease = ${job.lease}::uuid`
    throw error
  }
}

const mine = ({ uploadKey, lease }: ClaimedJob) => ({ uploadKey, lease })

async function makePhoto(upload: UploadModel, job: ClaimedJob): Promise<boolean> {
  const path = join(await prepareWaitingFolder(), randomUUID())
  try {
    const madeFrom = await assemble(upload.pieces, path)
    if (upload.expected !== null && upload.expected !== madeFrom) throw photoFault('photo-digest')
    const before = await db().photo.findFirst({ where: { madeFrom }, orderBy: { createdAt: 'asc' } })
    if (before?.erasedAt) throw photoFault('photo-erased')
    if (before !== null) return await finish(job, (tx) => addUploader(tx, before.sha256, upload.uploaderKey))
    const picture = await encodePhoto(path)
    const same = await db().photo.findUnique({ where: { sha256: picture.sha256 } })
    if (same?.erasedAt) throw photoFault('photo-erased')
    if (same === null) await storePicture(picture, () => stayOn(job))
    return await finish(job, (tx) => addPhoto(tx, picture, upload, madeFrom)).catch(async (error) => {
      // It may have been erased while this was at work, and its files put back by that.
      await removeFilesOfNone(picture.sha256)
      throw error
    })
  } finally {
    await rm(path, { force: true })
  }
}

/** Says that its worker is still on it. */
async function stayOn({ uploadKey, lease }: ClaimedJob): Promise<void> {
  await db().$executeRaw`
    UPDATE "PhotoJob" SET "leasedUntil" = now() + make_interval(secs => ${LEASE_S})
    WHERE "uploadKey" = ${uploadKey}::uuid AND lease = ${lease}::uuid`
}

/** Ends the job and stores its outcome together, unless another worker has taken it over meanwhile. */
async function finish(job: ClaimedJob, add: (tx: Db) => Promise<Added>): Promise<boolean> {
  return db().$transaction(async (tx) => {
    const { count } = await tx.photoJob.deleteMany({ where: mine(job) })
    if (count === 0) return false
    const added = await add(tx)
    const data = { state: 'ready' as const, ...added, touchedAt: new Date() }
    const { uploaderKey } = await tx.upload.update({ where: { key: job.uploadKey }, data })
    const uploader: Actor = { kind: 'member', key: uploaderKey, roles: [] }
    await recordAct(tx, uploader, 'upload-photo', added.sha256, { known: added.known })
    return true
  })
}

async function refuse(job: ClaimedJob, fault: FieldFault | undefined): Promise<boolean> {
  return db().$transaction(async (tx) => {
    const { count } = await tx.photoJob.deleteMany({ where: mine(job) })
    if (count === 0) return false
    const data = { state: 'refused' as const, fault: { ...fault }, pieces: [], touchedAt: new Date() }
    await tx.upload.update({ where: { key: job.uploadKey }, data })
    return true
  })
}
