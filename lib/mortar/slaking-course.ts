import { attempt, type Outcome } from './fault.ts'
import { slakeHeap } from './heat.ts'
import type { Range } from './range.ts'
import { heapReader, readSlaking, SLAKING_NAMES, type SlakingInput } from './slaking.ts'
import { spreadVector } from './spread.ts'

/** Ends of the ranges are drawn, not printed: fewer draws than a printed figure needs. */
const DRAWS = 2000
const STEPS = 10

/** The heap when so much of its free lime has slaked. */
export interface SlakingPoint {
  /** 0 before the first of it, 1 at the end. */
  readonly share: number
  readonly averageC: Range
  /** Water neither bound nor boiled off, kg. */
  readonly freeKg: Range
}

/**
 * The energy balance of `slakeBatch` along the slake, by the share of the free lime that has slaked. How fast it
 * gets there no balance tells: there is no time in it. An average as if mixed evenly; dry spots run far hotter.
 *
 * @returns points from nothing slaked to all; faults as `slakeBatch`
 */
export const slakingCourse = (input: SlakingInput): Outcome<readonly SlakingPoint[]> =>
  attempt(() => {
    const ranges = readSlaking(input)
    const shares = Array.from({ length: STEPS + 1 }, (_, step) => step / STEPS)
    const heapOf = heapReader()
    const found = spreadVector(
      SLAKING_NAMES,
      SLAKING_NAMES.map((name) => ranges[name]),
      shares.flatMap((share) => [`averageC.${share}`, `freeKg.${share}`]),
      (x, out) => {
        const heap = heapOf(x)
        for (let k = 0; k < shares.length; k++) {
          heap.slakedShare = shares[k] as number
          const { averageC, freeKg } = slakeHeap(heap)
          out[2 * k] = averageC
          out[2 * k + 1] = freeKg
        }
      },
      DRAWS,
    )
    return shares.map((share, k) => ({
      share,
      averageC: found[2 * k] as Range,
      freeKg: found[2 * k + 1] as Range,
    }))
  })
