import { ASSUMED } from './assumptions.ts'
import { spreadChoices } from './choices.ts'
import { attempt, type Outcome } from './fault.ts'
import type {
  IngredientInput,
  IngredientRole,
  IngredientState,
  Materials,
  PlannedIngredient,
} from './ingredient.ts'
import { planIngredients } from './ingredient-plan.ts'
import { inspect } from './inspect.ts'
import { type LimeState, massPerQuicklime } from './lime.ts'
import {
  bulkingOf,
  canMeasure,
  limeLitres,
  type MixPlan,
  type MixSums,
  mixSums,
  openStates,
  planMix,
  sumMix,
} from './mix.ts'
import type { Range } from './range.ts'
import { DRAWS } from './spread.ts'
import { ABSENT, at, variables } from './variables.ts'

export interface RestateInput {
  readonly ingredients: readonly IngredientInput[]
  readonly materials: Materials
  /** How the answer is to be measured. */
  readonly as: {
    readonly limeState: LimeState
    readonly aggregate: 'dry' | 'damp'
    readonly by: 'volume' | 'mass'
  }
  readonly draws?: number
}

/** An ingredient in its new measure, ready to be an ingredient of a recipe again. */
export interface RestatedIngredient {
  readonly material: string
  readonly role: IngredientRole
  readonly parts: Range
  readonly by: 'volume' | 'mass'
  readonly state: IngredientState
}

/**
 * A recipe on another basis: its lime in one state, its sand dry or damp, all by volume or all by mass
 * (what has no known bulk density stays by mass). The first lime, or else the first ingredient, is 1.
 *
 * What the source names without its quantity stays out. Damp means damp as a recipe says it, at the moisture that common practice gives, both in and out.
 */
export const restateRecipe = (input: RestateInput): Outcome<readonly RestatedIngredient[]> =>
  attempt(() => {
    const check = inspect()
    const vars = variables()
    const ingredients = planIngredients(input.ingredients, input.materials, vars, check)
    for (const ingredient of ingredients)
      if (ingredient.role === 'lime' && !canBe(ingredient, input.as))
        check.refuse({ field: 'as.limeState', code: 'inconsistent', value: input.as.limeState })
    check.finish()
    const plan = planMix(ingredients, vars)
    const moisture =
      input.as.aggregate === 'damp' ? vars.add('assumed.dampMoisture', ASSUMED.dampMoisture) : ABSENT
    const first = Math.max(
      0,
      ingredients.findIndex(({ role }) => role === 'lime'),
    )
    const sums = mixSums(ingredients.length)
    const ranges = spreadChoices(
      vars,
      ingredients.map(({ index }) => `ingredients.${index}.parts`),
      openStates(ingredients),
      (x, out, choice) => {
        sumMix(x, plan, choice, sums)
        for (let i = 0; i < ingredients.length; i++) out[i] = partsOf(x, plan, i, sums, input.as, moisture)
        const one = out[first] as number
        for (let i = 0; i < ingredients.length; i++) out[i] = (out[i] as number) / one
      },
      input.draws ?? DRAWS,
    )
    return ingredients.map((ingredient, i) => ({
      material: ingredient.material,
      role: ingredient.role,
      parts: ranges[i] as Range,
      by: measureOf(ingredient, input.as.by),
      state: stateOf(ingredient, input.as),
    }))
  })

/** By mass only putty needs its density, for its solids. */
const canBe = (lime: PlannedIngredient, { limeState, by }: RestateInput['as']): boolean =>
  (by === 'mass' && limeState !== 'putty') || canMeasure(lime, limeState)

const measureOf = ({ role, property, by }: PlannedIngredient, wanted: 'volume' | 'mass') =>
  role === 'lime' || role === 'water' || property.bulkDensity !== ABSENT ? wanted : by

function stateOf({ role, state }: PlannedIngredient, as: RestateInput['as']): IngredientState {
  if (role === 'lime') return as.limeState
  return role === 'aggregate' || role === 'earth' ? as.aggregate : state
}

function partsOf(
  x: Float64Array,
  plan: MixPlan,
  i: number,
  sums: MixSums,
  as: RestateInput['as'],
  moistureAt: number,
): number {
  const ingredient = plan.ingredients[i] as PlannedIngredient
  const volume = measureOf(ingredient, as.by) === 'volume'
  if (ingredient.role === 'lime') {
    const perQuicklime = massPerQuicklime(
      as.limeState,
      sums.hydratePer[i] as number,
      sums.solids[i] as number,
    )
    const kg = (sums.quicklimeKg[i] as number) * perQuicklime
    return volume ? limeLitres(x, ingredient, as.limeState, kg) : kg
  }
  const damp = as.aggregate === 'damp' && (ingredient.role === 'aggregate' || ingredient.role === 'earth')
  const moisture = damp ? at(x, moistureAt) : 0
  const looseL = sums.looseL[i] as number
  if (ingredient.role === 'water') return looseL
  return volume
    ? looseL * (1 + (damp ? bulkingOf(x, ingredient, moisture) : 0))
    : (sums.dryKg[i] as number) * (1 + moisture)
}
