import { bandOf, worthOfWall } from './band.ts'
import { LEVEL, limitOf } from './distributions.ts'
import { findInnermost, type Innermost } from './innermost.ts'
import { type Clustered, countWalls, endOf } from './interval.ts'
import { maximise } from './maximise.ts'
import { mixIntervals } from './mixture.ts'
import {
  type Clusters,
  DRAW_TOLERANCE,
  type Filed,
  fileRows,
  finish,
  type ResampleOptions,
  resample,
  type Steps,
} from './resample.ts'
import { type Fit, fitIntervals, massesOf, standingsAt, type Turnbull, toTurnbull } from './turnbull.ts'

/** The share still standing at the end of a day. */
export interface CurvePoint {
  readonly day: number
  /** The estimate: one number, or two bounds inside a stretch where nobody saw when it happened. */
  readonly low: number
  readonly high: number
  readonly bandLow: number
  readonly bandHigh: number
  /** Walls seen standing on this day or later. */
  readonly standing: number
  /** Walls to which it is known to have happened by this day. */
  readonly happened: number
}

export interface Curve {
  readonly turnbull: Turnbull
  readonly clusters: number
  readonly points: readonly CurvePoint[]
}

export interface CurveOptions extends ResampleOptions {
  /** Days to look at; the ends of all stretches that hold mass unless said. */
  readonly days?: readonly number[]
}

/**
 * Turnbull's estimate with a band, point by point.
 *
 * The band holds the middle of what comes out when buildings are drawn again with replacement (walls of one
 * building are not independent). Where few walls are known that spread is too small, and nothing at all where
 * nothing happened; so the band never lies inside Wilson's interval for the walls known on that day, of which
 * each further one of a building counts for half. That half is this project's own convention;
 * `npm run bench -- coverage` shows how often the bands then hold the truth.
 *
 * @param rows days since the baseline, with the building; equal rows of a building may come once, counted
 * @throws RangeError where an interval is none or none counts
 */
export const estimateCurve = (rows: readonly Clustered[], options: CurveOptions = {}): Curve =>
  finish(curveSteps(fileRows(rows), options))

/** The same of rows that are filed already, in steps. */
export function* curveSteps({ rows, clusters }: Filed, options: CurveOptions = {}): Steps<Curve> {
  const { level = LEVEL } = options
  limitOf(level)
  const fit = fitIntervals(rows)
  yield
  const turnbull = toTurnbull(fit)
  const days = [...(options.days ?? stretchEnds(turnbull))].sort((a, b) => a - b)
  const draws = yield* drawStandings(fit, clusters, days, options)
  const worth = worthOfWall(clusters.count, countWalls(rows))
  const points = standingsAt(turnbull.masses, days).map(({ low, high }, k) => {
    const day = days[k] as number
    const standing = countWalls(rows.filter(({ from }) => from >= day))
    const happened = countWalls(rows.filter((interval) => endOf(interval) <= day))
    const drawn = { low: draws[2 * k] as Float64Array, high: draws[2 * k + 1] as Float64Array }
    const band = bandOf({ low, high }, drawn, (standing + happened) * worth, level)
    return { day, low, high, ...band, standing, happened }
  })
  return { turnbull, clusters: clusters.count, points }
}

/** For each day the lower and the upper bound of the share standing, in all draws. */
function drawStandings(
  { ends, innermost: all, maximum }: Fit,
  clusters: Clusters,
  days: readonly number[],
  options: ResampleOptions,
): Steps<Float64Array[]> {
  const estimate = (weight: Float64Array) => {
    // A draw has stretches of its own, longer ones: what it doesn't know must show in its bounds.
    const innermost = findInnermost(ends, weight)
    const start = massesNear(innermost, all, maximum.mass)
    const { mass } = maximise(mixIntervals(innermost, weight), { tolerance: DRAW_TOLERANCE, start })
    return standingsAt(massesOf(innermost, mass), days).flatMap(({ low, high }) => [low, high])
  }
  return resample(clusters, ends.weight.length, estimate, options)
}

/** Masses to start a draw from: those of all walls that lie in its stretches, and a little in each. */
export function massesNear(draw: Innermost, all: Innermost, mass: Float64Array): Float64Array {
  let k = 0
  return new Float64Array(draw.count).map((_, j) => {
    let sum = 0.01 / draw.count
    while (k < all.count && (all.to[k] as number) <= (draw.to[j] as number)) {
      if ((all.from[k] as number) >= (draw.from[j] as number)) sum += mass[k] as number
      k++
    }
    return sum
  })
}

const stretchEnds = ({ masses }: Turnbull) => [
  ...new Set([0, ...masses.flatMap(({ from, to }) => (to === null ? [from] : [from, to]))]),
]
