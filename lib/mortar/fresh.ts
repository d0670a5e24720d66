import { ASSUMED } from './assumptions.ts'
import type { PlannedIngredient } from './ingredient.ts'
import type { Inspection } from './inspect.ts'
import { type LimeState, waterPerQuicklime } from './lime.ts'
import {
  countStates,
  firstState,
  lastState,
  type MixPlan,
  type MixSums,
  type StateChoice,
  solidDensityOf,
} from './mix.ts'
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
  const { ingredients } = plan
  for (const ingredient of ingredients) {
    const { material, property } = ingredient
    const known = property.particleDensity !== ABSENT || property.voids !== ABSENT
    if ((lies(ingredient) || isPowder(ingredient)) && !known)
      check.refuse({ field: `materials.${material}.particleDensity`, code: 'unknown' })
  }
  const waterStated = ingredients.some(({ role }) => role === 'water')
  const holdsAir = ingredients.some(lies)
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

const lies = ({ role }: PlannedIngredient): boolean => role === 'aggregate' || role === 'earth'

/** A fine powder that is no lime: its water is its own, not the grain's. */
const isPowder = ({ role }: PlannedIngredient): boolean =>
  role === 'pozzolan' || role === 'cement' || role === 'gypsum'

const holdsPowderWater = (ingredient: PlannedIngredient): boolean =>
  ingredient.role === 'lime' ? ingredient.property.puttyDensity === ABSENT : isPowder(ingredient)

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
  let statedL = mix.dampKg
  let clayKg = 0
  let fibreKg = 0
  for (let i = 0; i < plan.ingredients.length; i++) {
    const ingredient = plan.ingredients[i] as PlannedIngredient
    const dryKg = mix.dryKg[i] as number
    const { role, property } = ingredient
    if (role === 'lime') {
      const solids = mix.solids[i] as number
      solidL += (dryKg / solidDensityOf(x, ingredient)) * 1000
      if (fresh.waterStated) statedL += broughtBy(ingredient, i, choice, mix)
      else demandL += solids > 0 ? dryKg * (1 / solids - 1) : dryKg * at(x, fresh.powderWater)
    } else if (role === 'water') statedL += mix.looseL[i] as number
    else if (role === 'fibre') fibreKg += dryKg
    else {
      const density = particleDensityOf(x, ingredient)
      if (density > 0) solidL += (dryKg / density) * 1000
      const clay = dryKg * at(x, property.clayFraction)
      clayKg += clay
      if (lies(ingredient)) demandL += dryKg * at(x, fresh.grainWater) + clay * at(x, fresh.clayWater)
      else if (isPowder(ingredient)) demandL += dryKg * at(x, fresh.powderWater)
    }
  }
  sums.solidL = solidL
  sums.freeWaterL = fresh.waterStated ? Math.max(0, statedL) : demandL
  sums.mortarL = (solidL + sums.freeWaterL) / (1 - (fresh.holdsAir ? at(x, fresh.air) : 0))
  sums.clayKg = clayKg
  sums.fibreKg = fibreKg
}

/** Particle density in kg/m³, stated or from bulk density and voids; 0 where neither is known. */
function particleDensityOf(x: Float64Array, { property }: PlannedIngredient): number {
  if (property.particleDensity !== ABSENT) return at(x, property.particleDensity)
  if (property.voids === ABSENT) return 0
  return at(x, property.bulkDensity) / (1 - at(x, property.voids))
}

/** Free water that a lime brings as it was measured, litres: putty its own; quicklime takes some away. */
function broughtBy({ limeStates }: PlannedIngredient, i: number, choice: StateChoice, mix: MixSums): number {
  const last = lastState(limeStates, choice)
  let perQuicklime = 0
  for (let k = firstState(limeStates, choice); k <= last; k++)
    perQuicklime += waterPerQuicklime(
      limeStates[k] as LimeState,
      mix.hydratePer[i] as number,
      mix.solids[i] as number,
    )
  return ((mix.quicklimeKg[i] as number) * perQuicklime) / countStates(limeStates, choice)
}
