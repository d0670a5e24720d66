import { BOILING_C, SOURCES, VAPORISATION_HEAT } from './constants.ts'
import { given, type Step, working } from './explain.ts'
import type { Range } from './range.ts'

/** What an energy balance found, as ranges. */
export interface HeatRanges {
  readonly heatKJ: Range
  readonly startC: Range
  readonly capacityKJK: Range
  readonly averageC: Range
  readonly boiledKg: Range
}

/** The working of an energy balance: heat, what it warms, and what is left to boil water. */
export function explainHeat({ heatKJ, startC, capacityKJK, averageC, boiledKg }: HeatRanges): Step[] {
  const [q, start, capacity] = [heatKJ.typical, startC.typical, capacityKJK.typical]
  const surplusKJ = Math.max(0, q - capacity * (BOILING_C - start))
  const dried =
    Math.abs(surplusKJ / VAPORISATION_HEAT - boiledKg.typical) > 1e-9 * Math.max(1, boiledKg.typical)
  return [
    { ...given('Q', 'slakingHeat', heatKJ, 'kJ'), source: SOURCES.thermodynamics },
    given('T_0', 'startTemperature', startC, 'C'),
    { ...given('C_heap', 'heatCapacity', capacityKJK, 'kJ/K'), source: SOURCES.thermodynamics },
    {
      ...given('T_avg', dried ? 'averageTemperatureDry' : 'averageTemperature', averageC, 'C'),
      formula: dried ? '' : 'min(100, T_0 + Q / C_heap)',
      numbers: dried ? '' : working`min(100, ${start} + ${q} / ${capacity})`,
    },
    {
      ...given('W_steam', dried ? 'boiledWaterAll' : 'boiledWater', boiledKg, 'L'),
      formula: dried ? '' : 'max(0, Q − C_heap · (100 − T_0)) / r',
      numbers: dried
        ? ''
        : working`max(0, ${q} − ${capacity} · (${BOILING_C} − ${start})) / ${VAPORISATION_HEAT}`,
      source: SOURCES.vaporisation,
    },
  ]
}
