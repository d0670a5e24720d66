import { wilson } from './proportion.ts'
import { percentile } from './resample.ts'

export interface Band {
  readonly bandLow: number
  readonly bandHigh: number
}

/**
 * What one wall counts for where the band is made of counts: each further wall of a building for half. That half
 * is this project's own convention.
 */
export const worthOfWall = (buildings: number, walls: number): number =>
  (1 + Math.min(1, buildings / walls)) / 2

/**
 * Limits about a share: the middle `level` of its draws, yet never inside Wilson's interval for so many walls as
 * were known, since draws of few spread too little.
 *
 * @param share the estimate, one number or two bounds
 * @param drawn its bounds in all draws, smallest first
 * @param known walls known on that day, in what they are worth
 */
export function bandOf(
  share: { readonly low: number; readonly high: number },
  drawn: { readonly low: Float64Array; readonly high: Float64Array },
  known: number,
  level: number,
): Band {
  const tail = (1 - level) / 2
  return {
    bandLow: Math.min(
      share.low,
      percentile(drawn.low, tail),
      wilson(share.low * known, known, level)?.low ?? 0,
    ),
    bandHigh: Math.max(
      share.high,
      percentile(drawn.high, 1 - tail),
      wilson(share.high * known, known, level)?.high ?? 1,
    ),
  }
}
