import { type Counted, checkIntervals, endOf, weightOf } from './interval.ts'

/** The ends of many intervals, sorted once, so that resampled counts of them need no new sorting. */
export interface SortedEnds {
  readonly from: Float64Array
  /** Infinity where nothing was seen to happen. */
  readonly to: Float64Array
  readonly weight: Float64Array
  /** Twice the interval's place, plus 1 for its right end. */
  readonly order: Uint32Array
}

/**
 * The only stretches of time that a maximum of the likelihood can give weight to (Turnbull 1976): a left end
 * followed by a right end with no other end between. Each interval holds an unbroken row of them.
 */
export interface Innermost {
  readonly count: number
  readonly from: Float64Array
  readonly to: Float64Array
  /** For each interval its first and last stretch; both 0 where it counts nothing. */
  readonly first: Uint32Array
  readonly last: Uint32Array
}

/** @throws RangeError where an interval is none */
export function sortEnds(intervals: readonly Counted[]): SortedEnds {
  checkIntervals(intervals)
  const from = Float64Array.from(intervals, (interval) => interval.from)
  const to = Float64Array.from(intervals, endOf)
  const order = new Uint32Array(2 * intervals.length).map((_, code) => code)
  const dayOf = (code: number) => (code & 1 ? to : from)[code >> 1] as number
  // On one day: an exact time opens, then the closed right ends, then what happened after that day.
  const rankOf = (code: number) => (code & 1 ? 1 : from[code >> 1] === to[code >> 1] ? 0 : 2)
  order.sort((a, b) => {
    const [x, y] = [dayOf(a), dayOf(b)]
    return x < y ? -1 : x > y ? 1 : rankOf(a) - rankOf(b)
  })
  return { from, to, weight: Float64Array.from(intervals, weightOf), order }
}

/**
 * Finds the innermost stretches in one pass over the sorted ends.
 *
 * @param weight counts to use in place of those the intervals came with; what counts 0 is left out
 */
export function findInnermost({ from, to, order }: SortedEnds, weight: Float64Array): Innermost {
  const n = from.length
  const starts = new Float64Array(n)
  const ends = new Float64Array(n)
  const first = new Uint32Array(n)
  const last = new Uint32Array(n)
  let count = 0
  let opened = false
  for (let k = 0; k < order.length; k++) {
    const code = order[k] as number
    const i = code >> 1
    if ((weight[i] as number) <= 0) continue
    if ((code & 1) === 0) {
      starts[count] = from[i] as number
      first[i] = count
      opened = true
      continue
    }
    if (opened) {
      ends[count] = to[i] as number
      count++
      opened = false
    }
    last[i] = count - 1
  }
  return { count, from: starts.subarray(0, count), to: ends.subarray(0, count), first, last }
}
