import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/**
 * Streams are the same every time, so they are kept; the bound holds memory to some 10 MB. Seven digits
 * are enough for a draw, and half the memory is read faster.
 */
const streams = new Map<string, Float32Array>()
const STREAMS_KEPT = 256

/**
 * Draws between −1 (the low end) and 1 (the high end), half of them on either side of 0, growing rarer in a
 * straight line towards the ends.
 *
 * @param name seeds the stream: the same name gives the same draws
 */
export function streamOf(name: string, draws: number): Float32Array {
  const key = `${draws} ${name}`
  const kept = streams.get(key)
  if (kept !== undefined) return kept
  const generator = xoroshiro128plus(seedOf(name))
  const stream = new Float32Array(draws)
  for (let i = 0; i < draws; i++) {
    const u = (generator.next() >>> 0) / 2 ** 32
    stream[i] = u < 0.5 ? Math.sqrt(2 * u) - 1 : 1 - Math.sqrt(2 * (1 - u))
  }
  if (streams.size >= STREAMS_KEPT) streams.clear()
  streams.set(key, stream)
  return stream
}

/** FNV-1a, 32 bits: a stable number from a name. */
function seedOf(name: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  return hash >>> 0
}
