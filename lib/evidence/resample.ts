import { type Clustered, type Counted, indexIntervals, weightOf } from './interval.ts'
import { type Random, randomOf } from './random.ts'

export interface ResampleOptions {
  /** How many times to draw; 200 unless said. */
  readonly resamples?: number
  readonly level?: number
  readonly seed?: number
}

/** A draw need not be worked out as far as the estimate: so little narrows no band by a fiftieth. */
export const DRAW_TOLERANCE = 3e-4

/** Rows in the order of their clusters, so that drawing a cluster adds up a run of them. */
export interface Clusters {
  readonly count: number
  /** Where each cluster's run starts in `row`; one more than there are clusters. */
  readonly start: Uint32Array
  /** Place of the distinct interval, and how many walls. */
  readonly row: Uint32Array
  readonly weight: Float64Array
}

/** Distinct rows with their counts over all clusters, and how they fall to each. */
export interface Filed<Row extends Counted = Counted> {
  readonly rows: readonly (Row & { readonly weight: number })[]
  readonly clusters: Clusters
}

/**
 * Files rows under their cluster.
 *
 * @param places for each row the place of its interval among the distinct ones
 */
export function fileClusters(rows: readonly Clustered[], places: Uint32Array): Clusters {
  const numbers = new Map<string | number, number>()
  const own = Uint32Array.from(rows, ({ cluster }) => {
    const number = numbers.get(cluster) ?? numbers.size
    numbers.set(cluster, number)
    return number
  })
  const start = new Uint32Array(numbers.size + 1)
  for (const c of own) start[c + 1] = (start[c + 1] as number) + 1
  for (let c = 0; c < numbers.size; c++) start[c + 1] = (start[c + 1] as number) + (start[c] as number)
  const next = start.slice()
  const row = new Uint32Array(rows.length)
  const weight = new Float64Array(rows.length)
  rows.forEach((each, i) => {
    const c = own[i] as number
    const at = next[c] as number
    next[c] = at + 1
    row[at] = places[i] as number
    weight[at] = weightOf(each)
  })
  return { count: numbers.size, start, row, weight }
}

/** Rows with equal ones added up and filed under their clusters; what counts nothing is left out. */
export function fileRows(rows: readonly Clustered[]): Filed {
  const counted = rows.filter((row) => weightOf(row) > 0)
  const { distinct, places } = indexIntervals(counted)
  return { rows: distinct, clusters: fileClusters(counted, places) }
}

/** The rows of each cluster by themselves, numbered by the cluster. */
export const unfile = <Row extends Counted>({
  rows,
  clusters: { count, start, row, weight },
}: Filed<Row>): (Row & Required<Clustered>)[] =>
  Array.from({ length: count }, (_, cluster) =>
    Array.from({ length: (start[cluster + 1] as number) - (start[cluster] as number) }, (__, k) => {
      const at = (start[cluster] as number) + k
      return { ...(rows[row[at] as number] as Row), cluster, weight: weight[at] as number }
    }),
  ).flat()

/** Long work in short steps, so that whoever takes it on can do other things between them. */
export type Steps<T> = Generator<void, T>

/** Does all of it at once. */
export function finish<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/**
 * Draws as many clusters as there are, with replacement, again and again (Efron's bootstrap, 1979, of whole
 * clusters), and estimates on each draw, which is one step.
 *
 * @param rows how many distinct intervals the weights are for
 * @param estimate reads the weights of one draw; it may keep nothing of them
 * @returns for each number that `estimate` gives, all its draws, smallest first
 */
export function* resample(
  clusters: Clusters,
  rows: number,
  estimate: (weight: Float64Array) => readonly number[],
  { resamples = 200, seed }: ResampleOptions = {},
): Steps<Float64Array[]> {
  if (!(Number.isInteger(resamples) && resamples >= 1))
    throw new RangeError(`resamples is ${resamples}; a whole number from 1 on will do`)
  const random = randomOf(seed)
  const weight = new Float64Array(rows)
  const draws: (readonly number[])[] = []
  for (let k = 0; k < resamples; k++) {
    draw(clusters, weight, random)
    draws.push(estimate(weight))
    yield
  }
  return (draws[0] ?? []).map((_, k) => Float64Array.from(draws, (values) => values[k] as number).sort())
}

function draw({ count, start, row, weight: own }: Clusters, weight: Float64Array, random: Random): void {
  weight.fill(0)
  for (let drawn = 0; drawn < count; drawn++) {
    const c = random(count)
    for (let k = start[c] as number; k < (start[c + 1] as number); k++) {
      const place = row[k] as number
      weight[place] = (weight[place] as number) + (own[k] as number)
    }
  }
}

/** The value that a share `p` of the sorted draws lie below. */
export function percentile(sorted: Float64Array, p: number): number {
  const place = p * (sorted.length - 1)
  const below = sorted[Math.floor(place)] as number
  const above = sorted[Math.ceil(place)] as number
  return below + (above - below) * (place - Math.floor(place))
}
