import { chiSquareTail } from './distributions.ts'
import { momentsOf, shuffleGroups, stratify, sumScores, writeOut } from './exchange.ts'
import { type Clustered, type Counted, countWalls, weightOf } from './interval.ts'
import { randomOf } from './random.ts'
import { scoreIntervals } from './scores.ts'
import { quadraticForm } from './solve.ts'

export type Grouped = Counted & { readonly group: string; readonly cluster?: Clustered['cluster'] }

export interface IntervalTest {
  /** Walls of each group, and how much sooner than the rest they changed: scores above 0 are sooner. */
  readonly groups: readonly { readonly group: string; readonly walls: number; readonly score: number }[]
  readonly chiSquare: number
  readonly degrees: number
  /** From shuffled groups where they were shuffled, else from the chi-square distribution. */
  readonly p: number
  readonly shuffles: number
}

export interface IntervalTestOptions {
  /** How often to shuffle; 0 takes the chi-square distribution. 999 for up to 500 units unless said, else 0. */
  readonly shuffles?: number
  readonly seed?: number
}

/**
 * Tests whether two or more groups differ, from interval-censored times: Sun's log-rank scores with the
 * variance of shuffling the groups (Fay and Shaw 2010). A building all of one group is shuffled whole; within
 * a building with several groups its walls are. Rows without a building are shuffled wall by wall.
 *
 * Null where there is nothing to compare: one group, or no difference that shuffling could make.
 *
 * @throws RangeError where an interval is none
 */
export function testIntervals(
  rows: readonly Grouped[],
  options: IntervalTestOptions = {},
): IntervalTest | null {
  const counted = rows.filter((row) => weightOf(row) > 0)
  const names = [...new Set(counted.map(({ group }) => group))]
  if (names.length < 2) return null
  const scores = scoreIntervals(counted)
  const strata = stratify(
    counted.map((row, i) => ({
      score: scores[i] as number,
      group: names.indexOf(row.group),
      count: weightOf(row),
      ...(row.cluster === undefined ? {} : { cluster: row.cluster }),
    })),
  )
  const degrees = names.length - 1
  const { expected, covariance } = momentsOf(strata, degrees)
  const chiSquareOf = (sums: readonly number[]) =>
    quadraticForm(
      covariance,
      sums.map((sum, g) => sum - (expected[g] as number)),
    )
  const chiSquare = chiSquareOf(sumScores(strata, degrees))
  if (chiSquare === null) return null
  const units = strata.reduce((sum, stratum) => sum + stratum.reduce((n, { count }) => n + count, 0), 0)
  const { shuffles = units <= 500 ? 999 : 0, seed } = options
  const whole = shuffles > 0 ? strata.map(writeOut) : strata
  const random = randomOf(seed)
  let asFar = 0
  for (let k = 0; k < shuffles; k++) {
    const shuffled =
      chiSquareOf(
        sumScores(
          whole.map((stratum) => shuffleGroups(stratum, random)),
          degrees,
        ),
      ) ?? 0
    if (shuffled >= chiSquare * (1 - 1e-9)) asFar++
  }
  const groups = names.map((group) => {
    const own = counted.flatMap((row, i) =>
      row.group === group ? [weightOf(row) * (scores[i] as number)] : [],
    )
    const walls = countWalls(counted.filter((row) => row.group === group))
    return { group, walls, score: own.reduce((sum, x) => sum + x, 0) }
  })
  const p = shuffles > 0 ? (1 + asFar) / (1 + shuffles) : chiSquareTail(chiSquare, degrees)
  return { groups, chiSquare, degrees, p, shuffles }
}
