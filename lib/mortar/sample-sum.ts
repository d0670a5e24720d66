import { MOLAR_MASS } from './constants.ts'
import { hydratePerQuicklime, LIME_STATES, puttySolids } from './lime.ts'
import type { Range } from './range.ts'
import { spreadVector } from './spread.ts'

/** CO2 that one kg of CaCO3 gives off, kg. */
export const CO2_PER_CACO3 = MOLAR_MASS.CO2 / MOLAR_MASS.CaCO3
/** CO2 that one kg of Ca(OH)2 takes up, kg. */
export const CO2_PER_HYDRATE = MOLAR_MASS.CO2 / MOLAR_MASS.CaOH2
/** Mass that one kg of Ca(OH)2 gains by carbonating, kg: CO2 in, water out. */
export const GAIN_PER_HYDRATE = (MOLAR_MASS.CO2 - MOLAR_MASS.H2O) / MOLAR_MASS.CaOH2
/** CaO in one kg of Ca(OH)2, kg. */
export const CAO_PER_HYDRATE = MOLAR_MASS.CaO / MOLAR_MASS.CaOH2

/** All numbers of one sample in the order that the sum reads them: masses in g, shares, densities in kg/m³. */
export const SAMPLE_INPUTS = [
  'sample',
  'kept',
  'fines',
  'co2',
  'calcareous',
  'carbonated',
  'other',
  'freeCaO',
  'lump',
  'ground',
  'hydrateDensity',
  'puttyDensity',
  'solidDensity',
  'aggregateDensity',
] as const
export type SampleRanges = Readonly<Record<(typeof SAMPLE_INPUTS)[number], Range>>

const OUTPUTS = [
  'soluble',
  'rock',
  'fromLime',
  'hydrate',
  'cao',
  'carbonation',
  'aggregate',
  'clayPercent',
  ...LIME_STATES.flatMap((state) => [`mass.${state}`, `volume.${state}`, `percent.${state}`] as const),
] as const
export type SampleFound = Readonly<Record<(typeof OUTPUTS)[number], Range>>

/** What the sum takes as given of the sample, beside its numbers. */
export interface SampleReading {
  readonly fines: 'aggregate' | 'clay' | 'binder'
  readonly co2Measured: boolean
}

/** So little lime that a corner of the ranges leaves, as a share of the sample; keeps ratios finite. */
const LEAST_LIME = 1e-6

/** All figures of a sample with their ranges. */
export function spreadSample(ranges: SampleRanges, reading: SampleReading): SampleFound {
  const inputs = SAMPLE_INPUTS.map((name) => ranges[name])
  const found = spreadVector(SAMPLE_INPUTS, inputs, OUTPUTS, (x, out) => sampleSum(x, out, reading))
  return Object.fromEntries(OUTPUTS.map((name, k) => [name, found[k]])) as SampleFound
}

/**
 * The sum behind one sample on plain numbers.
 *
 * With f the share carbonated, a kg of Ca(OH)2 left (1 + 0.351 f) kg in the wall. Measured CO2, less the
 * aggregate's, gives that gain without knowing f.
 */
export function sampleSum(x: Float64Array, out: Float64Array, { fines, co2Measured }: SampleReading): void {
  const sample = x[0] as number
  const kept = x[1] as number
  const fine = x[2] as number
  const calcareous = x[4] as number
  const freeCaO = x[7] as number
  const soluble = sample - kept - fine
  const filler = fines === 'binder' ? kept : kept + fine
  const rock = (filler * calcareous) / (1 - calcareous)
  const fromLime = Math.max(soluble - (x[6] as number) * sample - rock, LEAST_LIME * sample)
  const co2 = Math.min(Math.max((x[3] as number) - CO2_PER_CACO3 * rock, 0), CO2_PER_CACO3 * fromLime)
  const hydrate = co2Measured
    ? fromLime - (co2 * GAIN_PER_HYDRATE) / CO2_PER_HYDRATE
    : fromLime / (1 + GAIN_PER_HYDRATE * (x[5] as number))
  const cao = hydrate * CAO_PER_HYDRATE
  const total = filler + rock
  const quicklime = cao / freeCaO
  const slaked = quicklime * hydratePerQuicklime(freeCaO)
  const putty = slaked / puttySolids(x[11] as number, x[12] as number)
  out[0] = soluble
  out[1] = rock
  out[2] = fromLime
  out[3] = hydrate
  out[4] = cao
  out[5] = co2Measured ? Math.min(1, co2 / (CO2_PER_HYDRATE * hydrate)) : (x[5] as number)
  out[6] = fines === 'clay' ? total - fine : total
  out[7] = (100 * fine) / (total + slaked)
  const perDensity = total / (x[13] as number)
  ratios(out, 8, quicklime, quicklime, x[8] as number, total, perDensity)
  ratios(out, 11, quicklime, quicklime, x[9] as number, total, perDensity)
  ratios(out, 14, slaked, slaked, x[10] as number, total, perDensity)
  ratios(out, 17, putty, slaked, x[11] as number, total, perDensity)
}

/** For one state: filler to lime by mass and by volume, and lime % of the dry mass. */
function ratios(
  out: Float64Array,
  at: number,
  lime: number,
  dryLime: number,
  density: number,
  total: number,
  perDensity: number,
): void {
  out[at] = total / lime
  out[at + 1] = (perDensity * density) / lime
  out[at + 2] = (100 * dryLime) / (dryLime + total)
}
