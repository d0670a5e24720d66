import { MOLAR_MASS } from './constants.ts'
import { hydratePerQuicklime, type LimeState, puttySolids } from './lime.ts'

/** CO2 that one kg of CaCO3 gives off, kg. */
export const CO2_PER_CACO3 = MOLAR_MASS.CO2 / MOLAR_MASS.CaCO3
/** CO2 that one kg of Ca(OH)2 takes up, kg. */
export const CO2_PER_HYDRATE = MOLAR_MASS.CO2 / MOLAR_MASS.CaOH2
/** Mass that one kg of Ca(OH)2 gains by carbonating, kg: CO2 in, water out. */
export const GAIN_PER_HYDRATE = (MOLAR_MASS.CO2 - MOLAR_MASS.H2O) / MOLAR_MASS.CaOH2
/** CaO in one kg of Ca(OH)2, kg. */
export const CAO_PER_HYDRATE = MOLAR_MASS.CaO / MOLAR_MASS.CaOH2

/** All numbers of one sample: masses in g, shares, densities in kg/m³. */
export interface SampleMasses {
  readonly sample: number
  readonly kept: number
  readonly fines: number
  readonly co2: number
  readonly calcareous: number
  readonly carbonated: number
  readonly other: number
  readonly freeCaO: number
  readonly lump: number
  readonly ground: number
  readonly hydrateDensity: number
  readonly puttyDensity: number
  readonly solidDensity: number
  readonly aggregateDensity: number
}

export type SampleOutput =
  | 'soluble'
  | 'rock'
  | 'fromLime'
  | 'hydrate'
  | 'cao'
  | 'carbonation'
  | 'aggregate'
  | 'clayPercent'
  | `${'mass' | 'volume' | 'percent'}.${LimeState}`

/** So little lime that a corner of the ranges leaves, as a share of what dissolved; keeps ratios finite. */
const LEAST_LIME = 1e-6

/**
 * The sum behind one sample on plain numbers.
 *
 * With f the share carbonated, a kg of Ca(OH)2 left (1 + 0.351 f) kg in the wall. Measured CO2, less the
 * aggregate's, gives that gain without knowing f.
 */
export function sampleSum(
  x: SampleMasses,
  fines: string,
  co2Measured: boolean,
): Record<SampleOutput, number> {
  const soluble = x.sample - x.kept - x.fines
  const filler = fines === 'binder' ? x.kept : x.kept + x.fines
  const rock = (filler * x.calcareous) / (1 - x.calcareous)
  const fromLime = Math.max(soluble - x.other * x.sample - rock, LEAST_LIME * x.sample)
  const co2 = Math.min(Math.max(x.co2 - CO2_PER_CACO3 * rock, 0), CO2_PER_CACO3 * fromLime)
  const hydrate = co2Measured
    ? fromLime - (co2 * GAIN_PER_HYDRATE) / CO2_PER_HYDRATE
    : fromLime / (1 + GAIN_PER_HYDRATE * x.carbonated)
  const carbonation = co2Measured ? Math.min(1, co2 / (CO2_PER_HYDRATE * hydrate)) : x.carbonated
  const cao = hydrate * CAO_PER_HYDRATE
  const quicklime = cao / x.freeCaO
  const dryHydrate = quicklime * hydratePerQuicklime(x.freeCaO)
  const putty = dryHydrate / puttySolids(x.puttyDensity, x.solidDensity)
  const total = filler + rock
  const volume = total / x.aggregateDensity
  return {
    soluble,
    rock,
    fromLime,
    hydrate,
    cao,
    carbonation,
    aggregate: fines === 'clay' ? total - x.fines : total,
    clayPercent: (100 * x.fines) / (total + dryHydrate),
    'mass.lump-quicklime': total / quicklime,
    'mass.ground-quicklime': total / quicklime,
    'mass.dry-hydrate': total / dryHydrate,
    'mass.putty': total / putty,
    'volume.lump-quicklime': (volume * x.lump) / quicklime,
    'volume.ground-quicklime': (volume * x.ground) / quicklime,
    'volume.dry-hydrate': (volume * x.hydrateDensity) / dryHydrate,
    'volume.putty': (volume * x.puttyDensity) / putty,
    'percent.lump-quicklime': (100 * quicklime) / (quicklime + total),
    'percent.ground-quicklime': (100 * quicklime) / (quicklime + total),
    'percent.dry-hydrate': (100 * dryHydrate) / (dryHydrate + total),
    'percent.putty': (100 * dryHydrate) / (dryHydrate + total),
  }
}
