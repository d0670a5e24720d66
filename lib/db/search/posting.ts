/**
 * Sets of document ids as SearchPosting keeps them: a block of 65,536 ids is a sorted list of 16-bit numbers, or one
 * bit for each where the list would take as much room. A set has one form only, so equal sets are equal bytes.
 */
export const BLOCK = 65_536
const BITMAP_BYTES = BLOCK / 8
/** A list of this many ids takes as much room as the bits. */
const LIST_END = BITMAP_BYTES / 2

/** @param within sorted numbers below {@link BLOCK}, each once */
export function packIds(within: ArrayLike<number>): Uint8Array<ArrayBuffer> {
  const isList = within.length < LIST_END
  const bytes = new Uint8Array(isList ? within.length * 2 : BITMAP_BYTES)
  for (let i = 0; i < within.length; i += 1) {
    const id = within[i] ?? 0
    if (!isList) bytes[id >> 3] = (bytes[id >> 3] ?? 0) | (1 << (id & 7))
    else {
      bytes[i * 2] = id & 255
      bytes[i * 2 + 1] = id >> 8
    }
  }
  return bytes
}

/** The numbers of a packed block, sorted. */
export function unpackIds(bytes: Uint8Array): number[] {
  const ids: number[] = []
  if (bytes.length < BITMAP_BYTES)
    for (let i = 0; i < bytes.length; i += 2) ids.push((bytes[i] ?? 0) | ((bytes[i + 1] ?? 0) << 8))
  else for (let id = 0; id < BLOCK; id += 1) if (((bytes[id >> 3] ?? 0) >> (id & 7)) & 1) ids.push(id)
  return ids
}

/**
 * Sets the bits of a packed block's ids in a field of bits for all ids, 32 to a number.
 *
 * @param bits long enough for the block's last id
 */
export function markIds(bits: Uint32Array, block: number, bytes: Uint8Array): void {
  const base = block * (BLOCK / 32)
  if (bytes.length < BITMAP_BYTES) {
    for (let i = 0; i < bytes.length; i += 2) {
      const id = (bytes[i] ?? 0) | ((bytes[i + 1] ?? 0) << 8)
      const at = base + (id >> 5)
      if (at < bits.length) bits[at] = (bits[at] ?? 0) | (1 << (id & 31))
    }
    return
  }
  for (let i = 0; i < BLOCK / 32 && base + i < bits.length; i += 1) {
    const at = i * 4
    const word =
      (bytes[at] ?? 0) |
      ((bytes[at + 1] ?? 0) << 8) |
      ((bytes[at + 2] ?? 0) << 16) |
      ((bytes[at + 3] ?? 0) << 24)
    bits[base + i] = (bits[base + i] ?? 0) | word
  }
}
