import { freshSums, sumFresh } from './fresh.ts'
import { type SlakedHeap, type SlakingHeap, slakeHeap } from './heat.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { ingredientOutputAt, type JobPlan, workOutputAt } from './job-layout.ts'
import { type SiteSums, siteLime, siteSolid } from './job-site.ts'
import { sumWorks } from './job-works.ts'
import { mixSums, sumMix } from './mix.ts'
import { at } from './variables.ts'

/** The whole job on plain numbers, for one draw. */
export function jobKernel(plan: JobPlan): (x: Float64Array, out: Float64Array, choice: number) => void {
  const { ingredients } = plan.mix
  const worksAt = workOutputAt(plan)
  const sums = mixSums(ingredients.length)
  const fresh = freshSums()
  const site: SiteSums = {
    boundL: 0,
    fromSandL: 0,
    fromLimeL: 0,
    quicklimeKg: 0,
    caoKg: 0,
    sandKg: 0,
    sandHeat: 0,
  }
  return (x, out, choice) => {
    sumMix(x, plan.mix, choice, sums)
    sumFresh(x, plan.mix, plan.fresh, choice, sums, fresh)
    sumWorks(x, plan.works, worksAt, out)
    const times = (out[1] as number) / fresh.mortarL
    site.boundL = site.fromSandL = site.fromLimeL = 0
    site.quicklimeKg = site.caoKg = site.sandKg = site.sandHeat = 0
    for (let i = 0; i < ingredients.length; i++) {
      const ingredient = ingredients[i] as PlannedIngredient
      const k = ingredientOutputAt(i)
      out[k] = sums.quicklimeKg[i] as number
      out[k + 1] = sums.dryKg[i] as number
      out[k + 2] = sums.looseL[i] as number
      if (ingredient.role === 'lime') siteLime(x, plan, i, times, sums, out, site)
      else siteSolid(x, plan, i, times, sums, out, site)
    }
    const freeL = fresh.freeWaterL * times
    const short = site.boundL + freeL - site.fromSandL - site.fromLimeL
    const firstChargeL = Math.max(0, short) * at(x, plan.firstCharge)
    const heap = site.quicklimeKg > 0 ? slakeHeap(heapOf(x, plan, site, firstChargeL)) : UNSLAKED
    out[3] = fresh.mortarL
    out[4] = site.boundL
    out[5] = freeL
    out[6] = heap.boiledKg
    out[7] = site.fromSandL
    out[8] = site.fromLimeL
    out[9] = firstChargeL
    out[10] = Math.max(0, short + heap.boiledKg)
    out[11] = heap.averageC
    out[12] = heap.heatKJ
    out[13] = heap.startC
    out[14] = heap.capacityKJK
    out[15] = firstChargeL + (plan.slakesInSand ? site.fromSandL : 0) - site.boundL
    out[16] = firstChargeL / times
    out[17] = (out[10] as number) / times
  }
}

const UNSLAKED: SlakedHeap = {
  heatKJ: 0,
  capacityKJK: 0,
  startC: 0,
  averageC: 0,
  boiledKg: 0,
  freeKg: 0,
}

/** The first charge on the quicklime, among the damp sand or in a vessel of its own. */
const heapOf = (x: Float64Array, plan: JobPlan, site: SiteSums, firstChargeL: number): SlakingHeap => ({
  quicklimeKg: site.quicklimeKg,
  freeCaO: site.caoKg / site.quicklimeKg,
  waterKg: firstChargeL + (plan.slakesInSand ? site.fromSandL : 0),
  sandKg: plan.slakesInSand ? site.sandKg : 0,
  sandHeat: site.sandKg > 0 ? site.sandHeat / site.sandKg : 0,
  waterC: at(x, plan.waterC),
  sandC: at(x, plan.sandC),
})
