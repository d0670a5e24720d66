import { massesNear } from './curve.ts'
import type { CausedEnds } from './incidence.ts'
import { findInnermost, type Innermost } from './innermost.ts'
import { maximise } from './maximise.ts'
import { mixIntervals } from './mixture.ts'
import { DRAW_TOLERANCE } from './resample.ts'

/** So many times the stretches are divided anew among the causes; more move no share by a hundredth of a percent. */
const ROUNDS = 5

/**
 * A quick estimate of cumulative incidence for many counts of the same rows: Turnbull's masses of the first thing that
 * came, whatever it was, then each stretch divided among the causes by the rows that can have fallen into it. Where
 * days are exact it is Aalen and Johansen's; else it takes the causes of one stretch to be mixed alike throughout it.
 *
 * @param whole counts of all rows, near which those to be estimated lie
 */
export function splitOf({ ends, causes, cause }: CausedEnds, whole: Float64Array) {
  const all = findInnermost(ends, whole)
  const { mass } = maximise(mixIntervals(all, whole), { tolerance: DRAW_TOLERANCE })
  return {
    /** Masses of a cause in stretches of its own, and of what nothing comes to, to start the whole estimate from. */
    start: startsOf(all, divide(all, mass, whole, cause, causes.length), mass),
    /** For each cause and day the lower and the upper bound of its share, for these counts of the rows. */
    sharesAt(weight: Float64Array, days: readonly number[]): number[] {
      const own = weight === whole ? all : findInnermost(ends, weight)
      const start = massesNear(own, all, mass)
      const found = maximise(mixIntervals(own, weight), { tolerance: DRAW_TOLERANCE, start })
      const parts = divide(own, found.mass, weight, cause, causes.length)
      return parts.flatMap((part) => days.flatMap((day) => boundsAt(own, part, day)))
    },
  }
}

/** @returns for a cause's stretches the masses in them; without a cause, what lies in none */
const startsOf = (all: Innermost, parts: readonly Float64Array[], mass: Float64Array) => ({
  of: (cause: number, own: Innermost): Float64Array => massesNear(own, all, parts[cause] ?? mass),
  rest: Math.max(
    0.01 / all.count,
    mass.reduce((sum, each) => sum + each, 0) - parts.reduce((sum, part) => sum + total(part), 0),
  ),
})

const total = (part: Float64Array) => part.reduce((sum, each) => sum + each, 0)

/** The masses of each cause, stretch by stretch. */
function divide(
  { count, first, last }: Innermost,
  mass: Float64Array,
  weight: Float64Array,
  cause: Int32Array,
  causes: number,
): Float64Array[] {
  const parts = Array.from({ length: causes }, () => mass.slice())
  const sums = parts.map(() => new Float64Array(count + 1))
  const pulls = parts.map(() => new Float64Array(count + 1))
  for (let round = 0; round < ROUNDS; round++) {
    for (let c = 0; c < causes; c++) {
      addUp(parts[c] as Float64Array, sums[c] as Float64Array)
      ;(pulls[c] as Float64Array).fill(0)
    }
    for (let i = 0; i < weight.length; i++) {
      const c = cause[i] as number
      if (c < 0 || (weight[i] as number) <= 0) continue
      const [sum, pull] = [sums[c] as Float64Array, pulls[c] as Float64Array]
      const [from, to] = [first[i] as number, (last[i] as number) + 1]
      const held = (sum[to] as number) - (sum[from] as number)
      if (held <= 0) continue
      pull[from] = (pull[from] as number) + (weight[i] as number) / held
      pull[to] = (pull[to] as number) - (weight[i] as number) / held
    }
    share(parts, pulls, mass)
  }
  return parts
}

/** Gives each stretch to the causes as their rows pull at it; one that none pulls at came to nothing yet. */
function share(parts: readonly Float64Array[], pulls: readonly Float64Array[], mass: Float64Array): void {
  const pulled = parts.map(() => 0)
  for (let j = 0; j < mass.length; j++) {
    let all = 0
    parts.forEach((part, c) => {
      pulled[c] = (pulled[c] as number) + ((pulls[c] as Float64Array)[j] as number)
      all += Math.max(0, pulled[c] as number) * (part[j] as number)
    })
    parts.forEach((part, c) => {
      const own = Math.max(0, pulled[c] as number) * (part[j] as number)
      part[j] = all > 1e-12 ? ((mass[j] as number) * own) / all : 0
    })
  }
}

function addUp(part: Float64Array, sum: Float64Array): void {
  for (let j = 0; j < part.length; j++) sum[j + 1] = (sum[j] as number) + (part[j] as number)
}

function boundsAt({ from, to }: Innermost, part: Float64Array, day: number): [low: number, high: number] {
  let [low, high] = [0, 0]
  for (let j = 0; j < part.length; j++) {
    if ((to[j] as number) <= day) low += part[j] as number
    if ((from[j] as number) < day || (to[j] as number) <= day) high += part[j] as number
  }
  return [low, high]
}
