import { toRange } from './amount.ts'
import type { Batch } from './batch.ts'
import { BOILING_C } from './constants.ts'
import { setsUnderWater } from './hydraulic-limes.ts'
import type { JobOutput, JobPlan } from './job-layout.ts'
import { FINE_WORK, gaugedSlaked, quicklimeOnSite } from './job-plan.ts'
import type { JobIngredient, JobInput, JobWarning } from './job-types.ts'
import { hasWorkOf } from './job-works.ts'
import { unknownsOf } from './proportions.ts'
import type { Range } from './range.ts'
import type { Variables } from './variables.ts'

/** Below this average, practice holds, lump lime drowns: it slakes slowly and leaves lumps. */
const COOL_C = 60
/** Share of free magnesia from which late swelling is a danger to fine work. */
const MAGNESIA = 0.05
/** Rounding to half boxes that a reader should know of, %. */
const ROUNDING_PERCENT = 5

const GROUT: ReadonlySet<string> = new Set(['grout'])

/** What a mason should know before mixing; ids with the figure that called them. */
export function warnings(
  input: JobInput,
  plan: JobPlan,
  vars: Variables,
  found: (name: JobOutput) => Range,
  listed: readonly JobIngredient[],
  batch: Batch | null,
): JobWarning[] {
  return [
    ...(hasWorkOf(input, GROUT) ? [{ id: 'grout-must-run' } as const] : []),
    ...settingInPutty(plan, listed),
    ...(gaugedSlaked(plan) ? [{ id: 'gauge-once-slaked' } as const] : []),
    ...(quicklimeOnSite(plan) ? [...heatWarnings(found), ...swelling(input, plan)] : []),
    ...magnesia(plan, vars),
    ...measuring(input, plan, listed, batch),
    ...(found('likelyTotalL').typical === 0 && found('fromSandL').typical > 0
      ? [{ id: 'sand-brings-enough-water' } as const]
      : []),
    ...(plan.mix.ingredients.some(({ limeStates }) => limeStates.length > 1)
      ? [{ id: 'state-was-not-stated' } as const]
      : []),
    ...(plan.slakesInSand && !quicklimeOnSite(plan) && plan.siteStates.some((state) => state !== null)
      ? [{ id: 'method-needs-quicklime' } as const]
      : []),
    ...(input.limePurityPercent === undefined
      ? []
      : [{ id: 'purity-differs', value: toRange(input.limePurityPercent).typical, unit: '%' } as const]),
    ...unknownsOf(plan.mix).map(({ material }) => ({ id: 'property-unknown', material }) as const),
  ]
}

function heatWarnings(found: (name: JobOutput) => Range): JobWarning[] {
  const { typical, high } = found('averageC')
  const figure = { value: typical, unit: 'C' }
  const short = found('slakingSpareL').low < 0
  return [
    ...(typical >= BOILING_C
      ? [{ id: 'average-reaches-boiling', ...figure } as const]
      : high >= BOILING_C
        ? [{ id: 'average-may-reach-boiling', value: high, unit: 'C' } as const]
        : []),
    ...(typical < COOL_C ? [{ id: 'slakes-cool', ...figure } as const] : []),
    ...(short ? [{ id: 'water-short-of-slaking' } as const] : []),
  ]
}

/** Magnesia stays unslaked in a hydrate or a putty made without pressure, so it is told for every state. */
const magnesia = ({ mix }: JobPlan, vars: Variables): JobWarning[] =>
  mix.ingredients
    .filter(({ property }) => (vars.ranges[property.freeMgO]?.typical ?? 0) > MAGNESIA)
    .map(({ material }) => ({ id: 'late-swelling-magnesia', material }))

function swelling(input: JobInput, plan: JobPlan): JobWarning[] {
  return [
    ...(plan.siteStates.includes('lump-quicklime') ? [{ id: 'late-swelling-lumps' } as const] : []),
    ...(plan.siteStates.includes('ground-quicklime') ? [{ id: 'late-swelling-coarse-grind' } as const] : []),
    ...(hasWorkOf(input, FINE_WORK) ? [{ id: 'trial-pat-first' } as const] : []),
    ...(plan.slakesInSand && plan.mix.ingredients.some(({ role }) => role === 'fibre')
      ? [{ id: 'fibre-not-in-hot-lime' } as const]
      : []),
  ]
}

/** Hydraulic limes that are on site as putty, or would be run to it. */
const settingInPutty = (plan: JobPlan, listed: readonly JobIngredient[]): JobWarning[] =>
  listed
    .filter(
      ({ role, material, state }) =>
        role === 'lime' &&
        setsUnderWater(material) &&
        (state === 'putty' || (quicklimeOnSite(plan) && !plan.slakesInSand)),
    )
    .map(({ material }) => ({ id: 'sets-under-water', material }))

function measuring(
  input: JobInput,
  plan: JobPlan,
  listed: readonly JobIngredient[],
  batch: Batch | null,
): JobWarning[] {
  const boxed = listed.some(({ siteL }) => siteL !== null)
  const fits =
    input.gaugeBoxL === undefined || input.mixerL === undefined || gaugedSlaked(plan) || batch !== null
  return [
    ...(boxed ? [{ id: 'shovel-is-no-measure' } as const] : []),
    ...(fits ? [] : [{ id: 'box-too-large-for-mixer' } as const]),
    ...(batch !== null && batch.roundingPercent > ROUNDING_PERCENT
      ? [{ id: 'box-rounding', value: batch.roundingPercent, unit: '%' } as const]
      : []),
  ]
}
