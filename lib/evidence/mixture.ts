import type { Innermost } from './innermost.ts'
import type { Mixture } from './likelihood.ts'

/** First and last of an unbroken run of places. */
export type Run = readonly [first: number, last: number]

/** Intervals as observations over their innermost stretches; what counts 0 is left out. */
export function mixIntervals({ count, first, last }: Innermost, weight: Float64Array): Mixture {
  const at = new Uint32Array(2 * weight.length)
  const sign = new Int8Array(2 * weight.length)
  const start = new Uint32Array(weight.length + 1)
  const counts = new Float64Array(weight.length)
  let rows = 0
  for (let i = 0; i < weight.length; i++) {
    if ((weight[i] as number) <= 0) continue
    at[2 * rows] = first[i] as number
    sign[2 * rows] = -1
    at[2 * rows + 1] = (last[i] as number) + 1
    sign[2 * rows + 1] = 1
    counts[rows] = weight[i] as number
    rows++
    start[rows] = 2 * rows
  }
  const end = 2 * rows
  return {
    places: count,
    start: start.subarray(0, rows + 1),
    at: at.subarray(0, end),
    sign: sign.subarray(0, end),
    weight: counts.subarray(0, rows),
    isPaired: true,
  }
}

/**
 * Observations that allow several runs of places.
 *
 * @param runs of each observation, in order and apart; runs that touch count as one
 */
export function mixRuns(places: number, runs: readonly (readonly Run[])[], weight: Float64Array): Mixture {
  const terms = runs.map((own) =>
    own.flatMap(([first, last], k) => [
      ...(own[k - 1]?.[1] === first - 1 ? [] : [{ at: first, sign: -1 }]),
      ...(own[k + 1]?.[0] === last + 1 ? [] : [{ at: last + 1, sign: 1 }]),
    ]),
  )
  const start = new Uint32Array(runs.length + 1)
  terms.forEach((own, i) => {
    start[i + 1] = (start[i] as number) + own.length
  })
  const flat = terms.flat()
  return {
    places,
    start,
    at: Uint32Array.from(flat, (term) => term.at),
    sign: Int8Array.from(flat, (term) => term.sign),
    weight,
    isPaired: false,
  }
}
