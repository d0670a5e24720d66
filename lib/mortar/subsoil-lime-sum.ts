import { hydratePerQuicklime, LIME_STATES, type LimeState, puttySolids } from './lime.ts'
import type { Range } from './range.ts'
import { spreadVector } from './spread.ts'

/** Inputs in the order that the sum reads them: litres, kg/m³, %, kg/m³, kg/m³, share, then densities. */
const NAMES = [
  'soilL',
  'soilDensity',
  'percent',
  'fibre',
  'fibreDensity',
  'freeCaO',
  'lump',
  'ground',
  'hydrate',
  'putty',
  'solid',
] as const
export type SoilLimeRanges = Readonly<Record<(typeof NAMES)[number], Range>>

const FIGURES = ['mass', 'volume', 'byMass', 'byVolume', 'parts'] as const
const OUTPUTS = [
  'soilKg',
  'fibreKg',
  'fibreL',
  ...LIME_STATES.flatMap((state) => FIGURES.map((figure) => `${figure}.${state}` as const)),
] as const
export type SoilLimeFound = Readonly<Record<(typeof OUTPUTS)[number], Range>>

/** Lime on soil with its ranges: a dose in one state becomes all four, by mass and volume. */
export function spreadSoilLime(
  ranges: SoilLimeRanges,
  by: 'mass' | 'volume',
  stated: LimeState,
): SoilLimeFound {
  const perQuicklime = new Float64Array(LIME_STATES.length)
  const density = new Float64Array(LIME_STATES.length)
  const place = LIME_STATES.indexOf(stated)
  const found = spreadVector(
    NAMES,
    NAMES.map((name) => ranges[name]),
    OUTPUTS,
    (x, out) => {
      const soilL = x[0] as number
      const soilKg = (soilL * (x[1] as number)) / 1000
      const fibreKg = ((x[3] as number) * soilL) / 1000
      const hydrate = hydratePerQuicklime(x[5] as number)
      perQuicklime[0] = 1
      perQuicklime[1] = 1
      perQuicklime[2] = hydrate
      perQuicklime[3] = hydrate / puttySolids(x[9] as number, x[10] as number)
      for (let k = 0; k < LIME_STATES.length; k++) density[k] = x[6 + k] as number
      const dose = (x[2] as number) / 100
      const statedKg = by === 'mass' ? dose * soilKg : (dose * soilL * (density[place] as number)) / 1000
      const quicklimeKg = statedKg / (perQuicklime[place] as number)
      out[0] = soilKg
      out[1] = fibreKg
      out[2] = (1000 * fibreKg) / (x[4] as number)
      for (let k = 0; k < LIME_STATES.length; k++) {
        const massKg = quicklimeKg * (perQuicklime[k] as number)
        const volumeL = (1000 * massKg) / (density[k] as number)
        const from = 3 + k * FIGURES.length
        out[from] = massKg
        out[from + 1] = volumeL
        out[from + 2] = (100 * massKg) / soilKg
        out[from + 3] = (100 * volumeL) / soilL
        out[from + 4] = soilL / volumeL
      }
    },
  )
  return Object.fromEntries(OUTPUTS.map((name, k) => [name, found[k]])) as SoilLimeFound
}
