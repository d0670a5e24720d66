import type { Curve } from './curve.ts'
import type { Step } from './kaplan-meier.ts'
import type { Mass } from './turnbull.ts'

/** When a share had been reached: after `from` and by `to`, with limits; null where not within what was watched. */
export interface Quantile {
  readonly from: number | null
  readonly to: number | null
  readonly low: number | null
  readonly high: number | null
}

/** A share short by no more than this counts as reached: computers halve badly. */
const ROUNDING = 1e-9

/**
 * The stretch in which the share of walls that it happened to reached `share`, 0.5 for the median. Where the
 * curve runs level at just that share, the start of the level counts. The limits are the days on which the
 * band crosses it, taken at the outer end of the step between two points.
 *
 * @throws RangeError unless 0 < share < 1
 */
export function quantileOf({ turnbull, points }: Curve, share: number): Quantile {
  checkShare(share)
  const left = 1 - share + ROUNDING
  const stretch = reach(turnbull.masses, share)
  const lowAt = points.findIndex(({ bandLow }) => bandLow <= left)
  return {
    from: stretch?.from ?? null,
    to: stretch?.to ?? null,
    low: lowAt < 0 ? null : (points[lowAt - 1]?.day ?? 0),
    high: points.find(({ bandHigh }) => bandHigh <= left)?.day ?? null,
  }
}

function reach(masses: readonly Mass[], share: number): Mass | undefined {
  let sum = 0
  return masses.find(({ to, mass }) => {
    sum += mass
    return to !== null && sum >= share - ROUNDING
  })
}

/** The same for exact days: the first day on which no more than 1 − `share` stood, and where the limits cross. */
export function exactQuantileOf(steps: readonly Step[], share: number): Quantile {
  checkShare(share)
  const left = 1 - share + ROUNDING
  const day = (below: (step: Step) => boolean) => steps.find(below)?.time ?? null
  const at = day(({ survival }) => survival <= left)
  return {
    from: at,
    to: at,
    low: day(({ low }) => low !== null && low <= left),
    high: day(({ high }) => high !== null && high <= left),
  }
}

function checkShare(share: number): void {
  if (!(share > 0 && share < 1)) throw new RangeError(`share is ${share}; between 0 and 1 will do`)
}
