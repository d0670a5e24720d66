import { hydratePerQuicklime, LIME_STATES, type LimeState, puttySolids } from './lime.ts'

type Figure = 'mass' | 'volume' | 'byMass' | 'byVolume' | 'parts'

type Numbers = Readonly<
  Record<
    | 'soilL'
    | 'soilDensity'
    | 'percent'
    | 'fibre'
    | 'fibreDensity'
    | 'freeCaO'
    | 'lump'
    | 'ground'
    | 'hydrate'
    | 'putty'
    | 'solid',
    number
  >
>
export type SoilLimeFound<T> = Record<`${Figure}.${LimeState}` | 'soilKg' | 'fibreKg' | 'fibreL', T>

/** The sum behind lime on soil: a dose in one state becomes all four, by mass and volume. */
export function soilLimeSum(x: Numbers, by: 'mass' | 'volume', stated: LimeState): SoilLimeFound<number> {
  const soilKg = (x.soilL * x.soilDensity) / 1000
  const hydrate = hydratePerQuicklime(x.freeCaO)
  const perQuicklime: Record<LimeState, number> = {
    'lump-quicklime': 1,
    'ground-quicklime': 1,
    'dry-hydrate': hydrate,
    putty: hydrate / puttySolids(x.putty, x.solid),
  }
  const density: Record<LimeState, number> = {
    'lump-quicklime': x.lump,
    'ground-quicklime': x.ground,
    'dry-hydrate': x.hydrate,
    putty: x.putty,
  }
  const dose = x.percent / 100
  const statedKg = by === 'mass' ? dose * soilKg : (dose * x.soilL * density[stated]) / 1000
  const quicklimeKg = statedKg / perQuicklime[stated]
  const fibreKg = (x.fibre * x.soilL) / 1000
  const out = { soilKg, fibreKg, fibreL: (1000 * fibreKg) / x.fibreDensity } as SoilLimeFound<number>
  for (const state of LIME_STATES) {
    const massKg = quicklimeKg * perQuicklime[state]
    const volumeL = (1000 * massKg) / density[state]
    out[`mass.${state}`] = massKg
    out[`volume.${state}`] = volumeL
    out[`byMass.${state}`] = (100 * massKg) / soilKg
    out[`byVolume.${state}`] = (100 * volumeL) / x.soilL
    out[`parts.${state}`] = x.soilL / volumeL
  }
  return out
}
