import { exactly, type Range } from './range.ts'
import type { SieveInput } from './sieve.ts'
import { sizeAtPassing } from './sieve-curve.ts'
import type { FinenessSet } from './sieve-series.ts'
import { spreadVector } from './spread.ts'

/** The shares, %, whose sizes are read from a curve. */
export const SHARES = { d10: 10, d30: 30, d50: 50, d60: 60 } as const
export type ShareName = keyof typeof SHARES

interface GradedMasses extends Readonly<Record<ShareName | 'uniformity' | 'curvature', Range>> {
  /** By sieve. */
  readonly retained: readonly Range[]
  readonly cumulative: readonly Range[]
  readonly passing: readonly Range[]
  /** By fineness set. */
  readonly moduli: readonly Range[]
}

const SIZES = ['d10', 'd30', 'd50', 'd60', 'uniformity', 'curvature'] as const

/** All figures of a grading with the ranges that the balance gives them. */
export function spreadMasses(
  input: SieveInput,
  openings: readonly number[],
  sets: readonly FinenessSet[],
): GradedMasses {
  const n = openings.length
  const columns = ['retained', 'cumulative', 'passing'].flatMap((column) =>
    openings.map((_, i) => `${column}.${i}`),
  )
  const outputs = [...columns, ...sets.map(({ id }) => id), ...SIZES]
  const curve: { openingMm: number; passing: number }[] = openings.map((openingMm) => ({
    openingMm,
    passing: 0,
  }))
  const { names, ranges } = massRanges(input)
  const found = spreadVector(names, ranges, outputs, (mass, out) => gradeMasses(mass, out, curve, sets))
  const at = 3 * n + sets.length
  return {
    retained: found.slice(0, n),
    cumulative: found.slice(n, 2 * n),
    passing: found.slice(2 * n, 3 * n),
    moduli: found.slice(3 * n, at),
    ...(Object.fromEntries(SIZES.map((name, k) => [name, found[at + k]])) as Record<
      (typeof SIZES)[number],
      Range
    >),
  }
}

function massRanges(input: SieveInput): { names: string[]; ranges: Range[] } {
  const error = input.balanceG ?? 0
  const around = (massG: number): Range => ({
    low: Math.max(0, massG - error),
    typical: massG,
    high: massG + error,
  })
  return {
    names: [...input.sieves.map((_, i) => `mass.${i}`), 'pan', 'washed'],
    ranges: [
      ...input.sieves.map((sieve) => around(sieve.retainedG)),
      around(input.panG),
      input.washedOutG === undefined ? exactly(0) : around(input.washedOutG),
    ],
  }
}

/** One draw: masses by sieve, then pan and washed out, to shares, moduli, sizes and coefficients. */
function gradeMasses(
  mass: Float64Array,
  out: Float64Array,
  curve: { openingMm: number; passing: number }[],
  sets: readonly FinenessSet[],
): void {
  const n = curve.length
  let total = 0
  for (let i = 0; i < n + 2; i++) total += mass[i] as number
  let cumulative = 0
  for (let i = 0; i < n; i++) {
    const retained = (100 * (mass[i] as number)) / total
    cumulative = Math.min(100, cumulative + retained)
    out[i] = retained
    out[n + i] = cumulative
    out[2 * n + i] = 100 - cumulative
    const point = curve[i]
    if (point !== undefined) point.passing = 100 - cumulative
  }
  let at = 3 * n
  for (const set of sets) {
    let sum = 0
    for (const row of set.rows) sum += out[n + row] as number
    out[at++] = sum / 100
  }
  const d10 = sizeAtPassing(curve, SHARES.d10).mm
  const d30 = sizeAtPassing(curve, SHARES.d30).mm
  const d60 = sizeAtPassing(curve, SHARES.d60).mm
  out[at] = d10
  out[at + 1] = d30
  out[at + 2] = sizeAtPassing(curve, SHARES.d50).mm
  out[at + 3] = d60
  out[at + 4] = d60 / d10
  out[at + 5] = d30 ** 2 / (d60 * d10)
}
