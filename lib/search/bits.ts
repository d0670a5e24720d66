/** Sets of ids as fields of bits, 32 to a number. Both sides of an operation are as long as one another. */
export type Bits = Uint32Array

export const newBits = (size: number): Bits => new Uint32Array((size + 31) >> 5)

export const hasBit = (bits: Bits, id: number): boolean => ((bits[id >> 5] ?? 0) & (1 << (id & 31))) !== 0

export function addBit(bits: Bits, id: number): void {
  bits[id >> 5] = (bits[id >> 5] ?? 0) | (1 << (id & 31))
}

export function dropBit(bits: Bits, id: number): void {
  bits[id >> 5] = (bits[id >> 5] ?? 0) & ~(1 << (id & 31))
}

/** Puts all of `more` into `bits`. */
export function unite(bits: Bits, more: Bits): void {
  for (let i = 0; i < bits.length; i += 1) bits[i] = (bits[i] ?? 0) | (more[i] ?? 0)
}

/** Keeps in `bits` only what is in `other` too. */
export function intersect(bits: Bits, other: Bits): void {
  for (let i = 0; i < bits.length; i += 1) bits[i] = (bits[i] ?? 0) & (other[i] ?? 0)
}

/** Takes all of `other` out of `bits`. */
export function subtract(bits: Bits, other: Bits): void {
  for (let i = 0; i < bits.length; i += 1) bits[i] = (bits[i] ?? 0) & ~(other[i] ?? 0)
}

export function countBits(bits: Bits): number {
  let count = 0
  for (let i = 0; i < bits.length; i += 1) count += ones(bits[i] ?? 0)
  return count
}

export const isEmpty = (bits: Bits): boolean => bits.every((word) => word === 0)

function ones(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555)
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333)
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}

/** The ids, sorted. */
export function idsOf(bits: Bits): Int32Array {
  const ids = new Int32Array(countBits(bits))
  let n = 0
  for (let i = 0; i < bits.length; i += 1) {
    let word = bits[i] ?? 0
    while (word !== 0) {
      const low = word & -word
      ids[n] = (i << 5) | (31 - Math.clz32(low))
      n += 1
      word ^= low
    }
  }
  return ids
}

/** A set of these ids. */
export function bitsOf(ids: Iterable<number>, size: number): Bits {
  const bits = newBits(size)
  for (const id of ids) addBit(bits, id)
  return bits
}
