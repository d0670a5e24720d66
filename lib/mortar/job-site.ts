import { HEAT_CAPACITY } from './constants.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { ingredientOutputAt, type JobPlan } from './job-layout.ts'
import { hydratePerQuicklime, type LimeState, massPerQuicklime, waterPerQuicklime } from './lime.ts'
import { bulkingOf, type MixSums } from './mix.ts'
import { ABSENT, at } from './variables.ts'

/** What the ingredients on site bring together; written anew for each draw. */
export interface SiteSums {
  boundL: number
  fromSandL: number
  fromLimeL: number
  quicklimeKg: number
  caoKg: number
  sandKg: number
  /** kJ/K of all the sand. */
  sandHeat: number
}

/** Purity other than the recipe's changes the amount so that the free lime stays the same. */
export function siteLime(
  x: Float64Array,
  plan: JobPlan,
  i: number,
  times: number,
  mix: MixSums,
  out: Float64Array,
  site: SiteSums,
): void {
  const ingredient = plan.mix.ingredients[i] as PlannedIngredient
  const state = plan.siteStates[i] as LimeState
  const stated = at(x, ingredient.property.freeCaO)
  const other = plan.purity !== ABSENT
  const freeCaO = other ? at(x, plan.purity) : stated
  const recipeKg = (mix.quicklimeKg[i] as number) * times
  const quicklimeKg = other ? (recipeKg * stated) / freeCaO : recipeKg
  const hydratePer = other ? hydratePerQuicklime(freeCaO) : (mix.hydratePer[i] as number)
  const solids = mix.solids[i] as number
  const kg = quicklimeKg * massPerQuicklime(state, hydratePer, solids)
  const k = ingredientOutputAt(i)
  const bulk = plan.siteBulks[i] as number
  out[k + 3] = bulk === ABSENT ? 0 : (1000 * kg) / at(x, bulk)
  out[k + 4] = kg
  if (state === 'putty') site.fromLimeL += quicklimeKg * waterPerQuicklime(state, hydratePer, solids)
  if (state !== 'lump-quicklime' && state !== 'ground-quicklime') return
  site.boundL += quicklimeKg * (hydratePer - 1)
  site.quicklimeKg += quicklimeKg
  site.caoKg += quicklimeKg * freeCaO
}

/** An ingredient that is no lime: larger and heavier for the water it lies with. */
export function siteSolid(
  x: Float64Array,
  plan: JobPlan,
  i: number,
  times: number,
  mix: MixSums,
  out: Float64Array,
  site: SiteSums,
): void {
  const ingredient = plan.mix.ingredients[i] as PlannedIngredient
  const { role, property } = ingredient
  const dryKg = (mix.dryKg[i] as number) * times
  const looseL = (mix.looseL[i] as number) * times
  const lies = role === 'aggregate' || role === 'earth'
  const moisture = lies ? at(x, plan.moisture) : 0
  const k = ingredientOutputAt(i)
  const bulking = role === 'aggregate' ? siteBulking(x, plan, ingredient, moisture) : 0
  out[k + 3] = looseL * (1 + bulking)
  out[k + 4] = role === 'water' ? looseL : dryKg * (1 + moisture)
  out[k + 5] = bulking
  if (!lies) return
  site.fromSandL += dryKg * moisture
  site.sandKg += dryKg
  site.sandHeat +=
    dryKg * (property.heatCapacity === ABSENT ? HEAT_CAPACITY.quartz : at(x, property.heatCapacity))
}

const siteBulking = (
  x: Float64Array,
  plan: JobPlan,
  ingredient: PlannedIngredient,
  moisture: number,
): number => (plan.bulking === ABSENT ? bulkingOf(x, ingredient, moisture) : at(x, plan.bulking))
