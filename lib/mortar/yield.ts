import { spreadChoices } from './choices.ts'
import { given, type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { freshSums, planFresh, sumFresh } from './fresh.ts'
import type { IngredientInput, Materials } from './ingredient.ts'
import { planIngredients } from './ingredient-plan.ts'
import { inspect } from './inspect.ts'
import { firstState, mixSums, openStates, planMix, type StateChoice, sumMix } from './mix.ts'
import { type Basis, exactly, type Range, scale } from './range.ts'
import { DRAWS } from './spread.ts'
import { ABSENT, at, variables } from './variables.ts'

/** A factor that books give for the mortar that a heap makes. */
export interface HandbookYield {
  readonly id: 'equals-sand' | 'sand-and-an-eighth' | 'three-quarters-of-dry'
  /** Litres of mortar from one litre of `of`. */
  readonly factor: number
  /** Dry loose sand, or all that is dry measured apart. */
  readonly of: 'filler' | 'all-dry'
  readonly basis: Basis
  readonly source?: string
}

/** The factors that ours is shown beside. */
export const HANDBOOK_YIELDS: readonly HandbookYield[] = [
  { id: 'equals-sand', factor: 1, of: 'filler', basis: 'read', source: 'artis-2022, p. 53' },
  {
    id: 'sand-and-an-eighth',
    factor: 1.125,
    of: 'filler',
    basis: 'read',
    source: 'building-trades-pocketbook, art. Mortar',
  },
  { id: 'three-quarters-of-dry', factor: 1 / 1.33, of: 'all-dry', basis: 'practice' },
]

export interface MortarYield {
  /** Litres of mortar that the parts as stated make. */
  readonly mortarL: Range
  readonly solidL: Range
  readonly freeWaterL: Range
  /** Litres of mortar from one litre of dry loose sand and earth; null where there is none. */
  readonly perFiller: Range | null
  /** Books' answers for the same parts, and how far ours lies above (or below zero, below) them. */
  readonly handbooks: readonly (HandbookYield & {
    readonly mortarL: number
    readonly differencePercent: number
  })[]
  readonly steps: readonly Step[]
}

/** Mortar that a recipe's parts make by absolute volumes: solids, free water and air. */
export const yieldOf = (input: {
  readonly ingredients: readonly IngredientInput[]
  readonly materials: Materials
  readonly draws?: number
}): Outcome<MortarYield> =>
  attempt(() => {
    const check = inspect()
    const vars = variables()
    const ingredients = planIngredients(input.ingredients, input.materials, vars, check)
    const plan = planMix(ingredients, vars)
    const fresh = planFresh(plan, vars, check)
    check.finish()
    const mix = mixSums(ingredients.length)
    const sums = freshSums()
    const [mortarL, solidL, freeWaterL, fillerL, dryL] = spreadChoices(
      vars,
      ['mortarL', 'solidL', 'freeWaterL', 'fillerL', 'dryL'],
      openStates(ingredients),
      (x, out, choice) => {
        sumMix(x, plan, choice, mix)
        sumFresh(x, plan, fresh, choice, mix, sums)
        out[0] = sums.mortarL
        out[1] = sums.solidL
        out[2] = sums.freeWaterL
        out[3] = 0
        out[4] = 0
        for (let i = 0; i < ingredients.length; i++) {
          const role = ingredients[i]?.role
          const looseL = mix.looseL[i] as number
          if (role === 'aggregate' || role === 'earth') out[3] += looseL
          if (role !== 'water') out[4] += role === 'lime' ? limeMeasureL(x, i, choice) : looseL
        }
      },
      input.draws ?? DRAWS,
    ) as [Range, Range, Range, Range, Range]
    /** Litres of a lime as it is measured; one that is weighed by its bulk, 0 where that is not known. */
    function limeMeasureL(x: Float64Array, i: number, choice: StateChoice): number {
      const ingredient = ingredients[i]
      if (ingredient === undefined) return 0
      const parts = x[ingredient.parts] as number
      if (ingredient.by === 'volume') return parts
      const bulk = at(x, ingredient.limeBulks[firstState(ingredient.limeStates, choice)] ?? ABSENT)
      return bulk > 0 ? (1000 * parts) / bulk : 0
    }
    const air = vars.ranges[fresh.air] ?? exactly(0)
    return {
      mortarL,
      solidL,
      freeWaterL,
      perFiller: fillerL.typical > 0 ? scale(mortarL, 1 / fillerL.typical) : null,
      handbooks: HANDBOOK_YIELDS.flatMap((book) => {
        const base = book.of === 'filler' ? fillerL.typical : dryL.typical
        if (base <= 0) return []
        const theirs = base * book.factor
        return [{ ...book, mortarL: theirs, differencePercent: 100 * (mortarL.typical / theirs - 1) }]
      }),
      steps: [
        given('V_s', 'solidVolume', solidL, 'L'),
        given('W_free', 'freeWater', freeWaterL, 'L'),
        ...(fresh.holdsAir ? [given('a', 'air', air, '1')] : []),
        {
          ...given('V_r', 'recipeVolume', mortarL, 'L'),
          formula: fresh.holdsAir ? '(V_s + W_free) / (1 − a)' : 'V_s + W_free',
          numbers: fresh.holdsAir
            ? working`(${solidL.typical} + ${freeWaterL.typical}) / (1 − ${air.typical})`
            : working`${solidL.typical} + ${freeWaterL.typical}`,
        },
      ],
    }
  })
