import { ASSUMED } from './assumptions.ts'
import { WATER_KG_PER_L } from './constants.ts'
import type { PlannedIngredient } from './ingredient.ts'
import type { Inspection } from './inspect.ts'
import { hydratePerQuicklime, type LimeState, puttySolids } from './lime.ts'
import { MEAN_OF_STATES, type MixPlan, type MixSums, type StateChoice, solidDensityOf } from './mix.ts'
import { ABSENT, at, type Variables } from './variables.ts'

/** Places of what decides how much mortar a recipe makes. */
export interface FreshPlan {
  readonly air: number
  readonly grainWater: number
  readonly powderWater: number
  readonly clayWater: number
  /** Does the recipe say how much water? Then that is what it gets. */
  readonly waterStated: boolean
  /** Is there grain or earth that holds air? A wash or a grout without it holds none. */
  readonly holdsAir: boolean
}

/** Fresh mortar by absolute volumes; written anew for each draw. */
export interface FreshSums {
  /** Litres of grain and powder without their voids. */
  solidL: number
  /** Litres of water that is not bound in the lime. */
  freeWaterL: number
  /** Litres of mortar: solids, free water and air. */
  mortarL: number
  /** kg of clay in earths and sands. */
  clayKg: number
  fibreKg: number
}

export const freshSums = (): FreshSums => ({ solidL: 0, freeWaterL: 0, mortarL: 0, clayKg: 0, fibreKg: 0 })

/** Gives the figures of fresh mortar their places; notes a particle density that is missing. */
export function planFresh(plan: MixPlan, vars: Variables, check: Inspection): FreshPlan {
  for (const { role, material, property } of plan.ingredients)
    if (NEEDS_PARTICLES.has(role) && property.particleDensity === ABSENT && property.voids === ABSENT)
      check.refuse({ field: `materials.${material}.particleDensity`, code: 'unknown' })
  const { ingredients } = plan
  const waterStated = ingredients.some(({ role }) => role === 'water')
  const holdsAir = ingredients.some(({ role }) => LIES.has(role))
  const assume = (name: 'air' | 'grainWater' | 'powderWater' | 'clayWater', used: boolean) =>
    used ? vars.add(`assumed.${name}`, ASSUMED[name]) : ABSENT
  return {
    air: assume('air', holdsAir),
    grainWater: assume('grainWater', !waterStated && holdsAir),
    powderWater: assume('powderWater', !waterStated && ingredients.some(holdsPowderWater)),
    clayWater: assume(
      'clayWater',
      !waterStated && ingredients.some(({ property }) => property.clayFraction !== ABSENT),
    ),
    waterStated,
    holdsAir,
  }
}

const LIES: ReadonlySet<string> = new Set(['aggregate', 'earth'])

const holdsPowderWater = ({ role, property }: PlannedIngredient): boolean =>
  role === 'lime' ? property.puttyDensity === ABSENT : NEEDS_PARTICLES.has(role) && !LIES.has(role)

const NEEDS_PARTICLES: ReadonlySet<string> = new Set(['aggregate', 'pozzolan', 'earth', 'cement', 'gypsum'])

/** Litres of solids, free water and air that the parts make. */
export function sumFresh(
  x: Float64Array,
  plan: MixPlan,
  fresh: FreshPlan,
  choice: StateChoice,
  mix: MixSums,
  sums: FreshSums,
): void {
  let solidL = 0
  let demandL = 0
  let statedL = 0
  let clayKg = 0
  let fibreKg = 0
  for (let i = 0; i < plan.ingredients.length; i++) {
    const ingredient = plan.ingredients[i] as PlannedIngredient
    const dryKg = mix.dryKg[i] as number
    const { role, property } = ingredient
    if (role === 'lime') {
      const solidDensity = solidDensityOf(x, ingredient)
      solidL += (dryKg / solidDensity) * 1000
      demandL += limeWater(x, ingredient, fresh, dryKg)
      statedL += waterBrought(x, ingredient, choice, mix.quicklimeKg[i] as number)
    } else if (role === 'water')
      statedL += (mix.looseL[i] as number) * (ingredient.by === 'mass' ? 1 / WATER_KG_PER_L : 1)
    else if (role === 'fibre') fibreKg += dryKg
    else {
      const density = particleDensityOf(x, ingredient)
      if (density > 0) solidL += (dryKg / density) * 1000
      const clay = dryKg * at(x, property.clayFraction)
      clayKg += clay
      if (LIES.has(role)) demandL += dryKg * at(x, fresh.grainWater) + clay * at(x, fresh.clayWater)
      else if (NEEDS_PARTICLES.has(role)) demandL += dryKg * at(x, fresh.powderWater)
    }
  }
  sums.solidL = solidL
  sums.freeWaterL = fresh.waterStated ? Math.max(0, statedL) : demandL
  sums.mortarL = (solidL + sums.freeWaterL) / (1 - (fresh.holdsAir ? at(x, fresh.air) : 0))
  sums.clayKg = clayKg
  sums.fibreKg = fibreKg
}

/** Particle density in kg/m³, stated or from bulk density and voids; 0 where neither is known. */
export function particleDensityOf(x: Float64Array, { property }: PlannedIngredient): number {
  if (property.particleDensity !== ABSENT) return at(x, property.particleDensity)
  if (property.voids === ABSENT) return 0
  return at(x, property.bulkDensity) / (1 - at(x, property.voids))
}

/** Free water that makes a lime a putty, litres; that of a powder where its putty is not known. */
function limeWater(
  x: Float64Array,
  ingredient: PlannedIngredient,
  fresh: FreshPlan,
  hydrateKg: number,
): number {
  const { puttyDensity } = ingredient.property
  if (puttyDensity === ABSENT) return hydrateKg * at(x, fresh.powderWater)
  const solids = puttySolids(at(x, puttyDensity), solidDensityOf(x, ingredient))
  return (hydrateKg * (1 / solids - 1)) / WATER_KG_PER_L
}

/** Free water that a lime brings as it was measured, litres: putty brings its own, quicklime binds some. */
function waterBrought(
  x: Float64Array,
  ingredient: PlannedIngredient,
  choice: StateChoice,
  quicklimeKg: number,
): number {
  const { limeStates: states } = ingredient
  if (choice !== MEAN_OF_STATES || states.length === 1)
    return waterIn(
      x,
      ingredient,
      states[Math.min(Math.max(0, choice), states.length - 1)] as LimeState,
      quicklimeKg,
    )
  let sum = 0
  for (let k = 0; k < states.length; k++) sum += waterIn(x, ingredient, states[k] as LimeState, quicklimeKg)
  return sum / states.length
}

/** Free water in a lime as it stands in a state, litres; below zero what it still will bind. */
export function waterIn(
  x: Float64Array,
  ingredient: PlannedIngredient,
  state: LimeState,
  quicklimeKg: number,
  freeCaO: number = at(x, ingredient.property.freeCaO),
): number {
  const hydrate = hydratePerQuicklime(freeCaO)
  if (state === 'dry-hydrate') return 0
  if (state !== 'putty') return (-quicklimeKg * (hydrate - 1)) / WATER_KG_PER_L
  const solids = puttySolids(at(x, ingredient.property.puttyDensity), solidDensityOf(x, ingredient))
  return (quicklimeKg * hydrate * (1 / solids - 1)) / WATER_KG_PER_L
}
