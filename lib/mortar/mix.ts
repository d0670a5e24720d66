import { ASSUMED } from './assumptions.ts'
import { bulkingAt } from './bulking.ts'
import { bulkPropertyOf, type PlannedIngredient } from './ingredient.ts'
import {
  HYDRATE_SOLID_DENSITY,
  hydratePerQuicklime,
  type LimeState,
  massPerQuicklime,
  puttySolids,
} from './lime.ts'
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
  /** Per lime: kg of dry hydrate from one kg of its quicklime. */
  readonly hydratePer: Float64Array
  /** Per lime: share of its putty that is solids; 0 where its putty is not known. */
  readonly solids: Float64Array
  /** Per ingredient: kg dry; a lime as dry hydrate. */
  readonly dryKg: Float64Array
  /** Per ingredient that is no lime: litres dry and loose; 0 where its density is unknown. */
  readonly looseL: Float64Array
  /** All of it dry, kg. */
  totalKg: number
  /** Water in sand and earth that the recipe measures damp, kg. */
  dampKg: number
}

/** Room for the sums of a recipe of `count` ingredients. */
export const mixSums = (count: number): MixSums => ({
  quicklimeKg: new Float64Array(count),
  hydratePer: new Float64Array(count),
  solids: new Float64Array(count),
  dryKg: new Float64Array(count),
  looseL: new Float64Array(count),
  totalKg: 0,
  dampKg: 0,
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
  sums.dampKg = 0
  for (let i = 0; i < plan.ingredients.length; i++) {
    const ingredient = plan.ingredients[i] as PlannedIngredient
    if (ingredient.role === 'lime') sumLime(x, ingredient, choice, i, sums)
    else sumSolid(x, plan, ingredient, i, sums)
    sums.totalKg += sums.dryKg[i] as number
  }
}

function sumLime(
  x: Float64Array,
  ingredient: PlannedIngredient,
  choice: StateChoice,
  i: number,
  sums: MixSums,
) {
  const { property, limeStates: states } = ingredient
  const hydratePer = hydratePerQuicklime(at(x, property.freeCaO))
  const solids =
    property.puttyDensity === ABSENT
      ? 0
      : puttySolids(at(x, property.puttyDensity), solidDensityOf(x, ingredient))
  const last = lastState(states, choice)
  let perMeasure = 0
  for (let k = firstState(states, choice); k <= last; k++) {
    const kg = ingredient.by === 'mass' ? 1 : at(x, ingredient.limeBulks[k] as number) / 1000
    perMeasure += kg / massPerQuicklime(states[k] as LimeState, hydratePer, solids)
  }
  const quicklimeKg = (at(x, ingredient.parts) * perMeasure) / countStates(states, choice)
  sums.hydratePer[i] = hydratePer
  sums.solids[i] = solids
  sums.quicklimeKg[i] = quicklimeKg
  sums.dryKg[i] = quicklimeKg * hydratePer
}

/** The states that a choice takes are those from the first to the last: one, or all for the mean. */
export const firstState = (states: readonly LimeState[], choice: StateChoice): number =>
  choice === MEAN_OF_STATES ? 0 : Math.min(choice, states.length - 1)
export const lastState = (states: readonly LimeState[], choice: StateChoice): number =>
  choice === MEAN_OF_STATES ? states.length - 1 : Math.min(choice, states.length - 1)
export const countStates = (states: readonly LimeState[], choice: StateChoice): number =>
  choice === MEAN_OF_STATES ? states.length : 1

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
  } else {
    const dryKg = parts / (1 + damp * moisture)
    sums.dryKg[i] = dryKg
    sums.looseL[i] = bulk > 0 ? dryKg / bulk : 0
  }
  sums.dampKg += (sums.dryKg[i] as number) * damp * moisture
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

/** Litres that `kg` of a lime fills in a state. */
export const limeLitres = (
  x: Float64Array,
  { property }: PlannedIngredient,
  state: LimeState,
  kg: number,
): number => (1000 * kg) / at(x, property[bulkPropertyOf(state)])

/** Are a lime's properties enough to measure it by volume in this state? */
export const canMeasure = ({ property }: PlannedIngredient, state: LimeState): boolean =>
  property[bulkPropertyOf(state)] !== ABSENT
