import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

export interface CureInput {
  /** Carbonation coefficient, mm for the first day: depth = k · √days. */
  readonly kMmPerRootDay: Range
  /** Thickness that must carbonate. */
  readonly depthMm: Range
  /** 1 where air reaches one face of it, 2 where it reaches both. */
  readonly faces: 1 | 2
  /** Ages to report, days. */
  readonly ages: readonly number[]
}

export interface Cure {
  readonly depths: readonly { readonly days: number; readonly mm: Range; readonly share: Range }[]
  /** Days until all of it has carbonated. */
  readonly fullDays: Range
  readonly steps: readonly Step[]
}

const LAW = 'rilem-carbonation-2023'

/**
 * Carbonation of a lime mortar by the square-root law. The law holds while the pores are moist and open:
 * a wall too wet or too dry stands still, and the hydraulic part of a lime does not wait for air.
 *
 * @returns faults: a coefficient or depth not above nothing, more than two faces, ages negative or none
 */
export function carbonate(input: CureInput): Outcome<Cure> {
  return attempt(() => {
    const check = inspect()
    check.range('kMmPerRootDay', input.kMmPerRootDay, { above: 0, max: 50, unit: 'mm/d^0.5' })
    check.range('depthMm', input.depthMm, { above: 0, max: 5000, unit: 'mm' })
    if (input.faces !== 1 && input.faces !== 2)
      check.refuse({ field: 'faces', code: 'unknown', value: input.faces, limit: 2 })
    if (input.ages.length === 0) check.refuse({ field: 'ages', code: 'empty' })
    input.ages.forEach((days, i) => {
      check.number(`ages.${i}`, days, { min: 0, max: 400_000, unit: 'd' })
    })
    check.finish()
    const ranges = spread({ k: input.kMmPerRootDay, depth: input.depthMm }, ({ k, depth }) => {
      const reach = depth / input.faces
      const out: Record<string, number> = { full: (reach / k) ** 2 }
      input.ages.forEach((days, i) => {
        out[`mm.${i}`] = Math.min(reach, k * Math.sqrt(days))
        out[`share.${i}`] = Math.min(1, (k * Math.sqrt(days)) / reach)
      })
      return out
    })
    const fullDays = ranges.full as Range
    const depths = input.ages.map((days, i) => ({
      days,
      mm: ranges[`mm.${i}`] as Range,
      share: ranges[`share.${i}`] as Range,
    }))
    return { depths, fullDays, steps: explain(input, depths, fullDays) }
  })
}

function explain(input: CureInput, depths: Cure['depths'], fullDays: Range): Step[] {
  const k = input.kMmPerRootDay.typical
  const depth = input.depthMm.typical
  return [
    ...depths.map(({ days, mm }) => ({
      symbol: `x(${days})`,
      means: 'analysis.cureDepth',
      formula: 'min(k · √t, d / faces)',
      numbers: working`min(${k} · √${days}, ${depth} / ${input.faces})`,
      result: mm,
      unit: 'mm',
      source: LAW,
    })),
    {
      symbol: 't_full',
      means: 'analysis.cureFull',
      formula: '(d / faces / k)²',
      numbers: working`(${depth} / ${input.faces} / ${k})²`,
      result: fullDays,
      unit: 'd',
      source: LAW,
    },
  ]
}
