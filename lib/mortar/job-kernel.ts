import { HEAT_CAPACITY } from './constants.ts'
import { type FreshPlan, freshSums, sumFresh, waterIn } from './fresh.ts'
import { slakeHeap } from './heat.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { hydratePerQuicklime, type LimeState } from './lime.ts'
import { bulkingOf, canMeasure, limeKilograms, limeLitres, type MixPlan, mixSums, sumMix } from './mix.ts'
import type { WorkPlan } from './takeoff.ts'
import { ABSENT, at } from './variables.ts'

/** A planned job: everything that the kernel reads, by place. */
export interface JobPlan {
  readonly mix: MixPlan
  readonly fresh: FreshPlan
  readonly work: WorkPlan
  /** Per ingredient: the state that a lime is in on site; null for all else. */
  readonly siteStates: readonly (LimeState | null)[]
  /** Is lime slaked among the sand (and not in water alone)? */
  readonly slakesInSand: boolean
  readonly loss: number
  readonly moisture: number
  /** Places that are {@link ABSENT} unless entered. */
  readonly bulking: number
  readonly purity: number
  readonly firstCharge: number
  readonly waterC: number
  readonly sandC: number
}

/** Outputs before those of the ingredients, in their order. */
export const JOB_OUTPUTS = [
  'netL',
  'mortarL',
  'unitCount',
  'recipeMortarL',
  'boundL',
  'freeL',
  'boiledL',
  'fromSandL',
  'fromLimeL',
  'firstChargeL',
  'likelyTotalL',
  'averageC',
  'heatKJ',
] as const
export type JobOutput = (typeof JOB_OUTPUTS)[number]
export const jobOutputAt = (name: JobOutput): number => JOB_OUTPUTS.indexOf(name)

/** Outputs of each ingredient: in the recipe, then on site. */
export const PER_INGREDIENT = ['quicklimeKg', 'dryKg', 'looseL', 'siteL', 'siteKg'] as const
export const ingredientOutputAt = (i: number): number => JOB_OUTPUTS.length + i * PER_INGREDIENT.length

/** Names of all outputs of a job, for faults. */
export const jobOutputNames = ({ mix }: JobPlan): string[] => [
  ...JOB_OUTPUTS,
  ...mix.ingredients.flatMap(({ index }) => PER_INGREDIENT.map((name) => `ingredients.${index}.${name}`)),
]

/** The whole job on plain numbers, for one draw. */
export function jobKernel(plan: JobPlan): (x: Float64Array, out: Float64Array, choice: number) => void {
  const { ingredients } = plan.mix
  const sums = mixSums(ingredients.length)
  const fresh = freshSums()
  const site = { boundL: 0, fromSandL: 0, fromLimeL: 0, quicklimeKg: 0, caoKg: 0, sandKg: 0, sandHeat: 0 }
  return (x, out, choice) => {
    sumMix(x, plan.mix, choice, sums)
    sumFresh(x, plan.mix, plan.fresh, choice, sums, fresh)
    const netL = plan.work.netL(x)
    const mortarL = netL * (1 + at(x, plan.loss))
    const times = mortarL / fresh.mortarL
    site.boundL = site.fromSandL = site.fromLimeL = 0
    site.quicklimeKg = site.caoKg = site.sandKg = site.sandHeat = 0
    for (let i = 0; i < ingredients.length; i++) {
      const ingredient = ingredients[i] as PlannedIngredient
      const k = ingredientOutputAt(i)
      out[k] = sums.quicklimeKg[i] as number
      out[k + 1] = sums.dryKg[i] as number
      out[k + 2] = sums.looseL[i] as number
      if (ingredient.role === 'lime') siteLime(x, plan, ingredient, i, (out[k] as number) * times, out, site)
      else
        siteSolid(
          x,
          plan,
          ingredient,
          (out[k + 1] as number) * times,
          (out[k + 2] as number) * times,
          out,
          k,
          site,
        )
    }
    const freeL = fresh.freeWaterL * times
    const short = site.boundL + freeL - site.fromSandL - site.fromLimeL
    const firstChargeL = Math.max(0, short) * at(x, plan.firstCharge)
    const heap = slakeHeap({
      quicklimeKg: site.quicklimeKg,
      freeCaO: site.quicklimeKg > 0 ? site.caoKg / site.quicklimeKg : 0,
      waterKg: firstChargeL + (plan.slakesInSand ? site.fromSandL : 0),
      sandKg: plan.slakesInSand ? site.sandKg : 0,
      sandHeat: site.sandKg > 0 ? site.sandHeat / site.sandKg : 0,
      waterC: at(x, plan.waterC),
      sandC: at(x, plan.sandC),
    })
    const boiledL = site.quicklimeKg > 0 ? heap.boiledKg : 0
    out[0] = netL
    out[1] = mortarL
    out[2] = plan.work.unitCount(x)
    out[3] = fresh.mortarL
    out[4] = site.boundL
    out[5] = freeL
    out[6] = boiledL
    out[7] = site.fromSandL
    out[8] = site.fromLimeL
    out[9] = firstChargeL
    out[10] = Math.max(0, short + boiledL)
    out[11] = heap.averageC
    out[12] = heap.heatKJ
  }
}

interface SiteSums {
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
function siteLime(
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

function siteSolid(
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
