import { LEVEL, limitOf, normalTails } from './distributions.ts'
import { wilson } from './proportion.ts'

export const AGREEMENT_WEIGHTS = ['none', 'linear', 'quadratic'] as const
export type AgreementWeights = (typeof AGREEMENT_WEIGHTS)[number]

/** Agreement of people who scored the same things, beyond what chance alone would give. */
export interface Agreement {
  /** Things scored. */
  readonly subjects: number
  readonly agreed: number
  readonly byChance: number
  readonly kappa: number
  readonly error: number
  readonly low: number
  readonly high: number
  /** Against no agreement beyond chance; null where that has no formula. */
  readonly z: number | null
  readonly p: number | null
}

/**
 * Cohen's kappa (1960, weighted 1968) of two people, with the large-sample error of Fleiss, Cohen and Everitt
 * (1969). Null where it is not defined: nothing scored, or both used one and the same step only.
 *
 * @param counts a square table: `counts[i][j]` things that one scored i and the other j
 * @param weights `none` counts equal scores only; the others count near ones in part, for scales with an order
 * @throws RangeError where the table is not square
 */
export function cohenKappa(
  counts: readonly (readonly number[])[],
  weights: AgreementWeights = 'none',
  level: number = LEVEL,
): Agreement | null {
  const size = counts.length
  counts.forEach((row, i) => {
    if (row.length !== size) throw new RangeError(`counts[${i}] has ${row.length} cells; ${size} will do`)
  })
  const subjects = add(counts.flat())
  if (subjects === 0) return null
  const share = counts.map((row) => row.map((count) => count / subjects))
  const rows = share.map(add)
  const columns = share.map((_, j) => add(share.map((row) => row[j] ?? 0)))
  const weight = (i: number, j: number) => weigh(Math.abs(i - j), size, weights)
  const over = (cell: (i: number, j: number) => number) =>
    add(rows.flatMap((_, i) => columns.map((_, j) => cell(i, j))))
  const p = (i: number, j: number) => share[i]?.[j] ?? 0
  const chance = (i: number, j: number) => (rows[i] ?? 0) * (columns[j] ?? 0)
  const agreed = over((i, j) => weight(i, j) * p(i, j))
  const byChance = over((i, j) => weight(i, j) * chance(i, j))
  if (1 - byChance < 1e-12) return null
  const kappa = (agreed - byChance) / (1 - byChance)
  const usual = rows.map((_, k) => ({
    row: add(columns.map((column, j) => weight(k, j) * column)),
    column: add(rows.map((row, i) => weight(i, k) * row)),
  }))
  const marginal = (i: number, j: number) => (usual[i]?.row ?? 0) + (usual[j]?.column ?? 0)
  const scale = subjects * (1 - byChance) ** 2
  const spread = over((i, j) => p(i, j) * (weight(i, j) - marginal(i, j) * (1 - kappa)) ** 2)
  const variance = (spread - (kappa - byChance * (1 - kappa)) ** 2) / scale
  const nullVariance =
    (over((i, j) => chance(i, j) * (weight(i, j) - marginal(i, j)) ** 2) - byChance ** 2) / scale
  return report({ subjects, agreed, byChance, kappa, variance, nullVariance, level })
}

function weigh(apart: number, size: number, weights: AgreementWeights): number {
  if (weights === 'none') return apart === 0 ? 1 : 0
  const share = apart / (size - 1 || 1)
  return weights === 'linear' ? 1 - share : 1 - share * share
}

/**
 * Turns variances into the error, limits within −1 and 1, and the test against chance. Where all agree nothing varies,
 * which is no certainty: the lower limit then comes from Wilson's for all of so many, chance held as it was found.
 */
export function report({
  variance,
  nullVariance,
  level,
  ...found
}: {
  subjects: number
  agreed: number
  byChance: number
  kappa: number
  variance: number
  nullVariance: number | null
  level: number
}): Agreement {
  const error = Math.sqrt(Math.max(0, variance))
  const half = limitOf(level) * error
  const z = nullVariance !== null && nullVariance > 0 ? found.kappa / Math.sqrt(nullVariance) : null
  return {
    ...found,
    error,
    low: found.agreed === 1 ? lowWhereAllAgree(found, level) : Math.max(-1, found.kappa - half),
    high: Math.min(1, found.kappa + half),
    z,
    p: z === null ? null : normalTails(z),
  }
}

const lowWhereAllAgree = (
  { subjects, byChance }: { subjects: number; byChance: number },
  level: number,
): number => ((wilson(subjects, subjects, level)?.low ?? 0) - byChance) / (1 - byChance)

export const add = (numbers: readonly number[]): number => numbers.reduce((sum, x) => sum + x, 0)
