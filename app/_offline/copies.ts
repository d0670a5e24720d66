import { CacheExpiration } from 'workbox-expiration'
import { blankOf, filesOf, headersOfCopy, isOfDraft, photoOf, photosOf, workOf } from './copy.ts'
import { GUEST_READER, HEADS, isBlankStore, isPageStore, staleFileStores, storeOf } from './heads.ts'
import { currentReader, forgetOthers } from './readers.ts'

/** The build that this worker belongs to. */
const BUILD = process.env.BUILD_NAME ?? ''
export const FILES = storeOf.files(BUILD)

/** Whether a copy was kept by the worker of this build. */
export const isOfThisBuild = ({ headers }: Response): boolean => headers.get(HEADS.build) === BUILD

/** How many of each stay; what was opened longest ago goes first. */
const MOST = { pages: 60, blanks: 40, photos: 200 } as const

const bounds = new Map<string, CacheExpiration>()

/** Notes that an address of a store was used just now, and takes out what is too much. */
async function bound(store: string, address: string, most: number): Promise<void> {
  const known = bounds.get(store) ?? new CacheExpiration(store, { maxEntries: most })
  bounds.set(store, known)
  await known.updateTimestamp(address)
  await known.expireEntries()
}

/** Keeps a page with the files and photos that it is drawn with: they first, so that a kept page is whole. */
export async function keepPage(address: string, html: string, given: Headers, reader: string): Promise<void> {
  const blank = blankOf(address)
  // Visits to the case's other works would be written on a form drawn for this one.
  if (blank !== undefined && workOf(address) !== null) return
  await keepFiles(html)
  await Promise.allSettled(photosOf(html).map(keepPhoto))
  const headers = headersOfCopy(given, html, new Date(), BUILD)
  const store = blank === undefined ? storeOf.pages(reader) : storeOf.blanks(reader)
  await (await caches.open(store)).put(blank ?? address, new Response(html, { headers }))
  await bound(store, blank ?? address, blank === undefined ? MOST.pages : MOST.blanks)
  // Somebody may have signed out while it was read.
  await forgetOthers(await currentReader())
}

/** Keeps the files of the build that a page names. */
export async function keepFiles(html: string): Promise<void> {
  const files = await caches.open(FILES)
  await Promise.allSettled(filesOf(html).map((file) => keepMissing(files, file)))
}

async function keepMissing(files: Cache, file: string): Promise<void> {
  if (await caches.match(file)) return
  const answer = await fetch(file)
  if (answer.ok) await files.put(file, answer)
}

/** A photo is kept once, in the first width that was asked for. */
async function keepPhoto(address: string): Promise<void> {
  if (await keptPhoto(address)) return
  const answer = await fetch(address)
  if (answer.ok) await putPhoto(address, answer)
}

/**
 * Keeps a photo for the reader that its answer names. Between signing in and the first page that says so, what a member
 * may see would be kept as a guest's: a photo for anybody but whoever is known to read is not kept.
 */
export async function putPhoto(address: string, answer: Response): Promise<void> {
  const reader = answer.headers.get(HEADS.reader)
  if (reader === null || reader !== (await currentReader())) return
  const store = storeOf.photos(reader)
  await (await caches.open(store)).put(address, answer)
  await bound(store, new URL(address, location.href).href, MOST.photos)
  // Somebody may have signed out while it was read.
  await forgetOthers(await currentReader())
}

/**
 * The kept copy of a page, exactly as it was asked for; of a draft's step also as it was asked for otherwise, and of a
 * blank form whichever draft is written on it.
 */
export async function keptPage(address: string): Promise<Response | undefined> {
  const ignoreSearch = isOfDraft(address)
  for (const store of await pageStores()) {
    const place = blankOf(address) ?? address
    const found = await (await caches.open(store)).match(place, { ignoreSearch, ignoreVary: true })
    if (found) return found
  }
  return undefined
}

/** A kept photo in whichever width there is. */
export async function keptPhoto(address: string): Promise<Response | undefined> {
  const reader = await currentReader()
  for (const name of new Set([storeOf.photos(reader), storeOf.photos(GUEST_READER)])) {
    const store = await caches.open(name)
    const exact = await store.match(address, { ignoreVary: true })
    if (exact) return exact
    const other = (await store.keys()).find(({ url }) => photoOf(url) === photoOf(address))
    if (other) return store.match(other)
  }
  return undefined
}

/** Stores of pages that whoever reads now may see: their own before those of guests. */
async function pageStores(): Promise<Set<string>> {
  const reader = await currentReader()
  return new Set([storeOf.pages(reader), storeOf.blanks(reader), storeOf.pages(GUEST_READER)])
}

/** Addresses of all pages that whoever reads now may see, each with the store that holds it. */
export async function keptPages(): Promise<{ store: Cache; request: Request }[]> {
  const held = await Promise.all(
    [...(await pageStores())].map(async (name) => {
      const store = await caches.open(name)
      return (await store.keys()).map((request) => ({ store, request }))
    }),
  )
  return held.flat()
}

/** Throws away the copies of a page that the site no longer answers; of a draft's step all that {@link keptPage} finds. */
export async function forgetPage(address: string): Promise<void> {
  const ignoreSearch = isOfDraft(address)
  for (const store of await pageStores())
    await (await caches.open(store)).delete(address, { ignoreSearch, ignoreVary: true })
}

/** Throws away a photo in every width. */
export async function forgetPhotos(photos: ReadonlySet<string | undefined>): Promise<void> {
  const reader = await currentReader()
  for (const name of new Set([storeOf.photos(reader), storeOf.photos(GUEST_READER)])) {
    const store = await caches.open(name)
    for (const request of await store.keys())
      if (photos.has(photoOf(request.url))) await store.delete(request)
  }
}

/** Throws away the files of builds that no kept page is of. */
export async function forgetStaleFiles(): Promise<void> {
  const names = await caches.keys()
  const builds = new Set([BUILD])
  for (const name of names.filter((one) => isPageStore(one) || isBlankStore(one))) {
    const store = await caches.open(name)
    for (const request of await store.keys()) {
      const copy = await store.match(request)
      builds.add(copy?.headers.get(HEADS.build) ?? BUILD)
    }
  }
  await Promise.all(staleFileStores(names, builds).map((name) => caches.delete(name)))
}
