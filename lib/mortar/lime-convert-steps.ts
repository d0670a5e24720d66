import { toRange } from './amount.ts'
import { SOURCES, WATER_PER_CAO, WATER_PER_MGO } from './constants.ts'
import { given, type Step, working } from './explain.ts'
import { bulkPropertyOf } from './ingredient.ts'
import {
  HYDRATE_SOLID_DENSITY,
  hydratePerQuicklime,
  LIME_STATES,
  type LimeState,
  puttySolids,
} from './lime.ts'
import type { LimeAmount, LimeConversionInput } from './lime-convert.ts'
import { exactly, type Range } from './range.ts'

/** The working of a conversion: the quicklime behind the amount, its hydrate, and each volume. */
export function explainConversion(
  { properties, hydratedMgOShare, amount, unit, state: measured }: LimeConversionInput,
  quicklimeKg: Range,
  hydrateKg: Range,
  states: Readonly<Record<LimeState, LimeAmount | null>>,
): Step[] {
  const c = properties.freeCaO ?? exactly(0)
  const magnesia = (properties.freeMgO?.typical ?? 0) * toRange(hydratedMgOShare ?? 0).typical
  const hydrate = hydratePerQuicklime(c.typical, magnesia)
  return [
    given('n', 'limeAmount', toRange(amount), unit),
    {
      ...given('c', 'property.freeCaO', { low: c.low, typical: c.typical, high: c.high }, '1'),
      ...(properties.freeCaO?.source === undefined ? {} : { source: properties.freeCaO.source }),
    },
    ...explainQuicklime({ properties, amount, unit, state: measured }, quicklimeKg, hydrate),
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

/** From the amount as it was measured back to its quicklime. */
function explainQuicklime(
  { properties, amount, unit, state }: LimeConversionInput,
  quicklimeKg: Range,
  hydrate: number,
): Step[] {
  const bulk = properties[bulkPropertyOf(state)]
  const litres = unit === 'L' && bulk !== undefined
  const slaked = state === 'dry-hydrate' || state === 'putty'
  const solids =
    state === 'putty' && bulk !== undefined
      ? puttySolids(bulk.typical, properties.particleDensityHydrate?.typical ?? HYDRATE_SOLID_DENSITY)
      : 1
  return [
    ...(slaked ? [given('h', 'hydratePerQuicklime', exactly(hydrate), 'kg/kg')] : []),
    ...(state === 'putty' ? [given('x', 'puttySolids', exactly(solids), '1')] : []),
    {
      ...given('q', 'quicklime', quicklimeKg, 'kg'),
      formula: `n${litres ? ' · ρ / 1000' : ''}${state === 'putty' ? ' · x' : ''}${slaked ? ' / h' : ''}`,
      numbers: `${working`${toRange(amount).typical}`}${litres ? working` · ${bulk.typical} / 1000` : ''}${state === 'putty' ? working` · ${solids}` : ''}${slaked ? working` / ${hydrate}` : ''}`,
    },
  ]
}
