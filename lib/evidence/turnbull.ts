import { findInnermost, type Innermost, type SortedEnds, sortEnds } from './innermost.ts'
import { type Counted, countWalls } from './interval.ts'
import { type MaximiseOptions, type Maximum, maximise } from './maximise.ts'
import { mixIntervals } from './mixture.ts'

/** Share of the walls to which it happened after day `from` and not later than `to`; null: not yet at all. */
export interface Mass {
  readonly from: number
  readonly to: number | null
  readonly mass: number
}

/** What interval-censored observations say about one end point. */
export interface Turnbull {
  readonly walls: number
  /** Earliest first, only those above 0; they add up to 1. Where inside its stretch a mass lies, nobody saw. */
  readonly masses: readonly Mass[]
  readonly logLikelihood: number
  readonly iterations: number
  /** Kuhn-Tucker check: 0 at the maximum; see `Maximum.excess`. */
  readonly excess: number
  readonly converged: boolean
}

/** Shares that still stood on a day: one number outside the stretches, two bounds inside one. */
export interface Standing {
  readonly low: number
  readonly high: number
}

/** Below this a mass is what a computer's rounding leaves, far less than any wall's share. */
const SPECK = 1e-9

/**
 * Turnbull's estimate (1976): the shares of walls to which it happened, stretch by stretch, that make the
 * intervals seen most likely. With exact and right-censored days alone it is Kaplan and Meier's.
 *
 * @param intervals days since the baseline; equal ones may come once with their count
 * @throws RangeError where an interval is none or none counts
 */
export function estimateTurnbull(intervals: readonly Counted[], options: MaximiseOptions = {}): Turnbull {
  return toTurnbull(fitIntervals(intervals, options))
}

/** An estimate with what it was worked out on. */
export interface Fit {
  readonly walls: number
  readonly ends: SortedEnds
  readonly innermost: Innermost
  readonly maximum: Maximum
}

/** The estimate for those who go on from it; else as {@link estimateTurnbull}. */
export function fitIntervals(intervals: readonly Counted[], options: MaximiseOptions = {}): Fit {
  const ends = sortEnds(intervals)
  const walls = countWalls(intervals)
  if (walls <= 0) throw new RangeError('intervals count no wall; at least one will do')
  const innermost = findInnermost(ends, ends.weight)
  return { walls, ends, innermost, maximum: maximise(mixIntervals(innermost, ends.weight), options) }
}

export function toTurnbull({ walls, innermost, maximum: { mass, ...found } }: Fit): Turnbull {
  return { walls, masses: massesOf(innermost, mass), ...found }
}

/** The masses above rounding, each with its stretch. */
export function massesOf({ from, to }: Innermost, mass: Float64Array): Mass[] {
  const masses: Mass[] = []
  for (let j = 0; j < mass.length; j++) {
    const share = mass[j] as number
    if (share <= SPECK) continue
    const end = to[j] as number
    masses.push({ from: from[j] as number, to: Number.isFinite(end) ? end : null, mass: share })
  }
  return masses
}

/** @param day 0 or more; else as {@link standingsAt} */
export function standingAt(masses: readonly Mass[], day: number): Standing {
  return standingsAt(masses, [day])[0] ?? { low: 0, high: 1 }
}

/**
 * The share still standing at the end of each day. Inside a stretch that holds mass the data do not say: `low`
 * counts all of its mass as happened, `high` none.
 *
 * @param days 0 or more, earliest first
 */
export function standingsAt(masses: readonly Mass[], days: readonly number[]): Standing[] {
  let happened = 0
  let begun = 0
  let low = 1
  let high = 1
  return days.map((day) => {
    for (let mass = masses[begun]; mass !== undefined && mass.from < day; mass = masses[++begun])
      low -= mass.mass
    for (let mass = masses[happened]; mass?.to != null && mass.to <= day; mass = masses[++happened])
      high -= mass.mass
    return { low: clamp(Math.min(low, high)), high: clamp(high) }
  })
}

const clamp = (share: number) => (share < 1e-12 ? 0 : Math.min(1, share))
