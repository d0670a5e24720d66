import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Basis, Range } from './range.ts'
import { sizeAtPassing } from './sieve-curve.ts'
import { type FinenessSet, finenessSets, LOSS_LIMITS } from './sieve-series.ts'
import { explainGrading } from './sieve-steps.ts'
import { SHARES, type ShareName, spreadMasses } from './sieve-sum.ts'

/** One sieve of the stack and what stayed on it. */
export interface SieveMass {
  readonly openingMm: number
  readonly retainedG: number
}

export interface SieveInput {
  /** Coarsest first. */
  readonly sieves: readonly SieveMass[]
  readonly panG: number
  /** Dry mass lost by washing over the finest sieve before sieving. */
  readonly washedOutG?: number | undefined
  /** Dry mass put on the stack, after washing, if it was weighed; it shows what was lost on the way. */
  readonly startG?: number | undefined
  /** How far off each weighing may be, either way. */
  readonly balanceG?: number | undefined
}

/** A size that a share of the sand is finer than, or the end of the stack that it lies beyond. */
export type Size =
  | { readonly kind: 'size'; readonly mm: Range }
  | { readonly kind: 'finer-than' | 'coarser-than'; readonly mm: number }

export interface GradingRow {
  readonly openingMm: number
  /** All in % of the dry mass. */
  readonly retained: Range
  readonly cumulative: Range
  readonly passing: Range
}

export interface LossCheck {
  readonly id: string
  readonly limitPercent: number
  readonly outcome: 'within' | 'over' | 'not-verified'
  readonly basis: Basis
  readonly source: string | null
}

export interface Grading {
  readonly totalG: number
  readonly rows: readonly GradingRow[]
  /** One for each definition whose sieves were all used; they are not comparable with one another. */
  readonly finenessModuli: readonly { readonly set: FinenessSet['id']; readonly value: Range }[]
  readonly d10: Size
  readonly d30: Size
  readonly d50: Size
  readonly d60: Size
  /** D60/D10 and D30²/(D60·D10); null where a size lies beyond the stack. */
  readonly uniformity: Range | null
  readonly curvature: Range | null
  /** What vanished between the first weighing and the last, % of the first; null if it was not weighed. */
  readonly lossPercent: number | null
  /** That loss (or gain) by each standard's limit; a remembered limit passes and fails nothing. */
  readonly lossChecks: readonly LossCheck[]
  readonly steps: readonly Step[]
}

/**
 * Grading of a sand from the masses on its sieves (EN 933-1, ASTM C136 or a stack of one's own).
 *
 * Sizes between two sieves are read from a straight line on the logarithm of size. Ranges come from the
 * balance alone; what the sample fails to show of the heap is not in them.
 *
 * @returns faults: sieves out of order or none, masses negative or all nothing, balance coarser than sense
 */
export function gradeSand(input: SieveInput): Outcome<Grading> {
  return attempt(() => {
    refuseBadSieves(input)
    const openings = input.sieves.map((sieve) => sieve.openingMm)
    const sets = finenessSets(openings)
    const found = spreadMasses(input, openings, sets)
    const rows = openings.map((openingMm, i) => ({
      openingMm,
      retained: found.retained[i] as Range,
      cumulative: found.cumulative[i] as Range,
      passing: found.passing[i] as Range,
    }))
    const curve = rows.map((row) => ({ openingMm: row.openingMm, passing: row.passing.typical }))
    const size = (name: ShareName): Size => {
      const { kind, mm } = sizeAtPassing(curve, SHARES[name])
      return kind === 'size' ? { kind, mm: found[name] } : { kind, mm }
    }
    const sizes = { d10: size('d10'), d30: size('d30'), d50: size('d50'), d60: size('d60') }
    const known = (...names: ShareName[]) => names.every((name) => sizes[name].kind === 'size')
    const loss = lossOf(input)
    const grading = {
      totalG: totalOf(input),
      rows,
      finenessModuli: sets.map((set, k) => ({ set: set.id, value: found.moduli[k] as Range })),
      ...sizes,
      uniformity: known('d10', 'd60') ? found.uniformity : null,
      curvature: known('d10', 'd30', 'd60') ? found.curvature : null,
      lossPercent: loss,
      lossChecks: loss === null ? [] : LOSS_LIMITS.map((limit) => judgeLoss(loss, limit)),
    }
    return { ...grading, steps: explainGrading(grading) }
  })
}

function refuseBadSieves(input: SieveInput): void {
  const check = inspect()
  if (input.sieves.length === 0) check.refuse({ field: 'sieves', code: 'empty' })
  input.sieves.forEach((sieve, i) => {
    const above = input.sieves[i - 1]?.openingMm
    check.number(`sieves.${i}.openingMm`, sieve.openingMm, { above: 0, unit: 'mm' })
    check.number(`sieves.${i}.retainedG`, sieve.retainedG, { min: 0, unit: 'g' })
    if (above !== undefined && sieve.openingMm >= above)
      check.refuse({
        field: `sieves.${i}.openingMm`,
        code: 'out-of-order',
        value: sieve.openingMm,
        limit: above,
        unit: 'mm',
      })
  })
  check.number('panG', input.panG, { min: 0, unit: 'g' })
  check.number('washedOutG', input.washedOutG ?? 0, { min: 0, unit: 'g' })
  check.number('startG', input.startG ?? 1, { above: 0, unit: 'g' })
  check.finish()
  const total = totalOf(input)
  if (total <= 0) check.refuse({ field: 'sieves', code: 'empty', value: total, unit: 'g' })
  check.number('totalG', total, { unit: 'g' })
  // Off by a tenth of the whole on one weighing: that balance cannot grade this sample.
  check.number('balanceG', input.balanceG ?? 0, { min: 0, max: total / 10, unit: 'g' })
  check.finish()
}

const totalOf = (input: SieveInput): number =>
  input.sieves.reduce((sum, sieve) => sum + sieve.retainedG, input.panG + (input.washedOutG ?? 0))

function lossOf(input: SieveInput): number | null {
  if (input.startG === undefined) return null
  return (100 * (input.startG - (totalOf(input) - (input.washedOutG ?? 0)))) / input.startG
}

function judgeLoss(lossPercent: number, limit: (typeof LOSS_LIMITS)[number]): LossCheck {
  const { id, percent, basis, source } = limit
  // More on the balance than was put on the stack is as wrong as less.
  const judged = Math.abs(lossPercent) <= percent ? 'within' : 'over'
  return { id, limitPercent: percent, outcome: basis === 'memory' ? 'not-verified' : judged, basis, source }
}
