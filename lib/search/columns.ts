import type { DocumentFacts } from '#lib/db/search/read.ts'
import { DOCUMENT_FACETS, type DocumentFacet, splitFacets, valuesOf } from '#lib/entry/facets.ts'
import { addBit, type Bits, dropBit, hasBit, idsOf, newBits } from './bits.ts'

/**
 * One facet of all documents: for each a small number that stands for its set of values. Few sets are shared by
 * many documents, so filters and counts look at each set once and at each document's number.
 */
export class Column {
  /** Set's number by document id; 0 is the empty set. */
  codes: Uint16Array | Uint32Array
  /** The values of each set. */
  readonly sets: string[][] = [[]]
  readonly #numbers = new Map<string, number>([['', 0]])

  constructor(size: number) {
    this.codes = new Uint16Array(size)
  }

  set(id: number, set: string): void {
    let code = this.#numbers.get(set)
    if (code === undefined) {
      code = this.sets.push(valuesOf(set)) - 1
      this.#numbers.set(set, code)
      if (code === 65_536) this.codes = Uint32Array.from(this.codes)
    }
    this.codes[id] = code
  }

  grow(size: number): void {
    const wider = this.codes instanceof Uint16Array ? new Uint16Array(size) : new Uint32Array(size)
    wider.set(this.codes)
    this.codes = wider
  }

  valuesAt(id: number): readonly string[] {
    return this.sets[this.codes[id] ?? 0] ?? []
  }
}

/** Whole years watched as a number from 0: 0 is never, 1 is less than a year, 2 is one year, and so on. */
export const yearCode = (years: number): number => (years < 0 ? 0 : Math.min(254, Math.floor(years)) + 1)

/** What is kept of every document: a few bytes for each facet, its place in every order, its place on the ground. */
export class Columns {
  size = 1024
  live: Bits = newBits(this.size)
  /** The living documents that are cases. */
  cases: Bits = newBits(this.size)
  years = new Float32Array(this.size)
  yearCodes = new Uint16Array(this.size)
  published = new Float64Array(this.size)
  latitude = new Float32Array(this.size).fill(Number.NaN)
  longitude = new Float32Array(this.size).fill(Number.NaN)
  readonly facets = Object.fromEntries(
    DOCUMENT_FACETS.map((facet) => [facet, new Column(this.size)]),
  ) as Record<DocumentFacet, Column>
  /** How many living cases have each code: most of a large count is known by them. */
  readonly tallies = Object.fromEntries(DOCUMENT_FACETS.map((facet) => [facet, [] as number[]])) as Record<
    DocumentFacet,
    number[]
  >
  readonly yearTally = new Uint32Array(256)
  #caseIds: Int32Array | undefined
  #version = 0

  /** Another number after each change of a document: what was worked out of the columns is then worked out anew. */
  get version(): number {
    return this.#version
  }

  /** Ids of all living cases, sorted; the same array until one of them comes or goes. */
  caseIds(): Int32Array {
    this.#caseIds ??= idsOf(this.cases)
    return this.#caseIds
  }

  set({ id, facets, years, publishedAt, latitude, longitude }: DocumentFacts): void {
    if (id >= this.size) this.#grow(id)
    const sets = splitFacets(facets)
    this.#version += 1
    this.#uncount(id)
    addBit(this.live, id)
    this.years[id] = years
    this.yearCodes[id] = yearCode(years)
    this.published[id] = publishedAt
    this.latitude[id] = latitude ?? Number.NaN
    this.longitude[id] = longitude ?? Number.NaN
    DOCUMENT_FACETS.forEach((facet, i) => {
      this.facets[facet].set(id, sets[i] ?? '')
    })
    if (this.facets.kind.valuesAt(id)[0] === 'case') this.#count(id)
  }

  drop(id: number): void {
    if (id >= this.size) return
    this.#version += 1
    this.#uncount(id)
    dropBit(this.live, id)
  }

  #count(id: number): void {
    addBit(this.cases, id)
    this.#tally(id, 1)
  }

  #uncount(id: number): void {
    if (!hasBit(this.cases, id)) return
    dropBit(this.cases, id)
    this.#tally(id, -1)
  }

  #tally(id: number, by: 1 | -1): void {
    for (const facet of DOCUMENT_FACETS) {
      const [tally, code] = [this.tallies[facet], this.facets[facet].codes[id] ?? 0]
      while (tally.length <= code) tally.push(0)
      tally[code] = (tally[code] ?? 0) + by
    }
    const code = this.yearCodes[id] ?? 0
    this.yearTally[code] = (this.yearTally[code] ?? 0) + by
    this.#caseIds = undefined
  }

  #grow(id: number): void {
    while (this.size <= id) this.size *= 2
    const copy = <T extends { set(from: T): void }>(wider: T, old: T) => {
      wider.set(old)
      return wider
    }
    this.live = copy(newBits(this.size), this.live)
    this.cases = copy(newBits(this.size), this.cases)
    this.years = copy(new Float32Array(this.size), this.years)
    this.yearCodes = copy(new Uint16Array(this.size), this.yearCodes)
    this.published = copy(new Float64Array(this.size), this.published)
    this.latitude = copy(new Float32Array(this.size).fill(Number.NaN), this.latitude)
    this.longitude = copy(new Float32Array(this.size).fill(Number.NaN), this.longitude)
    for (const facet of DOCUMENT_FACETS) this.facets[facet].grow(this.size)
  }
}
