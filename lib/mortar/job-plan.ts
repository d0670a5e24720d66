import { type Amount, toRange } from './amount.ts'
import { ASSUMED, takeOwnAssumptions } from './assumptions.ts'
import { planFresh } from './fresh.ts'
import { bulkPropertyOf, type PlannedIngredient } from './ingredient.ts'
import { planIngredients, refuseOversaturated } from './ingredient-plan.ts'
import { type Inspection, inspect } from './inspect.ts'
import type { JobPlan } from './job-layout.ts'
import { type JobInput, METHODS } from './job-types.ts'
import { planWorks } from './job-works.ts'
import type { LimeState } from './lime.ts'
import { canMeasure, planMix } from './mix.ts'
import { scale } from './range.ts'
import { hasQuicklime, SLAKES_IN_SAND } from './sequence.ts'
import { ABSENT, type Variables } from './variables.ts'

/** Where nothing is entered: spring water and a heap in the shade, °C. */
const USUAL_C = { low: 8, typical: 15, high: 22 }

/**
 * Checks a job's input and gives every number its place.
 *
 * @throws MortarFault with every fault of the input
 */
export function planJob(input: JobInput, vars: Variables): JobPlan {
  const check = inspect()
  takeOwnAssumptions(input.assumed ?? {}, vars, check)
  input.ingredients.forEach(({ parts }, index) => {
    if (parts === null) check.refuse({ field: `ingredients.${index}.parts`, code: 'empty' })
  })
  if (!(METHODS as readonly string[]).includes(input.method))
    check.refuse({ field: 'method', code: 'unknown', value: String(input.method) })
  const works = planWorks(input, vars, check)
  const ingredients = planIngredients(input.ingredients, input.materials, vars, check)
  checkSite(input, ingredients, check)
  const mix = planMix(ingredients, vars)
  const fresh = planFresh(mix, vars, check)
  const siteStates = ingredients.map((ingredient) => siteState(input, ingredient, ingredients, check))
  check.finish()
  const percent = (name: string, amount: Amount) => vars.add(name, scale(toRange(amount), 0.01))
  return {
    mix,
    fresh,
    works,
    siteStates,
    siteBulks: ingredients.map(({ property }, i) => {
      const state = siteStates[i] ?? null
      return state === null ? ABSENT : property[bulkPropertyOf(state)]
    }),
    slakesInSand: SLAKES_IN_SAND.has(input.method),
    moisture: percent('sandMoisturePercent', input.sandMoisturePercent ?? 0),
    bulking:
      input.sandBulkingPercent === undefined
        ? ABSENT
        : percent('sandBulkingPercent', input.sandBulkingPercent),
    purity:
      input.limePurityPercent === undefined ? ABSENT : percent('limePurityPercent', input.limePurityPercent),
    firstCharge: vars.add('assumed.firstCharge', ASSUMED.firstCharge),
    waterC: vars.add('waterC', input.waterC ?? USUAL_C),
    sandC: vars.add('sandC', input.sandC ?? USUAL_C),
  }
}

function checkSite(input: JobInput, ingredients: readonly PlannedIngredient[], check: Inspection): void {
  const percent = { min: 0, max: 100, unit: '%' }
  check.range('sandMoisturePercent', toRange(input.sandMoisturePercent ?? 0), percent)
  check.range('sandBulkingPercent', toRange(input.sandBulkingPercent ?? 0), percent)
  check.range('limePurityPercent', toRange(input.limePurityPercent ?? 50), { above: 0, max: 100, unit: '%' })
  check.range('waterC', toRange(input.waterC ?? 15), { min: 0, max: 100, unit: 'C' })
  check.range('sandC', toRange(input.sandC ?? 15), { min: -30, max: 100, unit: 'C' })
  check.number('gaugeBoxL', input.gaugeBoxL ?? 1, { above: 0, max: 1e4, unit: 'L' })
  check.number('mixerL', input.mixerL ?? 1, { above: 0, max: 1e6, unit: 'L' })
  for (const [material, packKg] of Object.entries(input.packsKg ?? {}))
    check.number(`packsKg.${material}`, packKg, { above: 0, max: 1e6, unit: 'kg' })
  for (const [material, price] of Object.entries(input.packPrices ?? {}))
    check.number(`packPrices.${material}`, price, { min: 0, max: 1e9 })
  check.range('labour.hours', toRange(input.labour?.hours ?? 0), { min: 0, max: 1e6, unit: 'h' })
  check.number('labour.ratePerHour', input.labour?.ratePerHour ?? 0, { min: 0, max: 1e9 })
  check.number('draws', input.draws ?? 1, { min: 1, max: 1e6 })
  const moisture = toRange(input.sandMoisturePercent ?? 0).high / 100
  refuseOversaturated(ingredients, input.materials, moisture, check)
}

/** The state that a lime is in on site: as entered, or as the recipe says where that can't be. */
function siteState(
  { limeState }: JobInput,
  ingredient: PlannedIngredient,
  all: readonly PlannedIngredient[],
  check: Inspection,
): LimeState | null {
  if (ingredient.role !== 'lime') return null
  const [stated, another] = ingredient.limeStates
  if (limeState === undefined) {
    if (another !== undefined) check.refuse({ field: 'limeState', code: 'empty' })
    return stated ?? null
  }
  if (canMeasure(ingredient, limeState)) return limeState
  // With several limes on site one of them may not come in the state that the others do.
  const others = all.some((other) => other.role === 'lime' && canMeasure(other, limeState))
  if (!others || another !== undefined)
    check.refuse({ field: 'limeState', code: 'inconsistent', value: limeState })
  return stated ?? null
}

/** Work in which a late grain of lime shows. */
export const FINE_WORK: ReadonlySet<string> = new Set([
  'pointing',
  'pointing-rubble',
  'bedding-ashlar',
  'plaster',
  'plaster-laths',
  'render',
])

/** States of the limes on site. */
export const limesOnSite = ({ siteStates }: JobPlan): LimeState[] =>
  siteStates.filter((state) => state !== null)

/** Is any lime on site still to be slaked? */
export const quicklimeOnSite = (plan: JobPlan): boolean => hasQuicklime(limesOnSite(plan))

/**
 * Does quicklime on site go into the mixer slaked, in a recipe that measures slaked lime? Then a box of quicklime is no
 * box of what the recipe says. Where it measures quicklime and slakes that apart, it is.
 */
export const gaugedSlaked = (plan: JobPlan): boolean =>
  !plan.slakesInSand &&
  plan.mix.ingredients.some(({ limeStates }, i) => {
    const state = plan.siteStates[i] ?? null
    return state !== null && hasQuicklime([state]) && !hasQuicklime(limeStates)
  })
