import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Basis, Range } from './range.ts'
import { type CurvePoint, passingAt } from './sieve-curve.ts'
import type { GradingLimits } from './sieve-gradings.ts'

/** `borderline`: the range of the result lies on both sides of a limit. `no-data`: the stack does not reach. */
export type LimitOutcome = 'within' | 'outside' | 'borderline' | 'no-data'

export interface LimitRow {
  readonly openingMm: number
  /** Set for a rule on what stays between two sieves. */
  readonly fromMm?: number
  readonly low: number
  readonly high: number
  readonly found: Range | null
  /** Read between two sieves of the stack, not on one. */
  readonly interpolated: boolean
  readonly outcome: LimitOutcome
}

export interface LimitCheck {
  readonly id: string
  readonly source: string
  readonly basis: Basis
  readonly rows: readonly LimitRow[]
}

/** A measured curve with its ranges, coarsest first. */
export type RangedCurve = readonly { readonly openingMm: number; readonly passing: Range }[]

/** Holds a measured curve against one named grading, sieve by sieve. Faults: no curve. */
export function checkGrading(curve: RangedCurve, limit: GradingLimits): Outcome<LimitCheck> {
  return attempt(() => {
    const check = inspect()
    if (curve.length === 0) check.refuse({ field: 'curve', code: 'empty' })
    curve.forEach((point, i) => {
      check.range(`curve.${i}.passing`, point.passing, { min: 0, max: 100, unit: '%' })
    })
    check.finish()
    const found = (openingMm: number) => rangeAt(curve, openingMm)
    const measured = (openingMm: number) => curve.some((point) => point.openingMm === openingMm)
    const sieves = limit.passing.map(({ openingMm, low, high }): LimitRow => {
      const passing = found(openingMm)
      return {
        openingMm,
        low,
        high,
        found: passing,
        interpolated: passing !== null && !measured(openingMm),
        outcome: judge(passing, low, high),
      }
    })
    const gaps = limit.gaps.map(({ fromMm, toMm, high }): LimitRow => {
      const kept = between(found(fromMm), found(toMm))
      const interpolated = kept !== null && !(measured(fromMm) && measured(toMm))
      return {
        openingMm: toMm,
        fromMm,
        low: 0,
        high,
        found: kept,
        interpolated,
        outcome: judge(kept, 0, high),
      }
    })
    return { id: limit.id, source: limit.source, basis: limit.basis, rows: [...sieves, ...gaps] }
  })
}

function rangeAt(curve: RangedCurve, openingMm: number): Range | null {
  const end = (pick: (range: Range) => number): CurvePoint[] =>
    curve.map((point) => ({ openingMm: point.openingMm, passing: pick(point.passing) }))
  const typical = passingAt(
    end((range) => range.typical),
    openingMm,
  )
  if (typical === null) return null
  const low = passingAt(
    end((range) => range.low),
    openingMm,
  )
  const high = passingAt(
    end((range) => range.high),
    openingMm,
  )
  return { low: low ?? typical, typical, high: high ?? typical }
}

/** What stays between two sieves; its ends are set wide, as if the two errors were opposed. */
function between(coarse: Range | null, fine: Range | null): Range | null {
  if (coarse === null || fine === null) return null
  return {
    low: Math.max(0, coarse.low - fine.high),
    typical: coarse.typical - fine.typical,
    high: coarse.high - fine.low,
  }
}

/** A grading is printed in whole %; a millionth is rounding in our sums, not a fault of the sand. */
const SLACK = 1e-6

function judge(found: Range | null, low: number, high: number): LimitOutcome {
  if (found === null) return 'no-data'
  if (found.low >= low - SLACK && found.high <= high + SLACK) return 'within'
  return found.high < low - SLACK || found.low > high + SLACK ? 'outside' : 'borderline'
}
