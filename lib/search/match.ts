import { type Bits, bitsOf, idsOf, intersect, isEmpty, newBits, subtract, unite } from './bits.ts'
import type { Clause, Question } from './read-text.ts'
import type { Segment } from './segment.ts'

/** The pages of a segment that a text finds, and how well. */
export interface Match {
  readonly bits: Bits
  /** False where a phrase was looked up in the newest of very many pages only: what fits may then be more or fewer. */
  readonly exact: boolean
  /** Parts of the text that no page of the segment fits. */
  readonly unmatched: readonly Clause[]
  /** How well each page of `bits` fits, by its id. */
  scores(): Uint16Array
}

interface Level {
  readonly score: number
  readonly bits: Bits
}

/** So many pages are read for a phrase. */
export const MOST_READ = 20_000

/** The lexemes that a text needs looked up. */
export const lexemesIn = ({ clauses, excluded, whole }: Question): string[] => [
  ...new Set([
    ...[...clauses, ...excluded].flatMap(({ ways }) => ways.flatMap(({ needs }) => needs)),
    ...whole.map(({ lexeme }) => lexeme),
  ]),
]

/**
 * Finds the pages of a segment that fit every clause and none that is excluded.
 *
 * @param among the documents to look at; all that live where it is left out
 */
export async function matchText(segment: Segment, read: Question, among?: Bits): Promise<Match> {
  const found = await segment.look(lexemesIn(read))
  const { size, live } = segment.columns
  const levels = read.clauses.map((clause) => levelsOf(clause, found, size))
  const bits = fitted(among ?? live, size).slice()
  for (const one of levels) intersect(bits, union(one, size))
  let exact = true
  for (const clause of read.excluded) {
    const taken = union(levelsOf(clause, found, size), size)
    // Only what would be found need be read for the phrase.
    intersect(taken, bits)
    if (clause.row) {
      const kept = await inRow(segment, taken, clause.row, size)
      intersect(taken, kept.bits)
      exact &&= kept.exact
    }
    subtract(bits, taken)
  }
  for (const { row } of read.clauses) {
    if (row === undefined) continue
    const kept = await inRow(segment, bits, row, size)
    intersect(bits, kept.bits)
    exact &&= kept.exact
  }
  const whole = read.whole.flatMap(({ lexeme, score }) => {
    const held = found.get(lexeme)
    return held === undefined ? [] : [{ score, bits: held }]
  })
  const unmatched = read.clauses.filter((_, i) => levels[i]?.length === 0)
  return { bits, exact, unmatched, scores: () => scoresOf(bits, levels, whole, size) }
}

/** Ways of one score are one level; a page has the level of its best way. The best level comes first. */
function levelsOf({ ways }: Clause, found: ReadonlyMap<string, Bits>, size: number): Level[] {
  const levels = new Map<number, Bits[]>()
  for (const { score, needs } of ways) {
    const bits = together(needs, found)
    if (bits !== undefined) levels.set(score, [...(levels.get(score) ?? []), bits])
  }
  return [...levels].map(([score, some]) => ({ score, bits: fitted(united(some), size) }))
}

/** The pages that hold all of the lexemes; undefined where none does. */
function together(needs: readonly string[], found: ReadonlyMap<string, Bits>): Bits | undefined {
  const [first, ...others] = needs.map((need) => found.get(need))
  if (first === undefined || others.includes(undefined)) return undefined
  if (others.length === 0) return first
  const bits = first.slice()
  for (const other of others) if (other) intersect(bits, other)
  return isEmpty(bits) ? undefined : bits
}

function united([first, ...others]: readonly Bits[]): Bits {
  if (first === undefined || others.length === 0) return first ?? newBits(0)
  const bits = first.slice()
  for (const other of others) unite(bits, other)
  return bits
}

/** A record that grew between two looks has longer fields of bits. */
const fitted = (bits: Bits, size: number): Bits => {
  const whole = newBits(size)
  if (bits.length === whole.length) return bits
  whole.set(bits.subarray(0, whole.length))
  return whole
}

function union(levels: readonly Level[], size: number): Bits {
  const all = newBits(size)
  for (const { bits } of levels) unite(all, bits)
  return all
}

async function inRow(
  segment: Segment,
  bits: Bits,
  row: readonly string[],
  size: number,
): Promise<{ bits: Bits; exact: boolean }> {
  const ids = idsOf(bits)
  const read = ids.slice(-MOST_READ)
  const kept = await segment.inARow([...read], row)
  return { bits: bitsOf(kept, size), exact: read.length === ids.length }
}

/** The best level of each clause, and of the whole names, added up: level by level, each page but once a clause. */
function scoresOf(
  bits: Bits,
  clauses: readonly (readonly Level[])[],
  whole: readonly Level[],
  size: number,
): Uint16Array {
  const scores = new Uint16Array(size)
  for (const levels of [...clauses, whole]) {
    const left = bits.slice()
    for (const { score, bits: fitting } of [...levels].sort((a, b) => b.score - a.score))
      for (let i = 0; i < left.length; i += 1) {
        let word = (left[i] as number) & (fitting[i] ?? 0)
        if (word === 0) continue
        left[i] = (left[i] as number) & ~word
        while (word !== 0) {
          const id = (i << 5) | (31 - Math.clz32(word & -word))
          scores[id] = (scores[id] as number) + score
          word &= word - 1
        }
      }
  }
  return scores
}
