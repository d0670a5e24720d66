import type { Counted, Filed } from '#lib/evidence/index.ts'
import { NONE } from './works-columns.ts'

/** How finely days and buildings are told apart. */
export interface Grain {
  /** Days are widened outwards to multiples of this. */
  readonly gridDays: number
  /** Buildings are dealt into so many buckets, a power of 2; null keeps each by itself. */
  readonly buckets: number | null
}

/** A distinct interval of one kind, and how many works had it. */
interface Place {
  readonly kind: number
  /** Steps of the grid; {@link NONE} where there is no end. */
  readonly from: number
  readonly to: number
  weight: number
}

const KINDS = 8

/** Adds equal intervals of at most eight kinds up, each with the buildings (or buckets of buildings) that it was seen on. */
export class Tally {
  readonly #grid: number
  readonly #mask: number
  readonly #places: Place[] = []
  /** Places by kind and start, then by end: two steps down are quicker than one look into a map. */
  readonly #known: (number | undefined)[][] = []
  /** Of each work added, its place and its cluster. */
  #place = new Int32Array(1024)
  #cluster = new Int32Array(1024)
  #size = 0

  constructor({ gridDays, buckets }: Grain) {
    this.#grid = gridDays
    this.#mask = buckets === null ? -1 : buckets - 1
  }

  /** @param to day by which it had come; {@link NONE}: not yet */
  add(building: number, kind: number, from: number, to: number): void {
    const start = this.#down(from, to)
    const end = to === NONE ? NONE : Math.ceil(to / this.#grid)
    let ends = this.#known[start * KINDS + kind]
    if (ends === undefined) {
      ends = []
      this.#known[start * KINDS + kind] = ends
    }
    let place = ends[end === NONE ? 0 : end + 1]
    if (place === undefined) {
      place = this.#places.push({ kind, from: start, to: end, weight: 0 }) - 1
      ends[end === NONE ? 0 : end + 1] = place
    }
    ;(this.#places[place] as Place).weight += 1
    if (this.#size === this.#place.length) this.#grow()
    this.#place[this.#size] = place
    this.#cluster[this.#size] = building & this.#mask
    this.#size += 1
  }

  /** All that was added, earliest first, whatever the order it was added in. */
  filed<Row extends Counted>(
    make: (
      kind: number,
      from: number,
      to: number | null,
      weight: number,
    ) => Row & { readonly weight: number },
  ): Filed<Row> {
    const order = this.#places.map((_, place) => place).sort((a, b) => this.#compare(a, b))
    const rank = new Int32Array(order.length)
    order.forEach((place, k) => {
      rank[place] = k
    })
    return {
      rows: order.map((at) => {
        const { kind, from, to, weight } = this.#places[at] as Place
        return make(kind, from * this.#grid, to === NONE ? null : to * this.#grid, weight)
      }),
      clusters: this.#clusters(rank),
    }
  }

  /** An exact day lies in the step that ends with it. */
  #down(from: number, to: number): number {
    if (from === to && this.#grid > 1) return Math.max(0, Math.ceil(from / this.#grid) - 1)
    return Math.floor(from / this.#grid)
  }

  #compare(a: number, b: number): number {
    const [x, y] = [this.#places[a] as Place, this.#places[b] as Place]
    return x.from - y.from || x.to - y.to || x.kind - y.kind
  }

  /** Each cluster's places, equal ones added up; clusters by number. */
  #clusters(rank: Int32Array): Filed['clusters'] {
    const { own, count } = numbered(this.#cluster.subarray(0, this.#size), this.#mask)
    const ends = new Uint32Array(count + 1)
    for (let i = 0; i < own.length; i += 1)
      ends[(own[i] as number) + 1] = (ends[(own[i] as number) + 1] as number) + 1
    for (let k = 0; k < count; k += 1) ends[k + 1] = (ends[k + 1] as number) + (ends[k] as number)
    const next = ends.slice()
    const sorted = new Int32Array(this.#size)
    for (let i = 0; i < this.#size; i += 1) {
      const at = next[own[i] as number] as number
      next[own[i] as number] = at + 1
      sorted[at] = rank[this.#place[i] as number] as number
    }
    return mergeRuns(count, ends, sorted, rank.length)
  }

  #grow(): void {
    const wider = (old: Int32Array<ArrayBuffer>) => {
      const more = new Int32Array(old.length * 2)
      more.set(old)
      return more
    }
    this.#place = wider(this.#place)
    this.#cluster = wider(this.#cluster)
  }
}

/** Clusters numbered from 0 by what stands for them, those that none falls into left out. */
function numbered(clusters: Int32Array, mask: number): { own: Int32Array; count: number } {
  if (mask < 0) {
    const numbers = Int32Array.from(new Set(clusters)).sort()
    const numberOf = new Map(Array.from(numbers, (cluster, k) => [cluster, k]))
    return { own: clusters.map((cluster) => numberOf.get(cluster) as number), count: numbers.length }
  }
  const numberOf = new Int32Array(mask + 1)
  for (let i = 0; i < clusters.length; i += 1) numberOf[clusters[i] as number] = 1
  let count = 0
  for (let k = 0; k <= mask; k += 1) if (numberOf[k] === 1) numberOf[k] = count++
  const own = new Int32Array(clusters.length)
  for (let i = 0; i < own.length; i += 1) own[i] = numberOf[clusters[i] as number] as number
  return { own, count }
}

/** Adds up equal places within each run. */
function mergeRuns(count: number, ends: Uint32Array, sorted: Int32Array, places: number): Filed['clusters'] {
  const start = new Uint32Array(count + 1)
  const row = new Uint32Array(sorted.length)
  const weight = new Float64Array(sorted.length)
  const seen = new Int32Array(places).fill(-1)
  let size = 0
  for (let cluster = 0; cluster < count; cluster += 1) {
    const first = size
    for (let i = ends[cluster] as number; i < (ends[cluster + 1] as number); i += 1) {
      const place = sorted[i] as number
      const at = seen[place] as number
      if (at >= first) weight[at] = (weight[at] as number) + 1
      else {
        row[size] = place
        weight[size] = 1
        seen[place] = size
        size += 1
      }
    }
    start[cluster + 1] = size
  }
  return { count, start, row: row.subarray(0, size), weight: weight.subarray(0, size) }
}
