import { mkdir, readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Readable } from 'node:stream'
import { readSettings } from '#lib/env.ts'
import { bucketStore } from './bucket-store.ts'
import { folderStore } from './folder-store.ts'
import type { Format } from './limits.ts'

/** Where files of photos are kept. Names are paths with slashes; a file, once there, is whole and on disk. */
export interface PhotoStore {
  /** Puts a file from this machine under a name, replacing what is there; the file itself is used up. */
  put(name: string, path: string): Promise<void>
  /** A file to read, with its length in bytes; null when there is none. */
  get(name: string): Promise<{ readonly stream: Readable; readonly bytes: number } | null>
  /** Removes everything whose name begins so; nothing there is no fault. */
  removeAll(prefix: string): Promise<void>
}

/** The store that the settings name: a bucket, or the folder `photos` of the data folder. */
export function photoStore(): PhotoStore {
  const { photoBucket, dataDir } = readSettings()
  const key = JSON.stringify([photoBucket, dataDir])
  if (opened?.key !== key)
    opened = { key, store: photoBucket ? bucketStore(photoBucket) : folderStore(join(dataDir, 'photos')) }
  return opened.store
}

/** Where an operator finds the files of photos. */
export function photosAt(): string {
  const { photoBucket, dataDir } = readSettings()
  return photoBucket ? `the bucket ${photoBucket.bucket}` : `the folder ${join(dataDir, 'photos')}`
}

let opened: { readonly key: string; readonly store: PhotoStore } | undefined

/** Where files stand before they are in the store: on the same disk as the folder, so that moving is one step. */
const waitingFolder = (): string => join(readSettings().dataDir, 'photos-waiting')

/** That folder, made if need be. */
export async function prepareWaitingFolder(): Promise<string> {
  const folder = waitingFolder()
  await mkdir(folder, { recursive: true, mode: 0o700 })
  return folder
}

/** Lets go of what a server that was stopped in the middle left behind, from a day ago on. */
export async function sweepWaitingFolder(): Promise<void> {
  const folder = await prepareWaitingFolder()
  for (const name of await readdir(folder)) {
    const path = join(folder, name)
    const left = await stat(path).catch(() => null)
    if (left && left.mtimeMs < Date.now() - 86_400_000) await rm(path, { force: true })
  }
}

const folderOf = (sha256: string) => `pictures/${sha256.slice(0, 2)}/${sha256}/`

/** Names in the store. */
export const nameOf = {
  /** The picture that is kept. */
  kept: (sha256: string) => `${folderOf(sha256)}kept.jpg`,
  screen: (sha256: string, width: number, format: Format) => `${folderOf(sha256)}${width}.${format}`,
  /** All files of one picture. */
  photo: folderOf,
  /** All pieces of one upload. */
  upload: (key: string) => `uploads/${key}/`,
  piece: (key: string, piece: string) => `uploads/${key}/${piece}`,
}
