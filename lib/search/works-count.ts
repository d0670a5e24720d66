import { HORIZONS, type Horizon } from '#lib/db/projection/horizon.ts'
import { FIRST_END, type StateSeen, unpackState } from '#lib/db/projection/state-code.ts'
import { MIXED, type Mixed } from '#lib/entry/mixed.ts'
import { DAYS_PER_YEAR, LEFT_OUT, type LeftOut } from '#lib/evidence/index.ts'
import { addBit, countBits, hasBit, newBits } from './bits.ts'
import { NONE, type SharedVisit, type WorkWord } from './works-columns.ts'
import type { Selected } from './works-scope.ts'

/** Who reported: of all who looked at a work the one farthest from it. */
export const REPORTED = ['did-the-work', 'owner-or-keeper', 'someone-else'] as const
export type Reported = (typeof REPORTED)[number]

/** How many works, and how long they were watched. */
export interface Size {
  readonly works: number
  readonly walls: number
  readonly buildings: number
  readonly watchedDays: number
  readonly longestDays: number
}

export function sizeOf({ works, documents, rows }: Selected): Size {
  const { watchedDays: days, document, building } = works.numbers
  const walls = newBits(documents.size)
  const buildings = new Int32Array(rows.length)
  let [watchedDays, longestDays] = [0, 0]
  for (let i = 0; i < rows.length; i += 1) {
    const row = rows[i] as number
    const watched = days[row] as number
    watchedDays += watched
    if (watched > longestDays) longestDays = watched
    addBit(walls, document[row] as number)
    buildings[i] = building[row] as number
  }
  return {
    ...{ works: rows.length, walls: countBits(walls), buildings: countDistinct(buildings) },
    ...{ watchedDays, longestDays },
  }
}

/** How many different numbers there are, by a table half empty at most: sorting a million takes five times as long. */
function countDistinct(numbers: Int32Array): number {
  const bits = Math.max(4, 33 - Math.clz32(numbers.length))
  const table = new Int32Array(2 ** bits)
  const last = table.length - 1
  let [distinct, zero] = [0, 0]
  for (let i = 0; i < numbers.length; i += 1) {
    const number = numbers[i] as number
    // An empty place holds 0, so 0 is counted by itself.
    if (number === 0) zero = 1
    else {
      // Knuth's multiplicative hash: the high bits are the well-mixed ones.
      let place = Math.imul(number, 0x9e3779b1) >>> (32 - bits)
      while (table[place] !== 0 && table[place] !== number) place = (place + 1) & last
      if (table[place] === 0) {
        table[place] = number
        distinct += 1
      }
    }
  }
  return distinct + zero
}

/** Works by what their reports have in common. */
export interface Reports {
  readonly invented: number
  /** Works whose author declares something to gain or lose. */
  readonly interested: number
  /** Works on which a later visit took back what an earlier one saw. */
  readonly contradicted: number
  readonly reported: Readonly<Record<Reported, number>>
  readonly mixed: Readonly<Record<Mixed, number>>
}

export function reportsOf(selected: Selected): Reports {
  const count = <K extends string>(name: WorkWord, keys: readonly K[]) => {
    const counts = countWords(selected, name, selected.rows)
    return Object.fromEntries(keys.map((key) => [key, counts.get(key) ?? 0])) as Record<K, number>
  }
  const yes = (name: WorkWord) => countWords(selected, name, selected.rows).get(true) ?? 0
  return {
    invented: yes('invented'),
    interested: yes('interested'),
    contradicted: yes('contradicted'),
    reported: count('reporter', REPORTED),
    mixed: count('mixed', MIXED),
  }
}

/** Adds one to a place of a tally. */
export function raise(tally: Uint32Array, place: number): void {
  tally[place] = (tally[place] as number) + 1
}

/** How many of the rows have each word of a column; those without any are left out. */
export function countWords({ works }: Pick<Selected, 'works'>, name: WorkWord, rows: Int32Array) {
  const codes = works.codes[name]
  const tally = new Uint32Array(256)
  for (let i = 0; i < rows.length; i += 1) raise(tally, codes[rows[i] as number] as number)
  const counts = new Map<string | boolean, number>()
  for (let code = 1; code < 256; code += 1) {
    const word = works.wordOf(name, code)
    if (word !== undefined && tally[code] !== 0) counts.set(word, tally[code] as number)
  }
  return counts
}

/** What was left out: works that tell nothing, by reason; disputed cases; entries withdrawn from the whole record. */
export interface SetAside {
  readonly leftOut: readonly { readonly reason: LeftOut; readonly works: number }[]
  readonly disputedCases: number
  readonly withdrawnCases: number
  readonly withdrawnVisits: number
}

export function setAsideOf(selected: Selected): SetAside {
  const reasons = countWords(selected, 'leftOut', selected.leftOut)
  return {
    leftOut: [...LEFT_OUT].sort().flatMap((reason) => {
      const works = reasons.get(reason)
      return works === undefined ? [] : [{ reason, works }]
    }),
    disputedCases: selected.disputedCases,
    withdrawnCases: selected.withdrawn.cases,
    withdrawnVisits: selected.withdrawn.visits,
  }
}

/** Works in one state so many years after their baseline; null: that day has come, and nobody looked near it. */
export interface StateCount {
  readonly years: Horizon
  readonly seen: StateSeen | null
  readonly works: number
}

/**
 * The states of the works in scope at their baseline and 1, 2, 5, 10 and 20 years after. What ended a work counts at a
 * time only once that time has come: else young works would stand there as their ends alone.
 */
export function statesOf({ works, rows, asOf }: Selected): StateCount[] {
  const { baselineOn } = works.numbers
  return HORIZONS.flatMap(({ years }) => {
    const states = works.numbers[`at${years}`]
    const come = asOf - Math.ceil(years * DAYS_PER_YEAR)
    // A place for each state and end, and the first for not seen.
    const tally = new Uint32Array(FIRST_END + 16)
    for (let i = 0; i < rows.length; i += 1) {
      const row = rows[i] as number
      const state = states[row] as number
      if ((baselineOn[row] as number) <= come) raise(tally, state === NONE ? 0 : state + 1)
      else if (state !== NONE && state < FIRST_END) raise(tally, state + 1)
    }
    return Array.from(tally, (count, place): StateCount[] =>
      count === 0 ? [] : [{ years, works: count, seen: place === 0 ? null : unpackState(place - 1) }],
    ).flat()
  })
}

/** As many shared visits as agreement is worked out from, the newest. */
const MOST_SHARED = 2000

/** Visits to works in scope, left out or not, that more than one person read on the same scales. */
export function sharedVisitsOf({ works, rows, leftOut }: Selected): SharedVisit[] {
  if (works.shared.size === 0) return []
  const chosen = newBits(works.rows)
  for (const some of [rows, leftOut])
    for (let i = 0; i < some.length; i += 1) addBit(chosen, some[i] as number)
  const found: SharedVisit[] = []
  for (const [row, own] of works.shared) if (hasBit(chosen, row)) found.push(...own)
  return found.sort((a, b) => b.on - a.on).slice(0, MOST_SHARED)
}

/** Rows of the works that both scopes take. */
export function inBoth({ works, rows }: Selected, other: Selected): Int32Array {
  const own = newBits(works.rows)
  for (let i = 0; i < rows.length; i += 1) addBit(own, rows[i] as number)
  return other.rows.filter((row) => hasBit(own, row))
}
