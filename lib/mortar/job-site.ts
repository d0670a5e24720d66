import { HEAT_CAPACITY } from './constants.ts'
import { waterIn } from './fresh.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { ingredientOutputAt, type JobPlan } from './job-layout.ts'
import { hydratePerQuicklime, type LimeState } from './lime.ts'
import { bulkingOf, canMeasure, limeKilograms, limeLitres } from './mix.ts'
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
  ingredient: PlannedIngredient,
  i: number,
  recipeKg: number,
  out: Float64Array,
  site: SiteSums,
): void {
  const state = plan.siteStates[i] as LimeState
  const stated = at(x, ingredient.property.freeCaO)
  const freeCaO = plan.purity === ABSENT ? stated : at(x, plan.purity)
  const quicklimeKg = plan.purity === ABSENT ? recipeKg : (recipeKg * stated) / freeCaO
  const k = ingredientOutputAt(i)
  out[k + 3] = canMeasure(ingredient, state) ? limeLitres(x, ingredient, state, quicklimeKg, freeCaO) : 0
  out[k + 4] = limeKilograms(x, ingredient, state, quicklimeKg, freeCaO)
  if (state === 'putty') site.fromLimeL += waterIn(x, ingredient, state, quicklimeKg, freeCaO)
  if (state !== 'lump-quicklime' && state !== 'ground-quicklime') return
  site.boundL += quicklimeKg * (hydratePerQuicklime(freeCaO) - 1)
  site.quicklimeKg += quicklimeKg
  site.caoKg += quicklimeKg * freeCaO
}

/** An ingredient that is no lime: larger and heavier for the water it lies with. */
export function siteSolid(
  x: Float64Array,
  plan: JobPlan,
  ingredient: PlannedIngredient,
  dryKg: number,
  looseL: number,
  out: Float64Array,
  k: number,
  site: SiteSums,
): void {
  const { role, property } = ingredient
  const lies = role === 'aggregate' || role === 'earth'
  const moisture = lies ? at(x, plan.moisture) : 0
  const bulking =
    role !== 'aggregate'
      ? 0
      : plan.bulking === ABSENT
        ? bulkingOf(x, ingredient, moisture)
        : at(x, plan.bulking)
  out[k + 3] = looseL * (1 + bulking)
  out[k + 4] = role === 'water' ? looseL : dryKg * (1 + moisture)
  if (!lies) return
  site.fromSandL += dryKg * moisture
  site.sandKg += dryKg
  site.sandHeat +=
    dryKg * (property.heatCapacity === ABSENT ? HEAT_CAPACITY.quartz : at(x, property.heatCapacity))
}
