import { findInnermost, type Innermost, type SortedEnds, sortEnds } from './innermost.ts'
import { type Counted, countWalls, weightOf } from './interval.ts'
import { type MaximiseOptions, maximise } from './maximise.ts'
import { mixRuns, type Run } from './mixture.ts'
import { type Mass, massesOf } from './turnbull.ts'

/** A wall and what came to it in the interval; null: nothing yet, and then `to` is null as well. */
export interface Caused extends Counted {
  readonly cause: string | null
}

/** How the walls divide among what can come to them, and when it did. */
export interface Incidence {
  readonly walls: number
  /** Earliest first; the masses of all causes and `notYet` add up to 1. */
  readonly causes: readonly { readonly cause: string; readonly masses: readonly Mass[] }[]
  /** Share that nothing has come to within what was watched. */
  readonly notYet: number
  readonly logLikelihood: number
  readonly iterations: number
  /** Kuhn-Tucker check, as for `Turnbull`. */
  readonly excess: number
  readonly converged: boolean
}

/** Where causes crowd out one another, the last steps are slow and change no digit that chance leaves standing. */
const toleranceFor = (walls: number) => 1e-8 * Math.min(100, Math.max(1, walls / 100))

/** Masses to start from. */
export interface Near {
  /** Of a cause, by its place, in its stretches. */
  of(cause: number, stretches: Innermost): Float64Array
  /** Of what nothing comes to. */
  readonly rest: number
}

/**
 * Cumulative incidence of competing events seen at visits: the masses by cause and stretch that make what was
 * seen most likely (Hudgens, Satten and Longini 2001). Where days are exact it is Aalen and Johansen's.
 *
 * Each cause has stretches of its own, made of the intervals of that cause and the last visits of walls that
 * nothing has come to.
 *
 * @throws RangeError where an interval is none, none counts, or a wall without a cause has an end
 */
export function estimateIncidence(rows: readonly Caused[], options: MaximiseOptions = {}): Incidence {
  const walls = countWalls(rows)
  if (walls <= 0) throw new RangeError('rows count no wall; at least one will do')
  return fitIncidence(prepareCauses(rows), Float64Array.from(rows, weightOf), options)
}

/** Rows with their ends sorted and their causes numbered, once for many counts of them. */
export interface CausedEnds {
  readonly ends: SortedEnds
  readonly causes: readonly string[]
  /** Place of each row's cause; -1 where nothing has come. */
  readonly cause: Int32Array
}

export function prepareCauses(rows: readonly Caused[]): CausedEnds {
  const ends = sortEnds(rows)
  rows.forEach(({ cause, to }) => {
    if ((cause === null) !== (to === null))
      throw new RangeError(`cause is ${cause} and to is ${to}; both or neither must be null`)
  })
  const causes = [...new Set(rows.flatMap(({ cause }) => cause ?? []))].sort()
  const places = new Map(causes.map((cause, place) => [cause, place]))
  return { ends, causes, cause: Int32Array.from(rows, ({ cause }) => places.get(cause ?? '') ?? -1) }
}

/** The estimate for these counts of the rows, from masses near it where some are known. */
export function fitIncidence(
  { ends, causes, cause }: CausedEnds,
  weight: Float64Array,
  options: MaximiseOptions,
  near?: Near,
): Incidence {
  const blocks = causes.map((_, k) =>
    // Rows of other causes count nothing here.
    findInnermost(
      ends,
      weight.map((count, i) => (cause[i] === k || cause[i] === -1 ? count : 0)),
    ),
  )
  const counted = Uint32Array.from(weight.keys()).filter((i) => (weight[i] as number) > 0)
  const { runs, places } = layOut(counted, cause, blocks)
  const weights = Float64Array.from(counted, (i) => weight[i] as number)
  const walls = weights.reduce((sum, count) => sum + count, 0)
  const found = maximise(mixRuns(places, runs, weights), {
    tolerance: toleranceFor(walls),
    ...(near && { start: startAt(blocks, near) }),
    ...options,
  })
  let start = 0
  let notYet = Math.max(0, found.mass[places - 1] as number)
  const parts = causes.map((name, k) => {
    const innermost = blocks[k] as Innermost
    const all = massesOf(innermost, found.mass.subarray(start, start + innermost.count))
    start += innermost.count
    notYet += all.reduce((sum, { to, mass }) => sum + (to === null ? mass : 0), 0)
    return { cause: name, masses: all.filter(({ to }) => to !== null) }
  })
  const { logLikelihood, iterations, excess, converged } = found
  return { walls, causes: parts, notYet, logLikelihood, iterations, excess, converged }
}

function startAt(blocks: readonly Innermost[], near: Near): Float64Array {
  const masses = blocks.flatMap((block, cause) => [...near.of(cause, block)])
  return Float64Array.from([...masses, near.rest])
}

/** Puts the blocks side by side, one last place for what nothing comes to, and says which runs a row allows. */
function layOut(
  counted: Uint32Array,
  cause: Int32Array,
  blocks: readonly Innermost[],
): { runs: Run[][]; places: number } {
  let sum = 0
  const starts = blocks.map(({ count }) => {
    sum += count
    return sum - count
  })
  const runs = Array.from(counted, (i) => {
    const allowed = blocks.flatMap(({ first, last }, k): Run[] => {
      const start = starts[k] as number
      return cause[i] === -1 || cause[i] === k
        ? [[start + (first[i] as number), start + (last[i] as number)]]
        : []
    })
    return cause[i] === -1 ? [...allowed, [sum, sum] as const] : allowed
  })
  return { runs, places: sum + 1 }
}

/** Share of the walls that a cause had come to by the end of a day; two bounds inside its stretches. */
export function incidenceAt(
  masses: readonly Mass[],
  day: number,
): { readonly low: number; readonly high: number } {
  const sum = (reached: (mass: Mass) => boolean) =>
    masses.reduce((share, mass) => share + (reached(mass) ? mass.mass : 0), 0)
  return {
    low: sum(({ to }) => to !== null && to <= day),
    high: sum(({ from, to }) => from < day || (to !== null && to <= day)),
  }
}
