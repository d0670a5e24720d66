import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { exactly, type Range } from './range.ts'
import { type CurvePoint, sizeAtPassing } from './sieve-curve.ts'
import { type FinenessSet, finenessSets } from './sieve-series.ts'
import { explainGrading } from './sieve-steps.ts'
import { spread } from './spread.ts'

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
  readonly steps: readonly Step[]
}

const SHARES = { d10: 10, d30: 30, d50: 50, d60: 60 } as const
type ShareName = keyof typeof SHARES

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
    const ranges = spread(massRanges(input), (mass) => gradeMasses(openings, sets, mass))
    const at = (name: string) => ranges[name] ?? exactly(0)
    const rows = openings.map((openingMm, i) => ({
      openingMm,
      retained: at(`retained.${i}`),
      cumulative: at(`cumulative.${i}`),
      passing: at(`passing.${i}`),
    }))
    const curve = rows.map((row) => ({ openingMm: row.openingMm, passing: row.passing.typical }))
    const size = (name: ShareName): Size => {
      const { kind, mm } = sizeAtPassing(curve, SHARES[name])
      return kind === 'size' ? { kind, mm: at(name) } : { kind, mm }
    }
    const sizes = { d10: size('d10'), d30: size('d30'), d50: size('d50'), d60: size('d60') }
    const known = (...names: ShareName[]) => names.every((name) => sizes[name].kind === 'size')
    const grading = {
      totalG: totalOf(input),
      rows,
      finenessModuli: sets.map((set) => ({ set: set.id, value: at(`fineness.${set.id}`) })),
      ...sizes,
      uniformity: known('d10', 'd60') ? at('uniformity') : null,
      curvature: known('d10', 'd30', 'd60') ? at('curvature') : null,
      lossPercent: lossOf(input),
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

function massRanges(input: SieveInput): Record<string, Range> {
  const error = input.balanceG ?? 0
  const around = (massG: number): Range => ({
    low: Math.max(0, massG - error),
    typical: massG,
    high: massG + error,
  })
  const ranges: Record<string, Range> = {
    pan: around(input.panG),
    washed: input.washedOutG === undefined ? exactly(0) : around(input.washedOutG),
  }
  input.sieves.forEach((sieve, i) => {
    ranges[`mass.${i}`] = around(sieve.retainedG)
  })
  return ranges
}

function gradeMasses(
  openings: readonly number[],
  sets: readonly FinenessSet[],
  mass: Readonly<Record<string, number>>,
): Record<string, number> {
  const masses = openings.map((_, i) => mass[`mass.${i}`] ?? 0)
  const total = masses.reduce((sum, m) => sum + m, (mass.pan ?? 0) + (mass.washed ?? 0))
  const out: Record<string, number> = {}
  const curve: CurvePoint[] = []
  let cumulative = 0
  masses.forEach((m, i) => {
    const retained = (100 * m) / total
    cumulative = Math.min(100, cumulative + retained)
    out[`retained.${i}`] = retained
    out[`cumulative.${i}`] = cumulative
    out[`passing.${i}`] = 100 - cumulative
    curve.push({ openingMm: openings[i] ?? 0, passing: 100 - cumulative })
  })
  for (const set of sets)
    out[`fineness.${set.id}`] = set.rows.reduce((sum, i) => sum + (out[`cumulative.${i}`] ?? 0), 0) / 100
  const size = (name: ShareName) => sizeAtPassing(curve, SHARES[name]).mm
  const d = { d10: size('d10'), d30: size('d30'), d50: size('d50'), d60: size('d60') }
  return { ...out, ...d, uniformity: d.d60 / d.d10, curvature: d.d30 ** 2 / (d.d60 * d.d10) }
}
