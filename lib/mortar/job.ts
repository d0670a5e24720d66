import { toRange } from './amount.ts'
import { ASSUMED } from './assumptions.ts'
import { planBatch } from './batch.ts'
import { cautionsFor } from './cautions.ts'
import { spreadChoices } from './choices.ts'
import { attempt, type Outcome } from './fault.ts'
import { setsUnderWater } from './hydraulic-limes.ts'
import type { PlannedIngredient } from './ingredient.ts'
import { jobKernel } from './job-kernel.ts'
import {
  ingredientOutputAt,
  type JobOutput,
  type JobPlan,
  jobOutputAt,
  jobOutputNames,
  workOutputAt,
} from './job-layout.ts'
import { FINE_WORK, gaugedSlaked, limesOnSite, planJob, quicklimeOnSite } from './job-plan.ts'
import { explainJob } from './job-steps.ts'
import { takenFigures } from './job-taken.ts'
import type { JobBatch, JobCost, JobIngredient, JobInput, JobSheet } from './job-types.ts'
import { warnings } from './job-warnings.ts'
import { hasWorkOf, listWorks, unitsOf } from './job-works.ts'
import { openStates } from './mix.ts'
import { orderPacks } from './packs.ts'
import { unknownsOf } from './proportions.ts'
import { exactly, type Range, scale } from './range.ts'
import { orderSteps, settingOf } from './sequence.ts'
import { DRAWS } from './spread.ts'
import { keep } from './storage.ts'
import { ABSENT, variables } from './variables.ts'
import { SUMS_VERSION } from './version.ts'

/**
 * A recipe scaled to a piece of work, with the lime, sand, packs, box and mixer that are on site.
 *
 * Everything answers in ids, numbers and units; the same input gives the same sheet. Refuses with all
 * faults at once, each naming its field (`work.jointMm`, `ingredients.1.parts`, `sandMoisturePercent`…).
 */
export const workJob = (input: JobInput): Outcome<JobSheet> =>
  attempt(() => {
    const vars = variables()
    const plan = planJob(input, vars)
    const { ingredients } = plan.mix
    const outputs = jobOutputNames(plan)
    const kernel = jobKernel(plan)
    const ranges = spreadChoices(vars, outputs, openStates(ingredients), kernel, input.draws ?? DRAWS)
    const found = (name: JobOutput) => ranges[jobOutputAt(name)] as Range
    const listed = ingredients.flatMap((ingredient, i) => listIngredient(input, plan, ingredient, i, ranges))
    const quicklime = quicklimeOnSite(plan)
    // What goes into the mixer is what comes of the quicklime, and that is measured once it is there.
    const batch = gaugedSlaked(plan) ? null : batchOf(input, listed, found)
    const works = listWorks(plan.works, workOutputAt(plan), ranges)
    return {
      version: SUMS_VERSION,
      netL: found('netL'),
      mortarL: found('mortarL'),
      unitCount: unitsOf(works),
      works,
      ingredients: listed,
      water: {
        boundL: found('boundL'),
        freeL: found('freeL'),
        boiledL: found('boiledL'),
        fromSandL: found('fromSandL'),
        fromLimeL: found('fromLimeL'),
        firstChargeL: found('firstChargeL'),
        likelyTotalL: found('likelyTotalL'),
      },
      heat: quicklime ? { averageC: found('averageC'), heatKJ: found('heatKJ') } : null,
      batch,
      cost: costOf(input, listed),
      warnings: warnings(input, plan, vars, found, listed, batch),
      sequence: orderSteps({
        method: input.method,
        limes: limesOnSite(plan),
        hydraulic: listed.some(({ role, material }) => role === 'lime' && setsUnderWater(material)),
        fibre: ingredients.some(({ role }) => role === 'fibre'),
        setting: settingOf(ingredients.map(({ role }) => role)),
        grout: works.every(({ kind }) => kind === 'grout'),
        fineWork: hasWorkOf(input, FINE_WORK),
      }),
      storage: listed.flatMap(({ material, role, state }) => keep(material, role, state, input.materials)),
      cautions: cautionsFor(input, listed, quicklime, quicklime && plan.slakesInSand),
      unknowns: unknownsOf(plan.mix),
      assumed: (Object.keys(ASSUMED) as (keyof typeof ASSUMED)[]).filter(
        (name) => vars.names.includes(`assumed.${name}`) && input.assumed?.[name] === undefined,
      ),
      taken: takenFigures(input, plan, vars, kernel, outputs.length),
      steps: explainJob(input, plan, vars, ranges),
    }
  })

function listIngredient(
  input: JobInput,
  plan: JobPlan,
  ingredient: PlannedIngredient,
  i: number,
  ranges: readonly Range[],
): JobIngredient[] {
  const { index, material, role, property, by } = ingredient
  if (role === 'water') return []
  const at = ingredientOutputAt(i)
  const siteState = plan.siteStates[i] ?? null
  const known = role === 'lime' || property.bulkDensity !== ABSENT
  const siteL = known || by === 'volume' ? (ranges[at + 3] as Range) : null
  const siteKg = known || by === 'mass' ? (ranges[at + 4] as Range) : null
  const packKg = input.packsKg?.[material]
  const order = packKg === undefined || siteKg === null ? null : orderPacks(siteKg, packKg)
  const price = input.packPrices?.[material]
  return [
    {
      index,
      material,
      role,
      state: siteState ?? (role === 'aggregate' || role === 'earth' ? heapState(input) : 'dry'),
      siteL: siteL !== null && siteL.high > 0 ? siteL : null,
      siteKg,
      order,
      cost: order === null || price === undefined ? null : scale(order.packs, price),
    },
  ]
}

const heapState = ({ sandMoisturePercent, sandBulkingPercent }: JobInput): 'dry' | 'damp' =>
  toRange(sandMoisturePercent ?? 0).high > 0 || toRange(sandBulkingPercent ?? 0).high > 0 ? 'damp' : 'dry'

/** Fibre, pigment and additions are weighed; so is what has no known volume. */
const BOXED: ReadonlySet<string> = new Set(['lime', 'aggregate', 'pozzolan', 'earth', 'cement', 'gypsum'])

function batchOf(
  input: JobInput,
  listed: readonly JobIngredient[],
  found: (name: JobOutput) => Range,
): JobBatch | null {
  if (input.gaugeBoxL === undefined || input.mixerL === undefined) return null
  const needs = listed.flatMap(({ index, material, role, siteL, siteKg }) =>
    siteKg === null
      ? []
      : [{ index, material, litres: BOXED.has(role) ? (siteL?.typical ?? null) : null, kg: siteKg.typical }],
  )
  const mortarL = found('mortarL').typical
  const batch = planBatch(needs, input.gaugeBoxL, input.mixerL, mortarL)
  if (batch === null) return null
  // A load is measured out in boxes whatever the wall turns out to be: what is unsure of the wall is no part of it.
  const recipes = mortarL / found('recipeMortarL').typical / batch.loads
  return {
    ...batch,
    firstChargeL: scale(found('firstPerRecipeL'), recipes),
    likelyTotalL: scale(found('likelyPerRecipeL'), recipes),
    makesL: scale(found('recipeMortarL'), recipes),
  }
}

function costOf({ labour }: JobInput, listed: readonly JobIngredient[]): JobCost | null {
  const priced = listed.flatMap(({ cost }) => (cost === null ? [] : [cost]))
  if (priced.length === 0 && labour === undefined) return null
  const materials = priced.reduce(add, exactly(0))
  const work = labour === undefined ? null : scale(toRange(labour.hours), labour.ratePerHour)
  return { materials, labour: work, total: work === null ? materials : add(materials, work) }
}

const add = (a: Range, b: Range): Range => ({
  low: a.low + b.low,
  typical: a.typical + b.typical,
  high: a.high + b.high,
})
