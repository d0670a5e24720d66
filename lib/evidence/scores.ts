import type { Counted } from './interval.ts'
import { fitIntervals } from './turnbull.ts'

/**
 * Log-rank scores of interval-censored walls (Sun 1996): how much sooner than its fellows, on the curve of all
 * walls together, each one changed. They add up to 0 over the walls; for exact days they are the scores behind
 * the log-rank test.
 *
 * @returns one score for each interval, in the order given
 * @throws RangeError where an interval is none or none counts
 */
export function scoreIntervals(intervals: readonly Counted[]): Float64Array {
  const {
    innermost,
    maximum: { mass },
  } = fitIntervals(intervals)
  const left = new Float64Array(mass.length + 1)
  const hazard = new Float64Array(mass.length + 1)
  left[0] = 1
  for (let j = 0; j < mass.length; j++) {
    const [share, before] = [mass[j] as number, left[j] as number]
    left[j + 1] = j === mass.length - 1 ? 0 : Math.max(0, before - share)
    hazard[j + 1] = (hazard[j] as number) + (before > 0 ? share / before : 0)
  }
  const weightedAt = (k: number) => (left[k] as number) * (hazard[k] as number)
  return Float64Array.from(intervals, (_, i) => {
    const [a, b] = [innermost.first[i] as number, (innermost.last[i] as number) + 1]
    return (weightedAt(b) - weightedAt(a)) / ((left[a] as number) - (left[b] as number))
  })
}
