import { given, type Step, working } from './explain.ts'
import { explainHeat } from './heat-steps.ts'
import { explainIngredients } from './ingredient-steps.ts'
import { ingredientOutputAt, type JobOutput, type JobPlan, jobOutputAt, workOutputAt } from './job-layout.ts'
import { explainSite } from './job-steps-site.ts'
import type { JobInput, JobWork } from './job-types.ts'
import { listWorks, type PlannedWork } from './job-works.ts'
import { exactly, type Range, scale } from './range.ts'
import { ABSENT, type Variables } from './variables.ts'

/** The whole working of a job, from the wall to the water. */
export function explainJob(
  input: JobInput,
  plan: JobPlan,
  vars: Variables,
  ranges: readonly Range[],
): Step[] {
  const found = (name: JobOutput) => ranges[jobOutputAt(name)] as Range
  const perIngredient = plan.mix.ingredients.map((_, i) => {
    const k = ingredientOutputAt(i)
    return {
      quicklimeKg: ranges[k] as Range,
      dryKg: ranges[k + 1] as Range,
      looseL: ranges[k + 2] as Range,
    }
  })
  const times = found('mortarL').typical / found('recipeMortarL').typical
  const steps = [
    ...explainWorks(plan, vars, ranges),
    ...explainIngredients(plan.mix, input, vars, perIngredient),
    ...explainYield(plan, vars, found, times),
    ...plan.mix.ingredients.flatMap((ingredient, i) =>
      explainSite(input, plan, vars, ingredient, i, ranges, times),
    ),
    ...explainWater(plan, vars, found),
  ]
  return steps.filter((step, k) => steps.findIndex((one) => isSame(one, step)) === k)
}

/** A property that was shown for the recipe need not be shown again for the site. */
const isSame = (a: Step, b: Step): boolean =>
  a.symbol === b.symbol && a.means === b.means && a.work === b.work

const rangeAt = (vars: Variables, place: number): Range => vars.ranges[place] as Range

type Found = (name: JobOutput) => Range

/** Each work by itself and, where there are several, what they come to together. */
function explainWorks(plan: JobPlan, vars: Variables, ranges: readonly Range[]): Step[] {
  const { works } = plan
  const listed = listWorks(works, workOutputAt(plan), ranges)
  const each = works.map((work, k) => explainWork(work, listed[k] as JobWork, vars))
  if (works.length === 1) return each.flat()
  const numbered = each.flatMap((steps, k) => steps.map((step) => ({ ...step, work: k + 1 })))
  return [
    ...numbered,
    {
      symbol: 'V_mix',
      means: 'mortarVolumeOfAll',
      formula: works.map((_, k) => `V_mix,${k + 1}`).join(' + '),
      numbers: listed.map(({ mortarL }) => working`${mortarL.typical}`).join(' + '),
      result: ranges[jobOutputAt('mortarL')] as Range,
      unit: 'L',
    },
  ]
}

function explainWork(work: PlannedWork, { netL, mortarL }: JobWork, vars: Variables): Step[] {
  const loss = rangeAt(vars, work.loss)
  return [
    ...work.explain(netL),
    given('p_loss', 'loss', scale(loss, 100), '%'),
    {
      symbol: 'V_mix',
      means: 'mortarVolume',
      formula: 'V_net · (1 + p_loss)',
      numbers: working`${netL.typical} · (1 + ${loss.typical})`,
      result: mortarL,
      unit: 'L',
    },
  ]
}

function explainYield(plan: JobPlan, vars: Variables, found: Found, times: number): Step[] {
  const air = plan.fresh.air === ABSENT ? exactly(0) : rangeAt(vars, plan.fresh.air)
  const assumption = (symbol: string, means: string, place: number) =>
    place === ABSENT ? [] : [given(symbol, means, rangeAt(vars, place), 'kg/kg')]
  const { holdsAir } = plan.fresh
  const recipeL = found('recipeMortarL').typical
  const freeL = found('freeL').typical / times
  const solidL = recipeL * (1 - (holdsAir ? air.typical : 0)) - freeL
  return [
    ...(holdsAir ? [given('a_air', 'air', air, '1')] : []),
    ...assumption('w_g', 'grainWater', plan.fresh.grainWater),
    ...assumption('w_f', 'powderWater', plan.fresh.powderWater),
    ...assumption('w_c', 'clayWater', plan.fresh.clayWater),
    {
      symbol: 'V_r',
      means: plan.fresh.waterStated ? 'recipeVolumeStatedWater' : 'recipeVolume',
      formula: holdsAir ? '(Σ m / ρ + W_free) / (1 − a_air)' : 'Σ m / ρ + W_free',
      numbers: holdsAir
        ? working`(${solidL} + ${freeL}) / (1 − ${air.typical})`
        : working`${solidL} + ${freeL}`,
      result: found('recipeMortarL'),
      unit: 'L',
    },
    {
      symbol: 'N',
      means: 'timesRecipe',
      formula: 'V_mix / V_r',
      numbers: working`${found('mortarL').typical} / ${recipeL}`,
      result: { low: times, typical: times, high: times },
      unit: '1',
    },
  ]
}

function explainWater(plan: JobPlan, vars: Variables, found: Found): Step[] {
  const w = (name: JobOutput) => found(name).typical
  const first = rangeAt(vars, plan.firstCharge)
  const slakes = w('boundL') > 0
  return [
    ...(slakes ? [given('W_bound', 'boundWater', found('boundL'), 'L')] : []),
    given('W_free', 'freeWater', found('freeL'), 'L'),
    ...(w('fromSandL') > 0 ? [given('W_sand', 'sandWater', found('fromSandL'), 'L')] : []),
    ...(w('fromLimeL') > 0 ? [given('W_putty', 'puttyWater', found('fromLimeL'), 'L')] : []),
    given('s_first', 'firstShare', first, '1'),
    {
      symbol: 'W_first',
      means: 'firstCharge',
      formula: 's_first · max(0, W_bound + W_free − W_sand − W_putty)',
      numbers: working`${first.typical} · max(0, ${w('boundL')} + ${w('freeL')} − ${w('fromSandL')} − ${w('fromLimeL')})`,
      result: found('firstChargeL'),
      unit: 'L',
    },
    ...(slakes
      ? explainHeat({
          heatKJ: found('heatKJ'),
          startC: found('startC'),
          capacityKJK: found('capacityKJK'),
          averageC: found('averageC'),
          boiledKg: found('boiledL'),
        })
      : []),
    {
      symbol: 'W_total',
      means: 'likelyWater',
      formula: 'max(0, W_bound + W_free + W_steam − W_sand − W_putty)',
      numbers: working`max(0, ${w('boundL')} + ${w('freeL')} + ${w('boiledL')} − ${w('fromSandL')} − ${w('fromLimeL')})`,
      result: found('likelyTotalL'),
      unit: 'L',
    },
  ]
}
