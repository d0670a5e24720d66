import { digits, type Step } from './explain.ts'
import { attempt, MortarFault, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { exactly, type Range, scale } from './range.ts'
import { solveBlend } from './sieve-blend-solve.ts'
import { type CurvePoint, passingAt } from './sieve-curve.ts'
import type { RangedCurve } from './sieve-limits.ts'
import { spread } from './spread.ts'

export interface BlendInput {
  readonly sands: readonly {
    /** Coarsest first. */
    readonly curve: RangedCurve
    /** Dry and loose, kg/m³; with one for each sand, parts by volume are given too. */
    readonly bulkDensityKgM3?: Range | undefined
  }[]
  /** Share that should pass each opening, %, coarsest first. */
  readonly target: readonly CurvePoint[]
}

export interface Blend {
  /** Share of each sand in the dry mass; they add up to 1. */
  readonly shares: readonly Range[]
  /** Share of each sand in the sum of the dry loose volumes; null unless every sand's density is given. */
  readonly volumeShares: readonly Range[] | null
  readonly rows: readonly {
    readonly openingMm: number
    readonly target: number
    readonly passing: Range
    /** Blend less target, points of %. */
    readonly residual: number
  }[]
  /** Root of the mean square of the residuals, points of %. */
  readonly residual: Range
  readonly steps: readonly Step[]
}

/** Each draw solves a least-squares problem: fewer draws keep a blend quick, and shares are rough anyway. */
const BLEND_DRAWS = 400

/**
 * The shares of two or more sands whose blend comes nearest to a target grading: non-negative least
 * squares over the target's sieves, shares adding up to 1.
 *
 * @returns faults: fewer than two sands, no target, a target sieve that a sand's stack does not reach
 */
export function blendSands(input: BlendInput): Outcome<Blend> {
  return attempt(() => {
    refuseBadBlend(input)
    const passing = input.sands.map((sand, s) =>
      input.target.map((point, t) => reach(sand.curve, point.openingMm, `sands.${s}`, `target.${t}`)),
    )
    const inputs: Record<string, Range> = {}
    passing.forEach((row, s) => {
      row.forEach((range, t) => {
        inputs[`passing.${s}.${t}`] = range
      })
      inputs[`density.${s}`] = input.sands[s]?.bulkDensityKgM3 ?? exactly(1)
    })
    const targets = input.target.map((point) => point.passing)
    const sum = (x: Readonly<Record<string, number>>) => solveBlend(passing.length, targets, x)
    const ranges = spread(inputs, sum, BLEND_DRAWS)
    const at = (name: string) => ranges[name] ?? exactly(0)
    const shares = passing.map((_, s) => at(`share.${s}`))
    const rows = input.target.map((point, t) => ({
      openingMm: point.openingMm,
      target: point.passing,
      passing: at(`blend.${t}`),
      residual: at(`blend.${t}`).typical - point.passing,
    }))
    const dense = input.sands.every((sand) => sand.bulkDensityKgM3 !== undefined)
    const volumeShares = dense ? passing.map((_, s) => at(`volume.${s}`)) : null
    const residual = at('residual')
    return { shares, volumeShares, rows, residual, steps: explain(shares, volumeShares, residual) }
  })
}

function refuseBadBlend(input: BlendInput): void {
  const check = inspect()
  if (input.sands.length < 2)
    check.refuse({ field: 'sands', code: 'too-small', value: input.sands.length, limit: 2 })
  if (input.target.length === 0) check.refuse({ field: 'target', code: 'empty' })
  input.target.forEach((point, t) => {
    check.number(`target.${t}.openingMm`, point.openingMm, { above: 0, unit: 'mm' })
    check.number(`target.${t}.passing`, point.passing, { min: 0, max: 100, unit: '%' })
  })
  input.sands.forEach((sand, s) => {
    if (sand.bulkDensityKgM3 !== undefined)
      check.range(`sands.${s}.bulkDensityKgM3`, sand.bulkDensityKgM3, { above: 0, unit: 'kg/m3' })
    sand.curve.forEach((point, p) => {
      check.number(`sands.${s}.curve.${p}.openingMm`, point.openingMm, { above: 0, unit: 'mm' })
      check.range(`sands.${s}.curve.${p}.passing`, point.passing, { min: 0, max: 100, unit: '%' })
    })
  })
  check.finish()
}

function reach(curve: RangedCurve, openingMm: number, sand: string, target: string): Range {
  const end = (pick: 'low' | 'typical' | 'high') =>
    passingAt(
      curve.map((point) => ({ openingMm: point.openingMm, passing: point.passing[pick] })),
      openingMm,
    )
  const typical = end('typical')
  if (typical === null)
    throw new MortarFault({
      field: `${sand}.curve`,
      code: 'inconsistent',
      value: target,
      limit: openingMm,
      unit: 'mm',
    })
  return { low: end('low') ?? typical, typical, high: end('high') ?? typical }
}

function explain(shares: readonly Range[], volumes: readonly Range[] | null, residual: Range): Step[] {
  return [
    ...shares.map((share, s) => ({
      symbol: `x_${s + 1}`,
      means: 'analysis.blendShare',
      formula: 'min Σ (Σ x·P − T)², x ≥ 0, Σx = 1',
      numbers: digits(100 * share.typical),
      result: scale(share, 100),
      unit: '%',
    })),
    ...(volumes ?? []).map((share, s) => ({
      symbol: `v_${s + 1}`,
      means: 'analysis.blendVolumeShare',
      formula: '(x / ρ) / Σ (x / ρ)',
      numbers: digits(100 * share.typical),
      result: scale(share, 100),
      unit: '%',
    })),
    {
      symbol: 'RMS',
      means: 'analysis.blendResidual',
      formula: '√(Σ (blend − T)² / n)',
      numbers: digits(residual.typical),
      result: residual,
      unit: '%',
    },
  ]
}
