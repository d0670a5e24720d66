import { CacheExpiration } from 'workbox-expiration'
import { GUEST_READER, READER_PLACE as PLACE, storesOfOthers } from './heads.ts'

/**
 * Whose browser this is just now, as the latest answer of the site said. What was kept for a member goes as soon as the
 * site answers somebody else, so that a shared telephone never shows one person's pages to another.
 */

let known: string | undefined
let begun = 0
let changedAt = 0

/** Marks that a request goes out now: its answer counts only if the reader did not change meanwhile. */
export const beginning = (): number => ++begun

export async function currentReader(): Promise<string> {
  if (known === undefined) {
    const noted = await (await caches.open(PLACE.store)).match(PLACE.address)
    known ??= (await noted?.text()) ?? GUEST_READER
  }
  return known
}

/** Takes note of the reader that an answer names; resolves with whether what came with it is theirs to keep. */
export async function noteReader(reader: string, began: number): Promise<boolean> {
  const before = await currentReader()
  if (began < changedAt) return reader === before
  if (reader !== before) {
    known = reader
    changedAt = ++begun
    await (await caches.open(PLACE.store)).put(PLACE.address, new Response(reader))
  }
  await forgetOthers(reader)
  return reader === known
}

/** Throws away what was kept for anybody but this reader and guests. */
export async function forgetOthers(reader: string): Promise<void> {
  for (const store of storesOfOthers(await caches.keys(), reader)) {
    await caches.delete(store)
    await new CacheExpiration(store, { maxEntries: 1 }).delete()
  }
}
