import { type Amount, toRange } from './amount.ts'
import { ASSUMED } from './assumptions.ts'
import { spreadChoices } from './choices.ts'
import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { type FreshPlan, planFresh } from './fresh.ts'
import type { IngredientInput, IngredientRole, Materials, PlannedIngredient } from './ingredient.ts'
import { planIngredients, refuseOversaturated } from './ingredient-plan.ts'
import { explainIngredients } from './ingredient-steps.ts'
import { inspect } from './inspect.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import { type MixPlan, openStates, planMix } from './mix.ts'
import { layOutProportions, type ProportionsLayout, proportionsKernel } from './proportions-kernel.ts'
import { explainStates } from './proportions-steps.ts'
import { type Range, scale } from './range.ts'
import { DRAWS } from './spread.ts'
import { ABSENT, type Variables, variables } from './variables.ts'

export interface ProportionsInput {
  readonly ingredients: readonly IngredientInput[]
  readonly materials: Materials
  /** Moisture of the sand that the answer calls damp, % of its dry mass; common practice if absent. */
  readonly sandMoisturePercent?: Amount
  /** Draws behind the ranges; fewer are quicker and rougher. */
  readonly draws?: number
}

/** One other ingredient to one measure of lime, by volume. */
export interface PartPerLime {
  /** Place of the ingredient in the input. */
  readonly index: number
  readonly material: string
  readonly dry: Range
  readonly damp: Range
}

/** A recipe restated with all its lime in one state. */
export interface StateProportions {
  readonly state: LimeState
  /** Aggregate and earth to one of lime by volume, dry and loose; null where there is none or no telling. */
  readonly aggregateDry: Range | null
  /** The same, measured damp. */
  readonly aggregateDamp: Range | null
  /**
   * Lime in lime and everything else dry, % by mass: quicklime as quicklime, slaked lime as dry hydrate.
   * Null where the source leaves out how much of something there was.
   */
  readonly limePercent: Range | null
  readonly parts: readonly PartPerLime[]
}

export interface Proportions {
  /** Null for a state that the limes' known properties do not reach, and where there is no lime or no telling. */
  readonly states: Readonly<Record<LimeState, StateProportions | null>>
  /** Lime as dry hydrate, pozzolan, cement and gypsum in all that is dry, % by mass; null as `limePercent`. */
  readonly binderPercent: Range | null
  /** Clay in all that is dry, % by mass; null as `limePercent`. */
  readonly clayPercent: Range | null
  /** Fibre in the fresh mortar; null where there is none, or its mass or the mortar's volume can't be told. */
  readonly fibreKgM3: Range | null
  /** Properties that are not known and were left out of the sums. */
  readonly unknowns: readonly Unknown[]
  readonly steps: readonly Step[]
}

/** A property that a sum would have used and the material does not give. */
export interface Unknown {
  readonly material: string
  readonly property: string
}

/**
 * A recipe's proportions for each of the four lime states, whatever mix of measures and states it is
 * written in, with sand dry and damp, and its lime, binder, clay and fibre.
 *
 * Refuses an empty recipe, parts that are no positive range, an unknown material, a material without the
 * density that its measure needs, and sand damper than it can be.
 */
export const proportions = (input: ProportionsInput): Outcome<Proportions> =>
  attempt(() => {
    const check = inspect()
    const vars = variables()
    const ingredients = planIngredients(input.ingredients, input.materials, vars, check)
    const stated = input.sandMoisturePercent
    if (stated !== undefined) {
      check.range('sandMoisturePercent', toRange(stated), { min: 0, max: 100, unit: '%' })
      refuseOversaturated(ingredients, input.materials, toRange(stated).high / 100, check)
    }
    check.finish()
    const plan = planMix(ingredients, vars)
    const moisture = vars.add(
      'sandMoisture',
      stated === undefined ? ASSUMED.dampMoisture : scale(toRange(stated), 0.01),
    )
    const fresh = planFreshIfKnown(plan, vars)
    const layout = layOutProportions(plan)
    const kernel = proportionsKernel(plan, fresh, layout, moisture)
    const ranges = spreadChoices(vars, layout.names, openStates(ingredients), kernel, input.draws ?? DRAWS)
    return assemble(input, plan, fresh, layout, vars, ranges)
  })

/** The volume of mortar matters here only for weighed fibre, so a missing particle density refuses nothing. */
function planFreshIfKnown(plan: MixPlan, vars: Variables): FreshPlan | null {
  const fibres = plan.ingredients.filter(({ role }) => role === 'fibre')
  const weighed = fibres.every(({ by, property }) => by === 'mass' || property.bulkDensity !== ABSENT)
  if (fibres.length === 0 || !weighed) return null
  const outcome = attempt(() => {
    const check = inspect()
    const fresh = planFresh(plan, vars, check)
    check.finish()
    return fresh
  })
  return outcome.ok ? outcome.value : null
}

function assemble(
  input: ProportionsInput,
  plan: MixPlan,
  fresh: FreshPlan | null,
  layout: ProportionsLayout,
  vars: Variables,
  ranges: readonly Range[],
): Proportions {
  const range = (k: number) => ranges[k] as Range
  const { limes, fillers, bodies } = statedOf(input.ingredients)
  const states = {} as Record<LimeState, StateProportions | null>
  for (const state of LIME_STATES) states[state] = null
  layout.states.forEach((state, s) => {
    if (!limes) return
    const base = layout.stateAt(s)
    states[state] = {
      state,
      limePercent: bodies ? range(base) : null,
      aggregateDry: layout.hasFiller && fillers ? range(base + 1) : null,
      aggregateDamp: layout.hasFiller && fillers ? range(base + 2) : null,
      parts: layout.others.map((i, k) => {
        const { index, material } = plan.ingredients[i] as PlannedIngredient
        return { index, material, dry: range(base + 3 + 2 * k), damp: range(base + 4 + 2 * k) }
      }),
    }
  })
  const perIngredient = plan.ingredients.map((_, i) => {
    const k = layout.ingredientAt(i)
    return { quicklimeKg: range(k), dryKg: range(k + 1), looseL: range(k + 2) }
  })
  return {
    states,
    binderPercent: bodies ? range(0) : null,
    clayPercent: bodies ? range(1) : null,
    fibreKgM3: fresh === null || !bodies ? null : range(2),
    unknowns: unknownsOf(plan),
    steps: [...explainIngredients(plan, input, vars, perIngredient), ...explainStates(plan, vars, states)],
  }
}

/** Is the quantity of every lime, every filler, and everything that makes up the mass stated? */
function statedOf(ingredients: readonly IngredientInput[]) {
  const stated = (...roles: readonly IngredientRole[]) =>
    ingredients.every(({ role, parts }) => parts !== null || !roles.includes(role))
  const limes = stated('lime')
  const fillers = stated('aggregate', 'earth')
  return { limes, fillers, bodies: limes && fillers && stated('pozzolan', 'cement', 'gypsum') }
}

/** What the sums would have used and the materials do not give. */
export const unknownsOf = ({ ingredients }: MixPlan): Unknown[] =>
  ingredients.flatMap(({ role, material, property, by }) => {
    if (role === 'lime' || role === 'water') return []
    if (role === 'aggregate' && property.bulkingPeak === ABSENT)
      return [{ material, property: 'bulkingPeak' }]
    return by === 'volume' && property.bulkDensity === ABSENT ? [{ material, property: 'bulkDensity' }] : []
  })
