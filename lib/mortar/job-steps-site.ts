import { SOURCES, WATER_PER_CAO } from './constants.ts'
import { given, type Step, working } from './explain.ts'
import { bulkPropertyOf, type PlannedIngredient } from './ingredient.ts'
import { propertyStep } from './ingredient-steps.ts'
import { ingredientOutputAt, type JobPlan } from './job-layout.ts'
import type { JobInput } from './job-types.ts'
import type { Range } from './range.ts'
import { ABSENT, type Variables } from './variables.ts'

const rangeAt = (vars: Variables, place: number): Range => vars.ranges[place] as Range

/** What the job takes of one ingredient, as it lies on site. `times` is how often the parts are taken. */
export function explainSite(
  input: JobInput,
  plan: JobPlan,
  vars: Variables,
  ingredient: PlannedIngredient,
  i: number,
  ranges: readonly Range[],
  times: number,
): Step[] {
  const k = ingredientOutputAt(i)
  const n = ingredient.index + 1
  const [recipe, dry, loose, siteL, siteKg] = ranges.slice(k, k + 5) as [Range, Range, Range, Range, Range]
  if (ingredient.role === 'water') return []
  if (ingredient.role === 'lime')
    return explainSiteLime(input, plan, vars, ingredient, i, { recipe, siteL, siteKg, times })
  const moisture = rangeAt(vars, plan.moisture)
  const lies = ingredient.role === 'aggregate' || ingredient.role === 'earth'
  const wet = lies && moisture.high > 0
  const grown = ingredient.role === 'aggregate' && siteL.typical !== loose.typical * times
  return [
    ...(loose.typical > 0
      ? [
          {
            symbol: `V_${n},site`,
            means: grown ? 'siteVolumeDamp' : 'siteVolume',
            formula: grown ? `V_${n} · f · (1 + b)` : `V_${n} · f`,
            numbers: grown
              ? working`${loose.typical} · ${times} · ${siteL.typical / (loose.typical * times)}`
              : working`${loose.typical} · ${times}`,
            result: siteL,
            unit: 'L',
          },
        ]
      : []),
    ...(dry.typical > 0
      ? [
          {
            symbol: `m_${n},site`,
            means: wet ? 'siteMassDamp' : 'siteMass',
            formula: wet ? `m_${n} · f · (1 + w)` : `m_${n} · f`,
            numbers: wet
              ? working`${dry.typical} · ${times} · (1 + ${moisture.typical})`
              : working`${dry.typical} · ${times}`,
            result: siteKg,
            unit: 'kg',
          },
        ]
      : []),
  ]
}

interface SiteLime {
  readonly recipe: Range
  readonly siteL: Range
  readonly siteKg: Range
  readonly times: number
}

function explainSiteLime(
  input: JobInput,
  plan: JobPlan,
  vars: Variables,
  ingredient: PlannedIngredient,
  i: number,
  { recipe, siteL, siteKg, times }: SiteLime,
): Step[] {
  const state = plan.siteStates[i]
  if (state === null || state === undefined) return []
  const n = ingredient.index + 1
  const c = rangeAt(vars, ingredient.property.freeCaO)
  const purity = plan.purity === ABSENT ? null : rangeAt(vars, plan.purity)
  const site = purity ?? c
  const slaked = state === 'dry-hydrate' || state === 'putty'
  const quicklimeKg = (recipe.typical * times * c.typical) / site.typical
  const hydrate = 1 + site.typical * WATER_PER_CAO
  const solids = state === 'putty' ? (quicklimeKg * hydrate) / siteKg.typical : 1
  const bulk = ingredient.property[bulkPropertyOf(state)]
  return [
    ...(purity === null ? [] : [given(`c_${n},site`, 'sitePurity', purity, '1')]),
    {
      symbol: `m_${n},site`,
      means: `siteLime.${state}`,
      formula: `q_${n} · f${purity === null ? '' : ` · c_${n} / c_${n},site`}${slaked ? ` · h_${n}` : ''}${state === 'putty' ? ` / x_${n}` : ''}`,
      numbers: `${working`${recipe.typical} · ${times}`}${purity === null ? '' : working` · ${c.typical} / ${purity.typical}`}${slaked ? working` · ${hydrate}` : ''}${state === 'putty' ? working` / ${solids}` : ''}`,
      result: siteKg,
      unit: 'kg',
      ...(slaked ? { source: SOURCES.atomicWeights } : {}),
    },
    ...propertyStep(ingredient.material, input.materials, bulkPropertyOf(state), n),
    ...(bulk === ABSENT
      ? []
      : [
          {
            symbol: `V_${n},site`,
            means: 'siteVolume',
            formula: `1000 · m_${n},site / ρ`,
            numbers: working`1000 · ${siteKg.typical} / ${rangeAt(vars, bulk).typical}`,
            result: siteL,
            unit: 'L',
          },
        ]),
  ]
}
