import { differentiate, type Mixture, newPoint, type Point } from './likelihood.ts'
import { pool } from './pool.ts'

export interface Maximum {
  /** Share of the walls in each place; they add up to 1. */
  readonly mass: Float64Array
  readonly logLikelihood: number
  readonly iterations: number
  /**
   * Kuhn-Tucker check: how far the slope of the likelihood towards any place stands above 1 per wall. 0 at the
   * maximum; the log-likelihood lies below its maximum by no more than this times the number of walls.
   */
  readonly excess: number
  readonly converged: boolean
}

export interface MaximiseOptions {
  /** The excess at which it stops; see {@link toleranceFor} unless said. */
  readonly tolerance?: number
  readonly maxIterations?: number
  /** Masses to start from, each above 0; equal ones unless said. */
  readonly start?: Float64Array
}

/** A bend so slight that any real one outweighs it. */
const NEGLIGIBLE = 1e-200

/**
 * The masses that make what was seen most likely, by steps of EM (Turnbull 1976) and of the iterative convex
 * minorant in turn (Wellner and Zhan 1997), which together reach the one maximum. A step takes time in
 * proportion to the observations plus the places.
 */
export function maximise(
  mixture: Mixture,
  { tolerance, maxIterations = 5000, start }: MaximiseOptions = {},
): Maximum {
  const m = mixture.places
  const walls = mixture.weight.reduce((sum, w) => sum + w, 0)
  const enough = tolerance ?? toleranceFor(walls)
  let here = newPoint(addUp(start ?? new Float64Array(m).fill(1 / m)))
  let there = newPoint(new Float64Array(m + 1))
  let iterations = 0
  differentiate(here, mixture)
  let excess = steepest(here.slope) / walls - 1
  while (excess > enough && iterations < maxIterations) {
    iterations++
    stepByExpectation(here, walls)
    differentiate(here, mixture)
    if (stepByMinorant(here, there, mixture)) [here, there] = [there, here]
    excess = steepest(here.slope) / walls - 1
  }
  const mass = new Float64Array(m)
  for (let j = 0; j < m; j++) mass[j] = (here.sum[j + 1] as number) - (here.sum[j] as number)
  return { mass, logLikelihood: here.logLikelihood, iterations, excess, converged: excess <= enough }
}

/**
 * Near enough to the maximum for so many walls: by a ten-thousand-millionth for a hundred, less near for more,
 * whose last steps are slow and move no digit that chance leaves standing.
 */
const toleranceFor = (walls: number) => 1e-10 * Math.min(100, Math.max(1, walls / 100))

/** Cumulative masses, from 0 to exactly 1. */
function addUp(mass: Float64Array): Float64Array {
  const sum = new Float64Array(mass.length + 1)
  for (let j = 0; j < mass.length; j++) sum[j + 1] = (sum[j] as number) + (mass[j] as number)
  const total = sum[mass.length] as number
  return sum.map((each) => each / total)
}

/** The steepest slope towards any one place, from those in the cumulative masses. */
function steepest(slope: Float64Array): number {
  let towards = 0
  let most = 0
  for (let j = 0; j < slope.length - 1; j++) {
    towards -= slope[j] as number
    if (towards > most) most = towards
  }
  return most
}

/** Each place takes the share of walls that the masses so far would put there. Leaves the slopes behind. */
function stepByExpectation({ sum, slope }: Point, walls: number): void {
  let before = sum[0] as number
  let towards = 0
  let total = 0
  for (let j = 0; j < sum.length - 1; j++) {
    towards -= slope[j] as number
    const next = sum[j + 1] as number
    total += ((next - before) * Math.max(0, towards)) / walls
    before = next
    sum[j + 1] = total
  }
  sum[sum.length - 1] = 1
}

/**
 * A Newton step with the bend of each cumulative mass alone, then the nearest ones that never fall, then as
 * much of that way as the likelihood gains on. False where it gains nothing.
 */
function stepByMinorant(here: Point, there: Point, mixture: Mixture): boolean {
  const { sum, slope, bend } = here
  const m = sum.length - 1
  const next = there.sum
  for (let k = 1; k < m; k++) {
    // Where no observation ends, its neighbours decide.
    if (bend[k] === 0) bend[k] = NEGLIGIBLE
    next[k] = (sum[k] as number) + (slope[k] as number) / (bend[k] as number)
  }
  pool(next, bend, 1, m)
  next[0] = 0
  next[m] = 1
  for (let halving = 0; halving < 30; halving++) {
    differentiate(there, mixture)
    if (there.logLikelihood > here.logLikelihood) return true
    for (let k = 1; k < m; k++) next[k] = ((next[k] as number) + (sum[k] as number)) / 2
  }
  return false
}
