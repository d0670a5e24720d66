import { SOURCES, WATER_PER_CAO } from './constants.ts'
import { given, type Step, working } from './explain.ts'
import { bulkPropertyOf, type PlannedIngredient } from './ingredient.ts'
import { propertyStep, symbolOf } from './ingredient-steps.ts'
import { ingredientOutputAt, type JobPlan } from './job-layout.ts'
import type { JobInput } from './job-types.ts'
import { HYDRATE_SOLID_DENSITY, puttySolids } from './lime.ts'
import { exactly, type Range } from './range.ts'
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
  const [recipe, dry, loose, siteL, siteKg, bulking] = ranges.slice(k, k + 6) as [
    Range,
    Range,
    Range,
    Range,
    Range,
    Range,
  ]
  if (ingredient.role === 'water') return []
  if (ingredient.role === 'lime')
    return explainSiteLime(input, plan, vars, ingredient, i, { recipe, siteL, siteKg, times })
  const moisture = rangeAt(vars, plan.moisture)
  const lies = ingredient.role === 'aggregate' || ingredient.role === 'earth'
  const wet = lies && moisture.high > 0
  const grown = bulking.high > 0
  const volume = {
    ...given(`V_${n},site`, grown ? 'siteVolumeDamp' : 'siteVolume', siteL, 'L'),
    formula: `V_${n} · N${grown ? ` · (1 + b_${n})` : ''}`,
    numbers: `${working`${loose.typical} · ${times}`}${grown ? working` · (1 + ${bulking.typical})` : ''}`,
  }
  const mass = {
    ...given(`m_${n},site`, wet ? 'siteMassDamp' : 'siteMass', siteKg, 'kg'),
    formula: `m_${n} · N${wet ? ` · (1 + w_${n})` : ''}`,
    numbers: `${working`${dry.typical} · ${times}`}${wet ? working` · (1 + ${moisture.typical})` : ''}`,
  }
  return [
    ...(wet ? [given(`w_${n}`, 'siteMoisture', moisture, 'kg/kg')] : []),
    ...(grown ? [given(`b_${n}`, plan.bulking === ABSENT ? 'siteBulking' : 'jarBulking', bulking, '1')] : []),
    ...(loose.typical > 0 ? [volume] : []),
    ...(dry.typical > 0 ? [mass] : []),
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
  const hydrate = 1 + (purity ?? c).typical * WATER_PER_CAO
  const slaked = state === 'dry-hydrate' || state === 'putty'
  const solids = state === 'putty' ? explainPutty(input, vars, ingredient) : []
  const x = solids.at(-1)?.result.typical ?? 1
  const h = purity === null ? `h_${n}` : `(1 + c_${n},site · M(H2O) / M(CaO))`
  const bulk = plan.siteBulks[i] ?? ABSENT
  return [
    ...(purity === null ? [] : [given(`c_${n},site`, 'sitePurity', purity, '1')]),
    ...propertyStep(ingredient.material, input.materials, bulkPropertyOf(state), n),
    ...solids,
    {
      ...given(`m_${n},site`, `siteLime.${state}`, siteKg, 'kg'),
      formula: `q_${n} · N${purity === null ? '' : ` · c_${n} / c_${n},site`}${slaked ? ` · ${h}` : ''}${state === 'putty' ? ` / x_${n}` : ''}`,
      numbers: `${working`${recipe.typical} · ${times}`}${purity === null ? '' : working` · ${c.typical} / ${purity.typical}`}${slaked ? working` · ${hydrate}` : ''}${state === 'putty' ? working` / ${x}` : ''}`,
      ...(slaked ? { source: SOURCES.atomicWeights } : {}),
    },
    ...(bulk === ABSENT
      ? []
      : [
          {
            ...given(`V_${n},site`, 'siteVolume', siteL, 'L'),
            formula: `1000 · m_${n},site / ${symbolOf(bulkPropertyOf(state))}_${n}`,
            numbers: working`1000 · ${siteKg.typical} / ${rangeAt(vars, bulk).typical}`,
          },
        ]),
  ]
}

/** The share of a putty that is solids, from its density and that of its particles. */
function explainPutty(
  input: JobInput,
  vars: Variables,
  { index, material, property }: PlannedIngredient,
): Step[] {
  const n = index + 1
  const putty = rangeAt(vars, property.puttyDensity)
  const particles =
    property.particleDensityHydrate === ABSENT
      ? exactly(HYDRATE_SOLID_DENSITY)
      : rangeAt(vars, property.particleDensityHydrate)
  return [
    ...(property.particleDensityHydrate === ABSENT
      ? [given(`ρ_s_${n}`, 'property.particleDensityHydrate', particles, 'kg/m3')]
      : propertyStep(material, input.materials, 'particleDensityHydrate', n)),
    {
      ...given(
        `x_${n}`,
        'puttySolids',
        {
          low: puttySolids(putty.low, particles.high),
          typical: puttySolids(putty.typical, particles.typical),
          high: puttySolids(putty.high, particles.low),
        },
        '1',
      ),
      formula: `(1 − 1000 / ρ_p_${n}) / (1 − 1000 / ρ_s_${n})`,
      numbers: working`(1 − 1000 / ${putty.typical}) / (1 − 1000 / ${particles.typical})`,
    },
  ]
}
