import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { hydratePerQuicklime, LIME_STATES, type LimeState, puttySolids } from './lime.ts'
import type { Properties } from './material.ts'
import { need } from './need.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

export interface SoilLimeInput {
  /** Soil to be limed, dry and loose, L. */
  readonly soilL: Range
  readonly soilDensityKgM3: Range
  /** Lime as a share of the soil, %, by mass or by loose volume, in the state it was measured in. */
  readonly percent: Range
  readonly by: 'mass' | 'volume'
  readonly state: LimeState
  readonly lime: Properties
  /** Fibre, kg in a m³ of the loose soil, and its loose density where its volume is wanted. */
  readonly fibreKgM3?: Range
  readonly fibreDensityKgM3?: Range
}

export interface SoilLimeState {
  readonly state: LimeState
  readonly massKg: Range
  readonly volumeL: Range
  /** Of the dry soil, %. */
  readonly percentByMass: Range
  readonly percentByVolume: Range
  /** Loose soil to one of lime, by volume. */
  readonly soilPerLime: Range
}

export interface SoilLime {
  readonly soilKg: Range
  readonly states: readonly SoilLimeState[]
  readonly fibreKg: Range | null
  readonly fibreL: Range | null
  readonly steps: readonly Step[]
}

type Figure = 'mass' | 'volume' | 'byMass' | 'byVolume' | 'parts'

/**
 * Lime on soil in each of the four states, by mass and volume, from a dose stated in any of them; fibre too.
 *
 * @returns faults: no soil, a dose of nothing, a property missing
 */
export function limeOnSoil(input: SoilLimeInput): Outcome<SoilLime> {
  return attempt(() => {
    const check = inspect()
    check.range('soilL', input.soilL, { above: 0, unit: 'L' })
    check.range('soilDensityKgM3', input.soilDensityKgM3, { above: 0, max: 5000, unit: 'kg/m3' })
    check.range('percent', input.percent, { above: 0, max: 1000, unit: '%' })
    if (!LIME_STATES.includes(input.state))
      check.refuse({ field: 'state', code: 'unknown', value: input.state })
    const fibre = input.fibreKgM3 ?? { low: 0, typical: 0, high: 0 }
    check.range('fibreKgM3', fibre, { min: 0, max: 200, unit: 'kg/m3' })
    const fibreDensity = input.fibreDensityKgM3 ?? { low: 1, typical: 1, high: 1 }
    check.range('fibreDensityKgM3', fibreDensity, { above: 0, max: 2000, unit: 'kg/m3' })
    const lime = (name: Parameters<typeof need>[3]) => need(check, 'lime', input.lime, name)
    const ranges = {
      soilL: input.soilL,
      soilDensity: input.soilDensityKgM3,
      percent: input.percent,
      fibre,
      fibreDensity,
      freeCaO: lime('freeCaO'),
      lump: lime('bulkDensityLump'),
      ground: lime('bulkDensityGround'),
      hydrate: lime('bulkDensityHydrate'),
      putty: lime('puttyDensity'),
      solid: lime('particleDensityHydrate'),
    }
    check.finish()
    const found = spread(ranges, (x) => sum(x, input))
    return {
      soilKg: found.soilKg,
      states: LIME_STATES.map((state) => ({
        state,
        massKg: found[`mass.${state}`],
        volumeL: found[`volume.${state}`],
        percentByMass: found[`byMass.${state}`],
        percentByVolume: found[`byVolume.${state}`],
        soilPerLime: found[`parts.${state}`],
      })),
      fibreKg: input.fibreKgM3 === undefined ? null : found.fibreKg,
      fibreL: input.fibreKgM3 === undefined || input.fibreDensityKgM3 === undefined ? null : found.fibreL,
      steps: explain(input, found),
    }
  })
}

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
type Found<T> = Record<`${Figure}.${LimeState}` | 'soilKg' | 'fibreKg' | 'fibreL', T>

function sum(x: Numbers, input: SoilLimeInput): Found<number> {
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
  const statedKg = input.by === 'mass' ? dose * soilKg : (dose * x.soilL * density[input.state]) / 1000
  const quicklimeKg = statedKg / perQuicklime[input.state]
  const fibreKg = (x.fibre * x.soilL) / 1000
  const out = { soilKg, fibreKg, fibreL: (1000 * fibreKg) / x.fibreDensity } as Found<number>
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

function explain(input: SoilLimeInput, found: Found<Range>): Step[] {
  const stated = found[`mass.${input.state}`]
  return [
    {
      symbol: 'm_soil',
      means: 'soil-mass',
      formula: 'V · ρ / 1000',
      numbers: working`${input.soilL.typical} · ${input.soilDensityKgM3.typical} / 1000`,
      result: found.soilKg,
      unit: 'kg',
    },
    {
      symbol: 'm_lime',
      means: 'soil-lime-stated',
      formula: input.by === 'mass' ? 'p / 100 · m_soil' : 'p / 100 · V · ρ_lime / 1000',
      numbers: working`${input.percent.typical} / 100 → ${stated.typical}`,
      result: stated,
      unit: 'kg',
    },
    ...LIME_STATES.map((state) => ({
      symbol: `V_${state}`,
      means: `soil-lime-${state}`,
      formula: 'm / ρ · 1000',
      numbers: working`${found[`mass.${state}`].typical} kg`,
      result: found[`volume.${state}`],
      unit: 'L',
    })),
  ]
}
