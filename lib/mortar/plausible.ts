import type { Proportions } from './proportions.ts'
import type { Range } from './range.ts'

/** A bound that practice knows for a family of mortars; none comes from a source. */
export interface PlausibleBound {
  readonly id: PlausibleId
  readonly family: 'earth' | 'earth-lime' | 'air-lime'
  readonly low: number
  readonly high: number
  readonly unit: '%' | '1' | 'MPa'
  readonly basis: 'practice'
}

export const PLAUSIBLE_IDS = [
  'earth-clay',
  'earth-lime-quicklime',
  'earth-lime-slaked',
  'air-lime-strength',
  'air-lime-hot-strength',
] as const
export type PlausibleId = (typeof PLAUSIBLE_IDS)[number]

const bound = (
  id: PlausibleId,
  family: PlausibleBound['family'],
  low: number,
  high: number,
  unit: PlausibleBound['unit'],
): PlausibleBound => ({ id, family, low, high, unit, basis: 'practice' })

/**
 * Earth mortar holds clay near 12 % of its dry mass; earth-lime mortar takes 5 to 10 % of quicklime by
 * mass, or 1 of slaked lime (its state not stated; taken as putty) to about 5 of earth by volume. Air-lime
 * mortar three months old bears 0.7 to 1.3 MPa, hot-mixed up to 2. Outside them a recipe deserves a second
 * look, no more.
 */
export const PLAUSIBLE: readonly PlausibleBound[] = [
  bound('earth-clay', 'earth', 8, 16, '%'),
  bound('earth-lime-quicklime', 'earth-lime', 5, 10, '%'),
  bound('earth-lime-slaked', 'earth-lime', 4, 6, '1'),
  bound('air-lime-strength', 'air-lime', 0.7, 1.3, 'MPa'),
  bound('air-lime-hot-strength', 'air-lime', 0.7, 2, 'MPa'),
]

export interface Plausibility extends PlausibleBound {
  readonly found: Range
  /** Does any of what was found lie within the bound? */
  readonly touches: boolean
}

/**
 * A recipe's proportions beside the bounds of its family; empty for families that have none.
 *
 * @param strengthMPa compressive strength measured at about three months, where it was
 */
export const comparePlausible = (family: string, found: Proportions, strengthMPa?: Range): Plausibility[] =>
  PLAUSIBLE.flatMap((one) => {
    const range = one.family === family ? READ[one.id](found, strengthMPa ?? null) : null
    if (range === null) return []
    return [{ ...one, found: range, touches: range.low <= one.high && one.low <= range.high }]
  })

const READ: Record<PlausibleId, (found: Proportions, strengthMPa: Range | null) => Range | null> = {
  'earth-clay': ({ clayPercent }) => clayPercent,
  'earth-lime-quicklime': ({ states }) => states['ground-quicklime']?.limePercent ?? null,
  'earth-lime-slaked': ({ states }) => states.putty?.aggregateDry ?? null,
  'air-lime-strength': (_, strengthMPa) => strengthMPa,
  'air-lime-hot-strength': (_, strengthMPa) => strengthMPa,
}
