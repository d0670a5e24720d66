import type { Clustered } from './interval.ts'
import type { Random } from './random.ts'

/** A wall, or a whole building, that could as well have been in another group if groups made no difference. */
export interface Unit {
  readonly score: number
  /** Place of its group. */
  readonly group: number
  /** How many equal ones there are. */
  readonly count: number
}

/** Units that can change places with one another. */
export type Stratum = readonly Unit[]

type Scored = Unit & { readonly cluster?: Clustered['cluster'] }

/**
 * Says which units can change places: buildings all of one group with each other, each with the sum of its
 * scores; the walls of a building with several groups among themselves; walls of no building among themselves.
 */
export function stratify(walls: readonly Scored[]): Stratum[] {
  const alone = walls.filter(({ cluster }) => cluster === undefined)
  const buildings = new Map<string | number, Scored[]>()
  for (const wall of walls) {
    if (wall.cluster === undefined) continue
    const file = buildings.get(wall.cluster)
    if (file === undefined) buildings.set(wall.cluster, [wall])
    else file.push(wall)
  }
  const files = [...buildings.values()]
  const isMixed = (file: readonly Scored[]) => file.some(({ group }) => group !== file[0]?.group)
  const whole = files
    .filter((file) => !isMixed(file))
    .map((file) => ({
      score: file.reduce((sum, { score, count }) => sum + score * count, 0),
      group: file[0]?.group ?? 0,
      count: 1,
    }))
  return [alone, whole, ...files.filter(isMixed)].filter(({ length }) => length > 0)
}

/** The sum of scores of each of the first `groups` groups. */
export function sumScores(strata: readonly Stratum[], groups: number): number[] {
  const sums = new Array<number>(groups).fill(0)
  for (const stratum of strata)
    for (const { score, group, count } of stratum)
      if (group < groups) sums[group] = (sums[group] as number) + score * count
  return sums
}

/** Mean and covariance of those sums over all ways to change places, exactly. */
export function momentsOf(strata: readonly Stratum[], groups: number) {
  const expected = new Array<number>(groups).fill(0)
  const covariance = expected.map(() => new Array<number>(groups).fill(0))
  for (const stratum of strata) {
    const size = stratum.reduce((sum, { count }) => sum + count, 0)
    const mean = stratum.reduce((sum, { score, count }) => sum + score * count, 0) / size
    const squares = stratum.reduce((sum, { score, count }) => sum + count * (score - mean) ** 2, 0)
    const sizes = expected.map((_, g) =>
      stratum.reduce((sum, { group, count }) => sum + (group === g ? count : 0), 0),
    )
    sizes.forEach((own, g) => {
      expected[g] = (expected[g] as number) + own * mean
      if (size < 2) return
      sizes.forEach((other, h) => {
        const row = covariance[g] as number[]
        row[h] = (row[h] as number) + (squares / (size - 1)) * ((g === h ? own : 0) - (own * other) / size)
      })
    })
  }
  return { expected, covariance }
}

/** Units written out one by one, so that they can be shuffled. Counts must be whole. */
export const writeOut = (stratum: Stratum): Unit[] =>
  stratum.flatMap((unit) => Array.from({ length: Math.round(unit.count) }, () => ({ ...unit, count: 1 })))

/** The same units with their groups in a random order. */
export function shuffleGroups(stratum: Stratum, random: Random): Stratum {
  const groups = stratum.map(({ group }) => group)
  for (let i = groups.length - 1; i > 0; i--) {
    const j = random(i + 1)
    const kept = groups[i] as number
    groups[i] = groups[j] as number
    groups[j] = kept
  }
  return stratum.map((unit, i) => ({ ...unit, group: groups[i] as number }))
}
