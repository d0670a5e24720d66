import { chiSquareTail } from './distributions.ts'
import type { Counted } from './interval.ts'
import type { IntervalTest } from './interval-test.ts'
import type { Filed } from './resample.ts'
import { scoreIntervals } from './scores.ts'
import { quadraticForm } from './solve.ts'

/** Walls of one group, by its place, that fared alike. */
export interface GroupedRow extends Counted {
  readonly group: number
}

/**
 * Tests whether two or more great groups differ, from interval-censored times: the same scores as `testIntervals`,
 * with a variance that takes whole buildings as the independent units (a sandwich, as Liang and Zeger 1986 have it),
 * whether a building has walls of one group or of several. Held against the chi-square distribution, so it wants
 * many buildings; `npm run bench -- level` shows how often it then finds a difference where there is none.
 *
 * Null where there is nothing to compare: one group, or no two buildings that differ.
 *
 * @param names of the groups, by place
 * @throws RangeError where an interval is none
 */
export function testBuildings(
  { rows, clusters }: Filed<GroupedRow>,
  names: readonly string[],
): IntervalTest | null {
  const walls = new Array<number>(names.length).fill(0)
  for (const { group, weight } of rows) walls[group] = (walls[group] as number) + weight
  const present = names.flatMap((_, group) => ((walls[group] as number) > 0 ? [group] : []))
  if (present.length < 2 || clusters.count < 2) return null
  const scores = scoreIntervals(rows)
  const sums = new Array<number>(names.length).fill(0)
  rows.forEach(({ group, weight }, i) => {
    sums[group] = (sums[group] as number) + weight * (scores[i] as number)
  })
  // The last group follows from the others, since all scores add up to 0.
  const tested = present.slice(0, -1)
  const all = walls.reduce((sum, count) => sum + count, 0)
  const total = sums.reduce((sum, one) => sum + one, 0)
  const shares = tested.map((group) => (walls[group] as number) / all)
  const centred = tested.map((group, g) => (sums[group] as number) - (shares[g] as number) * total)
  const covariance = spreadOf({ rows, clusters }, scores, tested, shares)
  const chiSquare = quadraticForm(covariance, centred)
  if (chiSquare === null) return null
  const degrees = tested.length
  return {
    groups: present.map((group) => ({
      group: names[group] as string,
      walls: walls[group] as number,
      score: sums[group] as number,
    })),
    chiSquare,
    degrees,
    p: chiSquareTail(chiSquare, degrees),
    shuffles: 0,
  }
}

/** Sums over buildings of the products of what each adds to the groups' scores. */
function spreadOf(
  { rows, clusters: { count, start, row, weight } }: Filed<GroupedRow>,
  scores: Float64Array,
  tested: readonly number[],
  shares: readonly number[],
): number[][] {
  const covariance = tested.map(() => new Array<number>(tested.length).fill(0))
  const added = new Float64Array(tested.length)
  for (let c = 0; c < count; c++) {
    added.fill(0)
    for (let k = start[c] as number; k < (start[c + 1] as number); k++) {
      const place = row[k] as number
      const score = (weight[k] as number) * (scores[place] as number)
      const { group } = rows[place] as GroupedRow
      for (let g = 0; g < tested.length; g++)
        added[g] = (added[g] as number) + score * ((group === tested[g] ? 1 : 0) - (shares[g] as number))
    }
    for (let g = 0; g < tested.length; g++) {
      const line = covariance[g] as number[]
      for (let h = 0; h < tested.length; h++)
        line[h] = (line[h] as number) + (added[g] as number) * (added[h] as number)
    }
  }
  // As many buildings as there are, less the one that the mean takes up.
  return covariance.map((line) => line.map((sum) => (sum * count) / (count - 1)))
}
