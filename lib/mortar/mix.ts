import { ASSUMED } from './assumptions.ts'
import { bulkingAt } from './bulking.ts'
import { bulkPropertyOf, type PlannedIngredient } from './ingredient.ts'
import { HYDRATE_SOLID_DENSITY, hydratePerQuicklime, type LimeState, puttySolids } from './lime.ts'
import { ABSENT, at, type Variables } from './variables.ts'

/** A planned recipe: its ingredients and the places of what is assumed about it. */
export interface MixPlan {
  readonly ingredients: readonly PlannedIngredient[]
  /** Moisture of sand that the recipe calls damp. */
  readonly dampMoisture: number
  /** How damp an aggregate of no stated state was: 0 dry, 1 damp. */
  readonly dampness: number
}

/** Gives a recipe's assumptions their places; what it does not turn on has none. */
export function planMix(ingredients: readonly PlannedIngredient[], vars: Variables): MixPlan {
  const lying = ingredients.filter(({ role }) => role === 'aggregate' || role === 'earth')
  const open = lying.some(({ state }) => state === 'not-stated')
  const damp = lying.some(({ state }) => state === 'damp')
  return {
    ingredients,
    dampMoisture: open || damp ? vars.add('assumed.dampMoisture', ASSUMED.dampMoisture) : ABSENT,
    dampness: open ? vars.add('assumed.dampness', { low: 0, typical: 0.5, high: 1 }) : ABSENT,
  }
}

/** One recipe in kilograms and litres, as the parts give it; written anew for each draw. */
export interface MixSums {
  /** Per ingredient: kg of the quicklime that a lime is or was made from; 0 for all else. */
  readonly quicklimeKg: Float64Array
  /** Per ingredient: kg dry; a lime as dry hydrate. */
  readonly dryKg: Float64Array
  /** Per ingredient that is no lime: litres dry and loose; 0 where its density is unknown. */
  readonly looseL: Float64Array
  /** All of it dry, kg. */
  totalKg: number
}

/** Room for the sums of a recipe of `count` ingredients. */
export const mixSums = (count: number): MixSums => ({
  quicklimeKg: new Float64Array(count),
  dryKg: new Float64Array(count),
  looseL: new Float64Array(count),
  totalKg: 0,
})

/** Which of the states that a lime may have been measured in is taken: its place in the list, or the mean. */
export type StateChoice = number
export const MEAN_OF_STATES: StateChoice = -1

/** How many choices of state a recipe leaves open: 1 where every lime's state is stated. */
export const openStates = (ingredients: readonly PlannedIngredient[]): number =>
  Math.max(1, ...ingredients.map((ingredient) => ingredient.limeStates.length))

/** Turns parts into kilograms and litres. */
export function sumMix(x: Float64Array, plan: MixPlan, choice: StateChoice, sums: MixSums): void {
  sums.totalKg = 0
  for (let i = 0; i < plan.ingredients.length; i++) {
    const ingredient = plan.ingredients[i] as PlannedIngredient
    if (ingredient.role === 'lime') {
      const quicklimeKg = quicklimeOf(x, ingredient, choice)
      sums.quicklimeKg[i] = quicklimeKg
      sums.dryKg[i] = quicklimeKg * hydratePerQuicklime(at(x, ingredient.property.freeCaO))
    } else sumSolid(x, plan, ingredient, i, sums)
    sums.totalKg += sums.dryKg[i] as number
  }
}

function sumSolid(x: Float64Array, plan: MixPlan, ingredient: PlannedIngredient, i: number, sums: MixSums) {
  const parts = at(x, ingredient.parts)
  if (ingredient.role === 'water') {
    sums.looseL[i] = parts
    sums.dryKg[i] = 0
    return
  }
  const lies = ingredient.role === 'aggregate' || ingredient.role === 'earth'
  const damp = !lies
    ? 0
    : ingredient.state === 'damp'
      ? 1
      : ingredient.state === 'not-stated'
        ? at(x, plan.dampness)
        : 0
  const moisture = at(x, plan.dampMoisture)
  const bulk = at(x, ingredient.property.bulkDensity) / 1000
  if (ingredient.by === 'volume') {
    const looseL = parts / (1 + damp * bulkingOf(x, ingredient, moisture))
    sums.looseL[i] = looseL
    sums.dryKg[i] = looseL * bulk
    return
  }
  sums.dryKg[i] = parts / (1 + damp * moisture)
  sums.looseL[i] = bulk > 0 ? (sums.dryKg[i] as number) / bulk : 0
}

/** Growth of a damp ingredient as a share of its dry loose volume; 0 where its bulking is not known. */
export function bulkingOf(x: Float64Array, ingredient: PlannedIngredient, moisture: number): number {
  const { bulkingPeak, bulkingPeakMoisture, saturationMoisture } = ingredient.property
  if (bulkingPeak === ABSENT || bulkingPeakMoisture === ABSENT || saturationMoisture === ABSENT) return 0
  return bulkingAt(moisture, at(x, bulkingPeak), at(x, bulkingPeakMoisture), at(x, saturationMoisture))
}

/** Particle density of a lime's dry hydrate, kg/m³. */
export const solidDensityOf = (x: Float64Array, { property }: PlannedIngredient): number =>
  property.particleDensityHydrate === ABSENT ? HYDRATE_SOLID_DENSITY : at(x, property.particleDensityHydrate)

/** kg of quicklime in one litre (or one kg) of a lime in a state. */
function quicklimePer(x: Float64Array, ingredient: PlannedIngredient, state: LimeState): number {
  const { property, by } = ingredient
  const kg = by === 'mass' ? 1 : at(x, property[bulkPropertyOf(state)]) / 1000
  if (state === 'lump-quicklime' || state === 'ground-quicklime') return kg
  const hydrateKg =
    state === 'putty' ? kg * puttySolids(at(x, property.puttyDensity), solidDensityOf(x, ingredient)) : kg
  return hydrateKg / hydratePerQuicklime(at(x, property.freeCaO))
}

function quicklimeOf(x: Float64Array, ingredient: PlannedIngredient, choice: StateChoice): number {
  const { limeStates: states } = ingredient
  const parts = at(x, ingredient.parts)
  if (choice !== MEAN_OF_STATES || states.length === 1)
    return (
      parts *
      quicklimePer(x, ingredient, states[Math.min(choice < 0 ? 0 : choice, states.length - 1)] as LimeState)
    )
  let sum = 0
  for (let k = 0; k < states.length; k++) sum += quicklimePer(x, ingredient, states[k] as LimeState)
  return (parts * sum) / states.length
}

/** Litres that a lime made from `quicklimeKg` of quicklime fills in a state. */
export function limeLitres(
  x: Float64Array,
  ingredient: PlannedIngredient,
  state: LimeState,
  quicklimeKg: number,
  freeCaO: number = at(x, ingredient.property.freeCaO),
): number {
  const bulkKgPerL = at(x, ingredient.property[bulkPropertyOf(state)]) / 1000
  return limeKilograms(x, ingredient, state, quicklimeKg, freeCaO) / bulkKgPerL
}

/** Kilograms that a lime made from `quicklimeKg` of quicklime weighs in a state. */
export function limeKilograms(
  x: Float64Array,
  ingredient: PlannedIngredient,
  state: LimeState,
  quicklimeKg: number,
  freeCaO: number = at(x, ingredient.property.freeCaO),
): number {
  if (state === 'lump-quicklime' || state === 'ground-quicklime') return quicklimeKg
  const hydrateKg = quicklimeKg * hydratePerQuicklime(freeCaO)
  if (state === 'dry-hydrate') return hydrateKg
  return hydrateKg / puttySolids(at(x, ingredient.property.puttyDensity), solidDensityOf(x, ingredient))
}

/** Are a lime's properties enough to measure it by volume in this state? */
export const canMeasure = ({ property }: PlannedIngredient, state: LimeState): boolean =>
  property[bulkPropertyOf(state)] !== ABSENT
