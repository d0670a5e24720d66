import { type Amount, toRange } from './amount.ts'
import type { Inspection } from './inspect.ts'
import type { JobInput, JobWork, WorkInput } from './job-types.ts'
import { type Range, scale } from './range.ts'
import { planWork, type WorkKind, type WorkPlan } from './takeoff.ts'
import { at, type Variables } from './variables.ts'

/** Pieces of work that one job may take. */
export const MOST_WORKS = 8

/** One piece of work of a job, with its places among the variables. */
export interface PlannedWork extends WorkPlan {
  readonly kind: WorkKind
  readonly loss: number
}

/** Every piece of work of a job, the first as the job names it itself. */
const worksOf = ({ work, lossPercent, furtherWorks = [] }: JobInput): readonly WorkInput[] => [
  { work, ...(lossPercent !== undefined && { lossPercent }) },
  ...furtherWorks,
]

/** Is any of a job's works of one of these kinds? */
export const hasWorkOf = (input: JobInput, kinds: ReadonlySet<string>): boolean =>
  worksOf(input).some(({ work }) => kinds.has(work.kind))

/** Where the faults and the streams of a work are named: nothing before those of the first. */
const prefixOf = (k: number): string => (k === 0 ? '' : `furtherWorks.${k - 1}.`)

/**
 * Gives every dimension and every loss its place. Each work's own are drawn apart, since each was measured by
 * itself; what the recipe and the materials leave open is one variable for all of them.
 */
export function planWorks(input: JobInput, vars: Variables, check: Inspection): PlannedWork[] {
  const works = worksOf(input)
  if (works.length > MOST_WORKS)
    check.refuse({ field: 'furtherWorks', code: 'too-large', value: works.length - 1, limit: MOST_WORKS - 1 })
  return works.map(({ work, lossPercent = 0 }, k) => {
    const loss = `${prefixOf(k)}lossPercent`
    const planned = planWork(work, vars, check, `${prefixOf(k)}work.`)
    check.range(loss, toRange(lossPercent), { min: 0, max: 300, unit: '%' })
    return {
      ...planned,
      kind: work.kind,
      loss: vars.add(loss, share(lossPercent)),
    }
  })
}

const share = (percent: Amount): Range => scale(toRange(percent), 0.01)

/** Outputs of each work of a job of several, in this order; a single work's are the job's own. */
export const PER_WORK = ['netL', 'mortarL', 'unitCount'] as const

/** Litres in place and to be made, and units, of all works together; each work's own from `at0` on in `out`. */
export function sumWorks(
  x: Float64Array,
  works: readonly PlannedWork[],
  at0: number,
  out: Float64Array,
): void {
  let netL = 0
  let mortarL = 0
  let units = 0
  for (let k = 0; k < works.length; k++) {
    const work = works[k] as PlannedWork
    const net = work.netL(x)
    const made = net * (1 + at(x, work.loss))
    const count = work.unitCount(x)
    netL += net
    mortarL += made
    units += count
    if (works.length === 1) continue
    const place = at0 + k * PER_WORK.length
    out[place] = net
    out[place + 1] = made
    out[place + 2] = count
  }
  out[0] = netL
  out[1] = mortarL
  out[2] = units
}

/** Each work with its own figures. */
export const listWorks = (works: readonly PlannedWork[], at0: number, ranges: readonly Range[]): JobWork[] =>
  works.map(({ kind, spec }, k) => {
    const place = works.length === 1 ? 0 : at0 + k * PER_WORK.length
    return {
      kind,
      netL: ranges[place] as Range,
      mortarL: ranges[place + 1] as Range,
      unitCount: spec.unitCount === undefined ? null : (ranges[place + 2] as Range),
    }
  })

/** Units of the one work that tells: those of two works may be of two sizes, and add up to nothing. */
export function unitsOf(works: readonly JobWork[]): Range | null {
  const telling = works.flatMap(({ unitCount }) => unitCount ?? [])
  return telling.length === 1 ? (telling[0] as Range) : null
}
