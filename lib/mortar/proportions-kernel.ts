import { type FreshPlan, freshSums, sumFresh } from './fresh.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { LIME_STATES, type LimeState, massPerQuicklime } from './lime.ts'
import { bulkingOf, canMeasure, limeLitres, type MixPlan, type MixSums, mixSums, sumMix } from './mix.ts'
import { at } from './variables.ts'

/** What the kernel of proportions writes, and where. */
export interface ProportionsLayout {
  /** Names of the outputs in their order: shares, then per ingredient, then per state. */
  readonly names: readonly string[]
  readonly states: readonly LimeState[]
  /** Ingredients that are no lime and whose volume is known, by place in the plan. */
  readonly others: readonly number[]
  readonly hasFiller: boolean
  /** Where the outputs of ingredient `i` start: kg of quicklime, kg dry, litres dry and loose. */
  ingredientAt(i: number): number
  /** Where the outputs of the s-th state start: %, filler dry and damp, then each other dry and damp. */
  stateAt(s: number): number
}

const BINDERS: ReadonlySet<string> = new Set(['lime', 'pozzolan', 'cement', 'gypsum'])
const FILLERS: ReadonlySet<string> = new Set(['aggregate', 'earth'])
const SHARES = ['binderPercent', 'clayPercent', 'fibreKgM3'] as const
const PER_INGREDIENT = 3
const PER_STATE = 3

/** Lays out the outputs for a recipe. */
export function layOutProportions({ ingredients }: MixPlan): ProportionsLayout {
  const limes = ingredients.filter(({ role }) => role === 'lime')
  const states = LIME_STATES.filter(
    (state) => limes.length > 0 && limes.every((lime) => canMeasure(lime, state)),
  )
  const others = ingredients.flatMap((ingredient, i) => (hasVolume(ingredient) ? [i] : []))
  const ingredientAt = (i: number) => SHARES.length + i * PER_INGREDIENT
  const stateAt = (s: number) => ingredientAt(ingredients.length) + s * (PER_STATE + 2 * others.length)
  const names = [
    ...SHARES,
    ...ingredients.flatMap(({ material }) =>
      ['quicklimeKg', 'dryKg', 'looseL'].map((n) => `${material}.${n}`),
    ),
    ...states.flatMap((state) => [
      ...['limePercent', 'aggregateDry', 'aggregateDamp'].map((name) => `${state}.${name}`),
      ...others.flatMap((i) => [`${state}.${i}.dry`, `${state}.${i}.damp`]),
    ]),
  ]
  const hasFiller = ingredients.some(({ role }) => FILLERS.has(role))
  return { names, states, others, hasFiller, ingredientAt, stateAt }
}

const hasVolume = ({ role, property, by }: PlannedIngredient): boolean =>
  role !== 'lime' && (role === 'water' || property.bulkDensity >= 0 || by === 'volume')

/** The sums behind {@link ProportionsLayout}, for one draw. */
export function proportionsKernel(
  plan: MixPlan,
  fresh: FreshPlan | null,
  layout: ProportionsLayout,
  moisture: number,
): (x: Float64Array, out: Float64Array, choice: number) => void {
  const sums = mixSums(plan.ingredients.length)
  const freshly = freshSums()
  return (x, out, choice) => {
    sumMix(x, plan, choice, sums)
    if (fresh !== null) sumFresh(x, plan, fresh, choice, sums, freshly)
    let binderKg = 0
    let clayKg = 0
    let fillerL = 0
    let fillerDampL = 0
    for (let i = 0; i < plan.ingredients.length; i++) {
      const ingredient = plan.ingredients[i] as PlannedIngredient
      const dryKg = sums.dryKg[i] as number
      const looseL = sums.looseL[i] as number
      const k = layout.ingredientAt(i)
      out[k] = sums.quicklimeKg[i] as number
      out[k + 1] = dryKg
      out[k + 2] = looseL
      if (BINDERS.has(ingredient.role)) binderKg += dryKg
      clayKg += dryKg * at(x, ingredient.property.clayFraction)
      if (!FILLERS.has(ingredient.role)) continue
      fillerL += looseL
      fillerDampL += looseL * (1 + bulkingOf(x, ingredient, at(x, moisture)))
    }
    out[0] = sums.totalKg > 0 ? (100 * binderKg) / sums.totalKg : 0
    out[1] = sums.totalKg > 0 ? (100 * clayKg) / sums.totalKg : 0
    out[2] = freshly.mortarL > 0 ? (1000 * freshly.fibreKg) / freshly.mortarL : 0
    for (let s = 0; s < layout.states.length; s++)
      writeState(x, plan, layout, s, moisture, sums, fillerL, fillerDampL, out)
  }
}

function writeState(
  x: Float64Array,
  plan: MixPlan,
  layout: ProportionsLayout,
  s: number,
  moisture: number,
  sums: MixSums,
  fillerL: number,
  fillerDampL: number,
  out: Float64Array,
): void {
  const state = layout.states[s] as LimeState
  const slaked = state === 'dry-hydrate' || state === 'putty'
  let limeL = 0
  let limeKg = 0
  let limeDryKg = 0
  for (let i = 0; i < plan.ingredients.length; i++) {
    const ingredient = plan.ingredients[i] as PlannedIngredient
    if (ingredient.role !== 'lime') continue
    const quicklimeKg = sums.quicklimeKg[i] as number
    const perQuicklime = massPerQuicklime(state, sums.hydratePer[i] as number, sums.solids[i] as number)
    limeL += limeLitres(x, ingredient, state, quicklimeKg * perQuicklime)
    limeKg += slaked ? (sums.dryKg[i] as number) : quicklimeKg
    limeDryKg += sums.dryKg[i] as number
  }
  let k = layout.stateAt(s)
  out[k++] = (100 * limeKg) / (limeKg + sums.totalKg - limeDryKg)
  out[k++] = fillerL / limeL
  out[k++] = fillerDampL / limeL
  for (const i of layout.others) {
    const looseL = sums.looseL[i] as number
    const ingredient = plan.ingredients[i] as PlannedIngredient
    out[k++] = looseL / limeL
    out[k++] = (looseL * (1 + bulkingOf(x, ingredient, at(x, moisture)))) / limeL
  }
}
