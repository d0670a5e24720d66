import { type Step, working } from './explain.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { SampleInput } from './sample.ts'
import {
  CAO_PER_HYDRATE,
  CO2_PER_CACO3,
  CO2_PER_HYDRATE,
  GAIN_PER_HYDRATE,
  type SampleFound,
  type SampleRanges,
} from './sample-sum.ts'

const METHOD = 'middendorf-2005'

/** The bulk density that measures each state, among the numbers of a sample. */
const DENSITY_OF = {
  'lump-quicklime': 'lump',
  'ground-quicklime': 'ground',
  'dry-hydrate': 'hydrateDensity',
  putty: 'puttyDensity',
} as const satisfies Record<LimeState, keyof SampleRanges>

/** The working of a sample analysis, line by line, with its typical numbers. */
export function explainSample(input: SampleInput, found: SampleFound, x: SampleRanges): Step[] {
  const filler = input.fines === 'binder' ? input.aggregateG : input.aggregateG + input.finesG
  const share = x.calcareous.typical
  const co2 = input.co2G
  const steps: Step[] = [
    {
      symbol: 'm_s',
      means: 'analysis.sampleSoluble',
      formula: 'm_0 − m_a − m_f',
      numbers: working`${input.sampleG} − ${input.aggregateG} − ${input.finesG}`,
      result: found.soluble,
      unit: 'g',
      source: METHOD,
    },
    {
      symbol: 'm_r',
      means: 'analysis.sampleRock',
      formula: 'm_i · c / (1 − c)',
      numbers: working`${filler} · ${share} / (1 − ${share})`,
      result: found.rock,
      unit: 'g',
    },
    {
      symbol: 'm_c',
      means: 'analysis.sampleFromLime',
      formula: 'm_s − m_r − o · m_0',
      numbers: working`${found.soluble.typical} − ${found.rock.typical} − ${x.other.typical} · ${input.sampleG}`,
      result: found.fromLime,
      unit: 'g',
    },
    co2 === undefined
      ? {
          symbol: 'm_h',
          means: 'analysis.sampleHydrate',
          formula: 'm_c / (1 + g · f)',
          numbers: working`${found.fromLime.typical} / (1 + ${GAIN_PER_HYDRATE} · ${x.carbonated.typical})`,
          result: found.hydrate,
          unit: 'g',
        }
      : {
          symbol: 'm_h',
          means: 'analysis.sampleHydrate',
          formula: 'm_c − min(k · m_c, max(0, m_CO2 − k · m_r)) · g / u',
          numbers: working`${found.fromLime.typical} − min(${CO2_PER_CACO3} · ${found.fromLime.typical}, max(0, ${co2.typical} − ${CO2_PER_CACO3} · ${found.rock.typical})) · ${GAIN_PER_HYDRATE} / ${CO2_PER_HYDRATE}`,
          result: found.hydrate,
          unit: 'g',
        },
    {
      symbol: 'm_CaO',
      means: 'analysis.sampleCao',
      formula: 'm_h · M_CaO / M_Ca(OH)2',
      numbers: working`${found.hydrate.typical} · ${CAO_PER_HYDRATE}`,
      result: found.cao,
      unit: 'g',
    },
  ]
  for (const state of LIME_STATES)
    steps.push({
      symbol: `1 : n_${state}`,
      means: `analysis.sampleVolume.${state}`,
      formula: '(m_agg / m_lime) · ρ_lime / ρ_agg',
      numbers: working`${found[`mass.${state}`].typical} · ${x[DENSITY_OF[state]].typical} / ${x.aggregateDensity.typical}`,
      result: found[`volume.${state}`],
      unit: '1',
    })
  return steps
}
