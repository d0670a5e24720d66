import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { bulkPropertyOf } from './ingredient.ts'
import { inspect } from './inspect.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { Properties } from './material.ts'
import { need } from './need.ts'
import type { Range } from './range.ts'
import { type SoilLimeFound, spreadSoilLime } from './subsoil-lime-sum.ts'

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
  readonly fibreKgM3?: Range | undefined
  readonly fibreDensityKgM3?: Range | undefined
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
    const found = spreadSoilLime(ranges, input.by, input.state)
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

function explain(input: SoilLimeInput, found: SoilLimeFound): Step[] {
  const stated = found[`mass.${input.state}`]
  const bulk = (state: LimeState) => input.lime[bulkPropertyOf(state)]?.typical ?? Number.NaN
  return [
    {
      symbol: 'm_soil',
      means: 'analysis.soilMass',
      formula: 'V · ρ / 1000',
      numbers: working`${input.soilL.typical} · ${input.soilDensityKgM3.typical} / 1000`,
      result: found.soilKg,
      unit: 'kg',
    },
    {
      symbol: 'm_lime',
      means: 'analysis.soilLimeStated',
      formula: input.by === 'mass' ? 'p / 100 · m_soil' : 'p / 100 · V · ρ_lime / 1000',
      numbers:
        input.by === 'mass'
          ? working`${input.percent.typical} / 100 · ${found.soilKg.typical}`
          : working`${input.percent.typical} / 100 · ${input.soilL.typical} · ${bulk(input.state)} / 1000`,
      result: stated,
      unit: 'kg',
    },
    ...LIME_STATES.map((state) => ({
      symbol: `V_${state}`,
      means: `analysis.soilLime.${state}`,
      formula: '1000 · m / ρ',
      numbers: working`1000 · ${found[`mass.${state}`].typical} / ${bulk(state)}`,
      result: found[`volume.${state}`],
      unit: 'L',
    })),
  ]
}
