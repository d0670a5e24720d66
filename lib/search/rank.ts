/** One document's place in an order: larger numbers first, then the smaller id. */
export interface Place {
  readonly keys: readonly number[]
  readonly id: number
}

/** Below 0 where `a` comes before `b`. */
export function comparePlaces(a: Place, b: Place): number {
  for (let i = 0; i < a.keys.length; i += 1) {
    const difference = (b.keys[i] ?? 0) - (a.keys[i] ?? 0)
    if (difference !== 0) return difference
  }
  return a.id - b.id
}

/** The first so many places, none at or before `after`, from documents in any order. Places have two keys. */
export class Best {
  readonly #most: number
  readonly #after: Place | undefined
  readonly #places: Place[] = []
  // The keys that must be reached, as plain numbers: most documents of very many are turned away by them.
  #first = Number.NEGATIVE_INFINITY
  #second = Number.NEGATIVE_INFINITY

  constructor(most: number, after: Place | undefined) {
    this.#most = most
    this.#after = after
  }

  offer(first: number, second: number, id: number): void {
    if (first < this.#first || (first === this.#first && second < this.#second)) return
    const place = { keys: [first, second], id }
    const places = this.#places
    const last = places[places.length - 1]
    if (places.length >= this.#most && last !== undefined && comparePlaces(place, last) >= 0) return
    if (this.#after !== undefined && comparePlaces(place, this.#after) <= 0) return
    let at = places.length
    while (at > 0 && comparePlaces(place, places[at - 1] as Place) < 0) at -= 1
    places.splice(at, 0, place)
    if (places.length > this.#most) places.pop()
    const least = places.length < this.#most ? undefined : places[places.length - 1]
    if (least !== undefined) [this.#first, this.#second] = [least.keys[0] ?? 0, least.keys[1] ?? 0]
  }

  get places(): readonly Place[] {
    return this.#places
  }
}

/** Puts documents of one rank in their order: the longest watched first, then the smaller id. Ids are 32 bits wide. */
export function byYears(ids: readonly number[], years: (id: number) => number): Int32Array {
  // One number for both keys: such lists are put in order natively, however long.
  const keys = Float64Array.from(
    ids,
    (id) => (100_000 - Math.round(years(id) * 100)) * 2 ** 32 + id + 2 ** 31,
  )
  return Int32Array.from(keys.sort(), (key) => (key % 2 ** 32) - 2 ** 31)
}

/** Lists one after another. */
export function joined(lists: readonly Int32Array[]): Int32Array {
  const all = new Int32Array(lists.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const list of lists) {
    all.set(list, at)
    at += list.length
  }
  return all
}

/** So many rows of a list are read at a time. */
const BATCH = 1000

/** A long list in pieces whose rows are read together. */
export function* batchesOf(ids: Int32Array): Generator<number[]> {
  for (let from = 0; from < ids.length; from += BATCH) yield [...ids.subarray(from, from + BATCH)]
}

/** A place as an address carries it. */
export const writePlace = ({ keys, id }: Place): string => [...keys, id].join('_')

/** The place that an address carries, of so many keys; undefined when it is none. */
export function readPlace(text: string, keys: number): Place | undefined {
  const numbers = text.split('_')
  if (numbers.length !== keys + 1 || !numbers.every((one) => /^-?\d{1,16}(\.\d{1,20})?$/.test(one)))
    return undefined
  const read = numbers.map(Number)
  return { keys: read.slice(0, keys), id: read[keys] ?? 0 }
}
