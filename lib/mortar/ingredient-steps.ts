import { ASSUMED } from './assumptions.ts'
import { SOURCES, WATER_PER_CAO } from './constants.ts'
import { digits, type Step, working } from './explain.ts'
import { bulkPropertyOf, type IngredientInput, type Materials, type PlannedIngredient } from './ingredient.ts'
import type { PropertyName } from './material.ts'
import { PROPERTY_UNITS } from './material.ts'
import type { MixPlan } from './mix.ts'
import type { Range } from './range.ts'
import type { Variables } from './variables.ts'

/** What a recipe's ingredient comes to: ranges from the same draws as the answer. */
export interface IngredientRanges {
  readonly quicklimeKg: Range
  readonly dryKg: Range
  readonly looseL: Range
}

interface Recipe {
  readonly ingredients: readonly IngredientInput[]
  readonly materials: Materials
}

/** Symbols of properties in formulas. */
const SYMBOLS: Partial<Record<PropertyName, string>> = {
  freeCaO: 'c',
  bulkDensityLump: 'ρ_l',
  bulkDensityGround: 'ρ_g',
  bulkDensityHydrate: 'ρ_h',
  puttyDensity: 'ρ_p',
  particleDensityHydrate: 'ρ_s',
  bulkDensity: 'ρ_b',
  bulkingPeak: 'b_max',
}

/** The symbol of a property in formulas, without the ingredient's number. */
export const symbolOf = (name: PropertyName): string => SYMBOLS[name] ?? name

/** A material's property as the first line of working that uses it. */
export function propertyStep(material: string, materials: Materials, name: PropertyName, n: number): Step[] {
  const property = materials[material]?.[name]
  if (property === undefined) return []
  return [
    {
      symbol: `${symbolOf(name)}_${n}`,
      means: `property.${name}`,
      formula: '',
      numbers: '',
      result: { low: property.low, typical: property.typical, high: property.high },
      unit: PROPERTY_UNITS[name],
      ...(property.source === undefined ? {} : { source: property.source }),
    },
  ]
}

/** How parts became kilograms and litres, ingredient by ingredient. Numbers follow the input's order. */
export function explainIngredients(
  plan: MixPlan,
  recipe: Recipe,
  vars: Variables,
  ranges: readonly IngredientRanges[],
): Step[] {
  return plan.ingredients.flatMap((ingredient, i) => {
    const found = ranges[i] as IngredientRanges
    const parts = partsStep(ingredient, recipe, vars)
    return ingredient.role === 'lime'
      ? [parts, ...explainLime(ingredient, recipe, vars, found)]
      : [parts, ...explainSolid(ingredient, recipe, vars, found)]
  })
}

const typicalOf = (vars: Variables, place: number): number => vars.ranges[place]?.typical ?? 0

function partsStep(ingredient: PlannedIngredient, { ingredients }: Recipe, vars: Variables): Step {
  const stated = ingredients[ingredient.index]?.parts
  const middle = stated != null && stated.typical === undefined && stated.low < stated.high
  return {
    symbol: `n_${ingredient.index + 1}`,
    means: middle ? 'partsMiddle' : 'parts',
    formula: middle ? '(n_low + n_high) / 2' : '',
    numbers: middle ? `(${digits(stated.low)} + ${digits(stated.high)}) / 2` : '',
    result: vars.ranges[ingredient.parts] as Range,
    unit: ingredient.by === 'volume' ? 'L' : 'kg',
  }
}

function explainLime(
  ingredient: PlannedIngredient,
  recipe: Recipe,
  vars: Variables,
  found: IngredientRanges,
) {
  const n = ingredient.index + 1
  const { material, property, limeStates: states, by } = ingredient
  const show = (name: PropertyName) => propertyStep(material, recipe.materials, name, n)
  const c = vars.ranges[property.freeCaO] as Range
  const hydrate = (share: number) => 1 + share * WATER_PER_CAO
  const steps: Step[] = [
    ...show('freeCaO'),
    {
      symbol: `h_${n}`,
      means: 'hydratePerQuicklime',
      formula: `1 + c_${n} · M(H2O) / M(CaO)`,
      numbers: working`1 + ${c.typical} · ${WATER_PER_CAO}`,
      result: { low: hydrate(c.low), typical: hydrate(c.typical), high: hydrate(c.high) },
      unit: 'kg/kg',
      source: SOURCES.atomicWeights,
    },
  ]
  const [state] = states
  if (states.length > 1 || state === undefined)
    return [
      ...steps,
      ...(by === 'volume' ? states.flatMap((open) => show(bulkPropertyOf(open))) : []),
      quicklimeStep(n, 'quicklimeOfOpenState', '', '', found.quicklimeKg),
    ]
  if (by === 'volume' || state === 'putty') steps.push(...show(bulkPropertyOf(state)))
  const parts = typicalOf(vars, ingredient.parts)
  const bulk = typicalOf(vars, property[bulkPropertyOf(state)])
  const perVolume = by === 'volume' ? ` · ${SYMBOLS[bulkPropertyOf(state)]}_${n} / 1000` : ''
  const volumeNumbers = by === 'volume' ? working` · ${bulk} / 1000` : ''
  const slaked = state === 'dry-hydrate' || state === 'putty'
  const solids = state === 'putty' ? ` · (1 − 1000/ρ_p_${n}) / (1 − 1000/ρ_s_${n})` : ''
  const solid = property.particleDensityHydrate >= 0 ? typicalOf(vars, property.particleDensityHydrate) : 2200
  const solidNumbers = state === 'putty' ? working` · (1 − 1000/${bulk}) / (1 − 1000/${solid})` : ''
  if (state === 'putty') steps.push(...show('particleDensityHydrate'))
  return [
    ...steps,
    quicklimeStep(
      n,
      'quicklime',
      `n_${n}${perVolume}${solids}${slaked ? ` / h_${n}` : ''}`,
      `${digits(parts)}${volumeNumbers}${solidNumbers}${slaked ? working` / ${hydrate(c.typical)}` : ''}`,
      found.quicklimeKg,
    ),
  ]
}

const quicklimeStep = (n: number, means: string, formula: string, numbers: string, result: Range): Step => ({
  symbol: `q_${n}`,
  means,
  formula,
  numbers,
  result,
  unit: 'kg',
})

function explainSolid(
  ingredient: PlannedIngredient,
  recipe: Recipe,
  vars: Variables,
  found: IngredientRanges,
) {
  const n = ingredient.index + 1
  if (ingredient.role === 'water' || ingredient.property.bulkDensity < 0) return []
  const parts = typicalOf(vars, ingredient.parts)
  const bulk = typicalOf(vars, ingredient.property.bulkDensity)
  const damp =
    ingredient.state === 'damp' || (ingredient.state === 'not-stated' && ingredient.role === 'aggregate')
  const w = ingredient.state === 'damp' ? 'w_r' : 'w_o'
  const steps = propertyStep(ingredient.material, recipe.materials, 'bulkDensity', n)
  if (damp)
    steps.push({
      symbol: w,
      means: ingredient.state === 'damp' ? 'dampMoisture' : 'openMoisture',
      formula: '',
      numbers: '',
      result: ASSUMED.dampMoisture,
      unit: 'kg/kg',
    })
  const byVolume = ingredient.by === 'volume'
  steps.push({
    symbol: `V_${n}`,
    means: 'looseVolume',
    formula: byVolume ? (damp ? `n_${n} / (1 + b(${w}))` : `n_${n}`) : `m_${n} · 1000 / ρ_b_${n}`,
    numbers: byVolume
      ? damp
        ? working`${parts} / ${parts / found.looseL.typical}`
        : digits(parts)
      : working`${found.dryKg.typical} · 1000 / ${bulk}`,
    result: found.looseL,
    unit: 'L',
  })
  steps.push({
    symbol: `m_${n}`,
    means: 'dryMass',
    formula: byVolume ? `V_${n} · ρ_b_${n} / 1000` : damp ? `n_${n} / (1 + ${w})` : `n_${n}`,
    numbers: byVolume
      ? working`${found.looseL.typical} · ${bulk} / 1000`
      : damp
        ? working`${parts} / ${parts / found.dryKg.typical}`
        : digits(parts),
    result: found.dryKg,
    unit: 'kg',
  })
  return steps
}
