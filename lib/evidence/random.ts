import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** Draws a whole number from 0 up to, not including, `below`. */
export type Random = (below: number) => number

/** Resampling starts from this number unless told otherwise, so that the same walls give the same figures. */
export const SEED = 1976

/** @param seed any whole number; the same one gives the same draws */
export function randomOf(seed: number = SEED): Random {
  const generator = xoroshiro128plus(seed)
  return (below) => Math.floor(((generator.next() >>> 0) / 2 ** 32) * below)
}
