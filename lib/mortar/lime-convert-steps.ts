import { toRange } from './amount.ts'
import { SOURCES, WATER_PER_CAO, WATER_PER_MGO } from './constants.ts'
import { given, type Step, working } from './explain.ts'
import { bulkPropertyOf } from './ingredient.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { LimeAmount, LimeConversionInput } from './lime-convert.ts'
import { exactly, type Range } from './range.ts'

/** The working of a conversion: the quicklime behind the amount, its hydrate, and each volume. */
export function explainConversion(
  { properties, hydratedMgOShare, amount, unit }: LimeConversionInput,
  quicklimeKg: Range,
  hydrateKg: Range,
  states: Readonly<Record<LimeState, LimeAmount | null>>,
): Step[] {
  const c = properties.freeCaO ?? exactly(0)
  const magnesia = (properties.freeMgO?.typical ?? 0) * toRange(hydratedMgOShare ?? 0).typical
  return [
    given('n', 'limeAmount', toRange(amount), unit),
    {
      ...given('c', 'property.freeCaO', { low: c.low, typical: c.typical, high: c.high }, '1'),
      ...(properties.freeCaO?.source === undefined ? {} : { source: properties.freeCaO.source }),
    },
    given('q', 'quicklime', quicklimeKg, 'kg'),
    {
      ...given('m_h', 'hydrateMass', hydrateKg, 'kg'),
      formula: 'q · (1 + c · M(H2O) / M(CaO) + m · M(H2O) / M(MgO))',
      numbers: working`${quicklimeKg.typical} · (1 + ${c.typical} · ${WATER_PER_CAO} + ${magnesia} · ${WATER_PER_MGO})`,
      source: SOURCES.atomicWeights,
    },
    ...LIME_STATES.flatMap((state) => {
      const found = states[state]
      const bulk = properties[bulkPropertyOf(state)]
      if (found === null || found.volumeL === null || bulk === undefined) return []
      return [
        {
          ...given('V', `limeVolume.${state}`, found.volumeL, 'L'),
          formula: '1000 · m / ρ',
          numbers: working`1000 · ${found.massKg.typical} / ${bulk.typical}`,
        },
      ]
    }),
  ]
}
