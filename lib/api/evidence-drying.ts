import { HORIZONS } from '#lib/db/projection/horizon.ts'
import {
  countWalls,
  curveSteps,
  DAYS_PER_YEAR,
  type Filed,
  MIN_WALLS,
  type Steps,
} from '#lib/evidence/index.ts'

/** How long a change in damp took, as far as visits tell; visits soon after rain can find a drying wall damp. */
export interface Drying {
  /** Works that it could come to. */
  readonly works: number
  /** Works on which a visit found it. */
  readonly found: number
  /** Share found so by then; none below the least number of works. */
  readonly horizons: readonly FoundShare[]
}

/** Two bounds where nobody looked between, and the band of 95 in 100. */
export interface FoundShare {
  readonly years: number
  readonly low: number
  readonly high: number
  readonly bandLow: number
  readonly bandHigh: number
}

/** Turnbull's estimate of the shares that were found changed after so many years, banded as curves are; in steps. */
export function* dryingSteps(weather: Filed, resamples: number): Steps<Drying> {
  const { rows } = weather
  const works = countWalls(rows)
  const found = countWalls(rows.filter(({ to }) => to !== null))
  if (works < MIN_WALLS) return { works, found, horizons: [] }
  const endDays = rows.reduce((most, { from, to }) => Math.max(most, from, to ?? 0), 0)
  const years = HORIZONS.map((one) => one.years).filter((y) => y > 0 && y * DAYS_PER_YEAR <= endDays)
  const { points } = yield* curveSteps(weather, { days: years.map((y) => y * DAYS_PER_YEAR), resamples })
  return {
    works,
    found,
    horizons: points.flatMap(({ low, high, bandLow, bandHigh }, k) => {
      const y = years[k]
      if (y === undefined) return []
      return [{ years: y, low: 1 - high, high: 1 - low, bandLow: 1 - bandHigh, bandHigh: 1 - bandLow }]
    }),
  }
}
