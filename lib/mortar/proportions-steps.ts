import { digits, type Step } from './explain.ts'
import { bulkPropertyOf } from './ingredient.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { MixPlan } from './mix.ts'
import type { StateProportions } from './proportions.ts'
import type { Variables } from './variables.ts'

const typicalOf = (vars: Variables, place: number): number => vars.ranges[place]?.typical ?? 0

/** The last line for each state: all filler over all lime. */
export function explainStates(
  plan: MixPlan,
  vars: Variables,
  states: Readonly<Record<LimeState, StateProportions | null>>,
): Step[] {
  const limes = plan.ingredients.filter(({ role }) => role === 'lime')
  return LIME_STATES.flatMap((state) => {
    const found = states[state]
    if (found === null || found.aggregateDry === null) return []
    const volume = limes.map(({ index }) => VOLUME_FORMULA[state].replaceAll('#', String(index + 1)))
    const bulk = limes.map(({ property }) => typicalOf(vars, property[bulkPropertyOf(state)]))
    return [
      {
        symbol: `1 : r`,
        means: `ratio.${state}`,
        formula: `Σ V / (${volume.join(' + ')})`,
        numbers: `ρ = ${bulk.map(digits).join(', ')} kg/m3`,
        result: found.aggregateDry,
        unit: '1',
      },
    ]
  })
}

const VOLUME_FORMULA: Record<LimeState, string> = {
  'lump-quicklime': '1000 · q_# / ρ_l_#',
  'ground-quicklime': '1000 · q_# / ρ_g_#',
  'dry-hydrate': '1000 · q_# · h_# / ρ_h_#',
  putty: '1000 · q_# · h_# / (x_# · ρ_p_#)',
}
