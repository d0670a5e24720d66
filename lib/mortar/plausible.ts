import type { Proportions } from './proportions.ts'
import type { Range } from './range.ts'

/** A bound that practice knows for a family of mortars; none comes from a source. */
export interface PlausibleBound {
  readonly id: PlausibleId
  readonly family: 'earth' | 'earth-lime'
  readonly low: number
  readonly high: number
  readonly unit: '%' | '1'
}

export const PLAUSIBLE_IDS = ['earth-clay', 'earth-lime-quicklime', 'earth-lime-slaked'] as const
export type PlausibleId = (typeof PLAUSIBLE_IDS)[number]

/**
 * Earth mortar holds clay near 12 % of its dry mass; earth-lime mortar takes 5 to 10 % of quicklime by
 * mass, or 1 of slaked lime (as putty) to about 5 of earth by volume. Outside them a recipe deserves a
 * second look, no more.
 */
export const PLAUSIBLE: readonly PlausibleBound[] = [
  { id: 'earth-clay', family: 'earth', low: 8, high: 16, unit: '%' },
  { id: 'earth-lime-quicklime', family: 'earth-lime', low: 5, high: 10, unit: '%' },
  { id: 'earth-lime-slaked', family: 'earth-lime', low: 4, high: 6, unit: '1' },
]

export interface Plausibility extends PlausibleBound {
  readonly found: Range
  /** Does any of what was found lie within the bound? */
  readonly touches: boolean
}

/** A recipe's proportions beside the bounds of its family; empty for families that have none. */
export const comparePlausible = (family: string, found: Proportions): readonly Plausibility[] =>
  PLAUSIBLE.flatMap((bound) => {
    const range = bound.family === family ? READ[bound.id](found) : null
    if (range === null) return []
    return [{ ...bound, found: range, touches: range.low <= bound.high && bound.low <= range.high }]
  })

const READ: Record<PlausibleId, (found: Proportions) => Range | null> = {
  'earth-clay': ({ clayPercent }) => clayPercent,
  'earth-lime-quicklime': ({ states }) => states['ground-quicklime']?.limePercent ?? null,
  'earth-lime-slaked': ({ states }) => states.putty?.aggregateDry ?? null,
}
