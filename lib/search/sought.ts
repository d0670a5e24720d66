import type { CaseFilter } from '#lib/db/case-filter.ts'
import { type Bits, idsOf } from './bits.ts'
import type { Columns } from './columns.ts'
import { contentSegment } from './content-pages.ts'
import { type DocumentFilter, type Narrowed, narrow } from './count.ts'
import { now } from './current.ts'
import { type Match, matchText } from './match.ts'
import { type Clause, type Question, readText } from './read-text.ts'
import type { RecordSegment } from './record.ts'
import type { Segment } from './segment.ts'
import { amend, type Correction, unwritten } from './spelling.ts'

export const SORTS = ['best', 'newest', 'watched'] as const
export type Sort = (typeof SORTS)[number]

/** What is looked for. */
export interface Asked {
  readonly text?: string | undefined
  readonly filter?: CaseFilter | undefined
  /** `best` is by how well the text fits; without a text it is `watched`. */
  readonly sort?: Sort | undefined
  /** `next` of the page before. */
  readonly after?: string | undefined
  readonly limit?: number | undefined
}

/** What a question finds in one segment. */
export interface Part {
  readonly segment: Segment
  readonly match: Match | undefined
  readonly narrowed: Narrowed
}

/** A question as it was taken, and what it finds. */
export interface Sought {
  readonly read: Question
  readonly corrections: readonly Correction[]
  readonly parts: readonly Part[]
}

/** Looks for cases alone. */
export const searchCases = (record: RecordSegment, asked: Pick<Asked, 'text' | 'filter'>): Promise<Sought> =>
  search([record], asked, asked.filter ?? {}, 'cases')

/** Looks in several segments; words that nothing holds are put right where something is spelled nearly so. */
export async function search(
  segments: readonly Segment[],
  asked: Pick<Asked, 'text'>,
  filter: DocumentFilter,
  among: 'cases' | 'all' = 'all',
): Promise<Sought> {
  const read = readText(asked.text ?? '')
  const partOf = (segment: Segment, text: Question) =>
    part(segment, text, filter, among === 'cases' ? segment.columns.cases : undefined)
  const parts = await Promise.all(segments.map((segment) => partOf(segment, read)))
  const unknown = [...new Set([...(await unknownTo(parts, read)), ...(await unwritten(read))])]
  if (unknown.length === 0) return { read, corrections: [], parts }
  const amended = await amend(read, unknown)
  if (amended.corrections.length === 0) return { read, corrections: [], parts }
  const again = segments.map((segment) => partOf(segment, amended.read))
  return { ...amended, parts: await Promise.all(again) }
}

/** Parts of a text that no page fits, of the record or of content: they may be slips. */
async function unknownTo(parts: readonly Part[], read: Question): Promise<Clause[]> {
  const left = read.clauses.filter((clause) => parts.every(({ match }) => match?.unmatched.includes(clause)))
  if (left.length === 0 || parts.some(({ segment }) => segment === contentSegment())) return left
  const { unmatched } = await matchText(contentSegment(), { ...read, clauses: left, excluded: [], whole: [] })
  return [...unmatched]
}

/**
 * Looks in one segment for a text as it was taken.
 *
 * @param among documents to search; all that live where it is left out
 */
export async function part(
  segment: Segment,
  read: Question,
  filter: DocumentFilter,
  among?: Bits,
): Promise<Part> {
  const { columns } = segment
  const isAsked = read.clauses.length + read.excluded.length > 0
  const match = isAsked ? await matchText(segment, read, among) : undefined
  const all = () => (among === undefined ? idsOf(columns.live) : columns.caseIds())
  const narrowed = await narrow(columns, match === undefined ? all() : idsOf(match.bits), filter)
  return { segment, match, narrowed }
}

/** What is found where one segment was searched. */
export function onlyPart({ parts }: Sought): Part {
  const [part] = parts
  if (part === undefined) throw new RangeError('A search has at least one segment.')
  return part
}

/** The documents of all cases that are found, sorted, with the columns that tell of them. */
export const casesFound = <T>(
  { text, filter }: Pick<Asked, 'text' | 'filter'>,
  tell: (ids: Int32Array, columns: Columns) => T,
): Promise<T> => now(async (record) => tell(await caseIdsIn(record, { text, filter }), record.columns))

/** The documents of the cases that words and a filter find, sorted, for a search that is under way. */
export async function caseIdsIn(
  record: RecordSegment,
  asked: Pick<Asked, 'text' | 'filter'>,
): Promise<Int32Array> {
  return onlyPart(await searchCases(record, asked)).narrowed.ids
}
