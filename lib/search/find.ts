import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { CaseSummary } from '#lib/db/cases.ts'
import { noSuchPage, pageSize } from '#lib/db/page.ts'
import { type FoundDocument, foundCases, foundDocuments, latestChange } from '#lib/db/search/read.ts'
import { CASE_FACETS, type CaseFacet, FOUND_KINDS, type FoundKind } from '#lib/entry/facets.ts'
import type { FieldFault } from '#lib/errors.ts'
import { type Bits, idsOf } from './bits.ts'
import type { Columns } from './columns.ts'
import { type ContentPage, contentSegment } from './content-pages.ts'
import { type CountedFacet, type DocumentFilter, type Narrowed, narrow } from './count.ts'
import type { Counted } from './count-values.ts'
import { explain, type Why } from './explain.ts'
import { type Match, matchText } from './match.ts'
import { pause } from './pause.ts'
import { Best, batchesOf, byYears, joined, type Place, readPlace, writePlace } from './rank.ts'
import { type Clause, type Question, readText } from './read-text.ts'
import { type RecordSegment, recordSegment } from './record.ts'
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

export type Facets = Record<CaseFacet | 'years', readonly Counted[]>

/** What both searches tell beside their results. */
export interface Told {
  readonly total: number
  /** False where `total` and the counts are only a part of very many. */
  readonly exact: boolean
  readonly next: string | null
  readonly read: ReadText
  readonly faults: readonly FieldFault[]
}

/** How a text was taken. */
export interface ReadText {
  /** The parts of it that were looked for, and those that were kept out. */
  readonly clauses: readonly string[]
  readonly excluded: readonly string[]
  readonly ignored: readonly string[]
  /** Words that no page has, and what was looked for in their place. */
  readonly corrected: readonly {
    readonly typed: string
    readonly how: Correction['how']
    readonly to: string
  }[]
}

export type FoundCase = CaseSummary & { readonly why: readonly Why[] }

export interface Found extends Told {
  readonly results: readonly FoundCase[]
  readonly facets: Facets
}

/** Cases by words and facets, with how many each further choice would leave. */
export const findCases = (asked: Asked): Promise<Found> =>
  current(async (record) => {
    const sought = await searchCases(record, asked)
    const { ids, count } = onlyPart(sought).narrowed
    const page = pageOf(sought, asked)
    const counts = await count(['years', ...CASE_FACETS])
    const isText = sought.read.clauses.length > 0
    const { change, rows } = await foundCases(
      page.places.map(({ id }) => id),
      isText ? 'with-text' : undefined,
    )
    return {
      change,
      value: {
        ...told(sought, ids.length, page.next),
        results: rows.map(({ document: _, body = '', stems = '', marks = [], ...row }) => ({
          ...row,
          why: isText ? explain({ ...row, body, stems, marks }, sought.read) : [],
        })),
        facets: withChosen(counts, asked.filter ?? {}),
      },
    }
  })

/** A page of any kind that was found. */
export interface FoundPage {
  readonly kind: FoundKind
  /** Slug of an entry; ref of a row of content; `vocabulary#term`; else the id in content. */
  readonly id: string
  /** Whether it is an entry of the record rather than content. */
  readonly entry: boolean
  /** Told of an invented wall or mortar of the demo. */
  readonly invented: boolean
  readonly title: string
  readonly summary: string
  readonly why: readonly Why[]
}

export interface FoundAll extends Told {
  readonly results: readonly FoundPage[]
  /** How many of each kind fit, whatever kinds were asked for. */
  readonly counts: Readonly<Record<FoundKind, number>>
}

/** Pages of every kind by words, the best first; filters take what carries the facet. */
export const findAll = (asked: Asked & { kind?: FoundKind | undefined }): Promise<FoundAll> =>
  current(async (record) => {
    const content = contentSegment()
    const filter = { ...asked.filter, ...(asked.kind && { kind: [asked.kind] }) }
    const sought = await search([record, content], asked, filter)
    const page = pageOf(sought, asked)
    const counts = await Promise.all(sought.parts.map(({ narrowed }) => narrowed.count(['kind'])))
    const { change, rows } = await foundDocuments(page.places.flatMap(({ id }) => (id < 0 ? [] : [id])))
    // Words that tell nothing would find everything there is.
    if (sought.parts.every(({ match }) => match === undefined)) return { change, value: nothing(sought) }
    const entryOf = new Map(rows.map((row) => [row.document, row]))
    const total = sought.parts.reduce((sum, { narrowed }) => sum + narrowed.ids.length, 0)
    return {
      change,
      value: {
        ...told(sought, total, page.next),
        results: page.places.flatMap(({ id }) => {
          const found = id < 0 ? content.pages[-id - 1] : entryOf.get(id)
          return found === undefined ? [] : [foundPage(found, sought.read)]
        }),
        counts: countsByKind(counts.flatMap((some) => some.kind)),
      },
    }
  })

const countsByKind = (counts: readonly Counted[]): Record<FoundKind, number> =>
  Object.fromEntries(
    FOUND_KINDS.map((kind) => [
      kind,
      counts.reduce((sum, { id, count }) => sum + (id === kind ? count : 0), 0),
    ]),
  ) as Record<FoundKind, number>

const nothing = (sought: Sought): FoundAll => ({
  ...told(sought, 0, null),
  results: [],
  counts: countsByKind([]),
})

/** A choice to drop, and how many would then be found. */
export interface Dropped {
  readonly facet: CaseFacet | 'minYears' | 'maxYears' | 'text'
  /** The one value to drop of a facet, or the one part of a text; absent where all of it is meant. */
  readonly value?: string
  readonly brings: number
}

/** For a search of cases that finds nothing: each single choice that could be dropped and what that would bring. */
export function dropping(asked: Asked): Promise<Dropped[]> {
  return now(async (record) => {
    const sought = await searchCases(record, asked)
    const { narrowed } = onlyPart(sought)
    const facets = [...narrowed.without].flatMap(([facet, more]) =>
      droppedOf(facet, asked.filter ?? {}, narrowed.ids.length + more),
    )
    const { clauses } = sought.read
    const without = (kept: Question['clauses']) =>
      part(record, { ...sought.read, clauses: kept, whole: [] }, asked.filter ?? {}, record.columns.cases)
    const texts: Dropped[] = []
    if (clauses.length > 0) texts.push({ facet: 'text', brings: (await without([])).narrowed.ids.length })
    if (clauses.length > 1)
      for (const clause of clauses) {
        const { narrowed: left } = await without(clauses.filter((one) => one !== clause))
        texts.push({ facet: 'text', value: clause.typed, brings: left.ids.length })
      }
    return [...facets, ...texts].filter(({ brings }) => brings > 0).sort((a, b) => b.brings - a.brings)
  })
}

function droppedOf(facet: CountedFacet, filter: CaseFilter, brings: number): Dropped[] {
  if (facet === 'kind') return []
  if (facet === 'years') return [{ facet: filter.minYears === undefined ? 'maxYears' : 'minYears', brings }]
  const [value, ...more] = filter[facet] ?? []
  return [{ facet, ...(value !== undefined && more.length === 0 && { value }), brings }]
}

/** All cases that are found, newest documents last, however many: for lists that are taken away. */
export async function* everyCase({
  text,
  filter,
}: Pick<Asked, 'text' | 'filter'>): AsyncGenerator<CaseSummary[]> {
  const ids = await casesFound({ text, filter }, (found) => found)
  for (const some of batchesOf(ids)) {
    const { rows } = await foundCases(some)
    yield rows.map(({ document: _, ...row }) => row)
  }
}

/** All pages that words find, in the order of {@link findAll}, however many: one search, then rows piece by piece. */
export async function* everyPage({
  text,
  kind,
}: Pick<Asked, 'text'> & { kind?: FoundKind | undefined }): AsyncGenerator<Omit<FoundPage, 'why'>[]> {
  const content = contentSegment()
  const ids = await now(async (record) => {
    const sought = await search([record, content], { text }, kind === undefined ? {} : { kind: [kind] })
    return sought.parts.every(({ match }) => match === undefined) ? new Int32Array(0) : allInOrder(sought)
  })
  for (const some of batchesOf(ids)) {
    const { rows } = await foundDocuments(
      some.filter((id) => id >= 0),
      'without-text',
    )
    const entryOf = new Map(rows.map((row) => [row.document, row]))
    yield some.flatMap((id) => pageFacts(id < 0 ? content.pages[-id - 1] : entryOf.get(id)) ?? [])
  }
}

/** The documents of all cases that are found, sorted, with the columns that tell of them. */
export const casesFound = <T>(
  { text, filter }: Pick<Asked, 'text' | 'filter'>,
  tell: (ids: Int32Array, columns: Columns) => T,
): Promise<T> => now(async (record) => tell(await caseIdsIn(record, { text, filter }), record.columns))

/**
 * Runs a search on the record as it is now: what was published before the call is in the answer, and what was
 * withdrawn is not. A search tells the last change that it met in the database; where the record in memory was
 * behind that, it catches up and the search is done again.
 */
export async function current<T>(
  work: (record: RecordSegment) => Promise<{ change: number; value: T }>,
): Promise<T> {
  const record = await recordSegment()
  const known = record.change
  const first = await work(record)
  if (first.change === known && record.change === known) return first.value
  return (await work(await recordSegment(first.change))).value
}

/** {@link current} for a search that reads nothing else of the database. */
export const now = <T>(work: (record: RecordSegment) => Promise<T>): Promise<T> =>
  current(async (record) => {
    const [value, change] = await Promise.all([work(record), latestChange()])
    return { change, value }
  })

/** The documents of the cases that words and a filter find, sorted, for a search that is under way. */
export async function caseIdsIn(
  record: RecordSegment,
  asked: Pick<Asked, 'text' | 'filter'>,
): Promise<Int32Array> {
  return onlyPart(await searchCases(record, asked)).narrowed.ids
}

interface Part {
  readonly segment: Segment
  readonly match: Match | undefined
  readonly narrowed: Narrowed
}

interface Sought {
  readonly read: Question
  readonly corrections: readonly Correction[]
  readonly parts: readonly Part[]
}

const searchCases = (record: RecordSegment, asked: Pick<Asked, 'text' | 'filter'>): Promise<Sought> =>
  search([record], asked, asked.filter ?? {}, 'cases')

async function search(
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

/** @param among documents to search; all that live where it is left out */
async function part(segment: Segment, read: Question, filter: DocumentFilter, among?: Bits): Promise<Part> {
  const { columns } = segment
  const isAsked = read.clauses.length + read.excluded.length > 0
  const match = isAsked ? await matchText(segment, read, among) : undefined
  const all = () => (among === undefined ? idsOf(columns.live) : columns.caseIds())
  const narrowed = await narrow(columns, match === undefined ? all() : idsOf(match.bits), filter)
  return { segment, match, narrowed }
}

function onlyPart({ parts }: Sought): Part {
  const [part] = parts
  if (part === undefined) throw new RangeError('A search has at least one segment.')
  return part
}

/** The places of a page, and where the next one starts. Ids of content's pages are told as -1, -2, …. */
function pageOf(sought: Sought, asked: Asked): { places: readonly Place[]; next: string | null } {
  const size = pageSize(asked.limit ?? 20)
  const after = asked.after === undefined ? undefined : readPlace(asked.after, 2)
  if (asked.after !== undefined && after === undefined) throw noSuchPage(asked.after)
  const best = new Best(size + 1, after)
  for (const [i, one] of sought.parts.entries()) {
    const { ids } = one.narrowed
    const { years, published } = one.segment.columns
    const scores = (asked.sort ?? 'best') === 'best' ? ranksOf(one) : undefined
    const isNewest = asked.sort === 'newest'
    for (let n = 0; n < ids.length; n += 1) {
      const id = ids[n] as number
      const told = i === 0 ? id : -id - 1
      if (scores !== undefined) best.offer(scores(id), years[id] as number, told)
      else best.offer((isNewest ? published : years)[id] as number, 0, told)
    }
  }
  const places = best.places.slice(0, size)
  const last = places.at(-1)
  return { places, next: best.places.length > size && last ? writePlace(last) : null }
}

/** All that was found by a text in the order of its pages, ids told as there. */
async function allInOrder({ parts }: Sought): Promise<Int32Array> {
  const byRank = new Map<number, number[]>()
  for (const [i, one] of parts.entries()) {
    const ranks = ranksOf(one)
    for (const id of one.narrowed.ids) {
      const rank = ranks?.(id) ?? 0
      const told = i === 0 ? id : -id - 1
      const known = byRank.get(rank)
      if (known === undefined) byRank.set(rank, [told])
      else known.push(told)
    }
  }
  const [record, content] = parts.map(({ segment }) => segment.columns.years)
  const years = (told: number) => (told < 0 ? content?.[-told - 1] : record?.[told]) ?? -1
  const inOrder: Int32Array[] = []
  for (const [, told] of [...byRank].sort(([a], [b]) => b - a)) {
    inOrder.push(byYears(told, years))
    await pause(told.length)
  }
  return joined(inOrder)
}

/** Among equals, what explains a thing comes before what mentions it. */
const PRIORS = [
  'caution',
  'source',
  'vocabulary',
  'row',
  'table',
  'case',
  'guide',
  'recipe',
  'material',
  'unit',
  'term',
]
const KINDS_END = 16

/** How well each found page fits, by its id; undefined without a text. */
function ranksOf({ match, segment }: Part): ((id: number) => number) | undefined {
  if (match === undefined) return undefined
  const scores = match.scores()
  const { codes, sets } = segment.columns.facets.kind
  const priors = Uint8Array.from(sets, ([kind]) => PRIORS.indexOf(kind ?? '') + 1)
  return (id) => (scores[id] as number) * KINDS_END + (priors[codes[id] as number] as number)
}

function told({ read, corrections, parts }: Sought, total: number, next: string | null): Told {
  return {
    total,
    exact: parts.every(({ match }) => match?.exact ?? true),
    next,
    read: {
      clauses: read.clauses.map(({ typed }) => typed),
      excluded: read.excluded.map(({ typed }) => typed),
      ignored: read.ignored,
      corrected: corrections.map(({ typed, how, to }) => ({ typed, how, to: to.join(', ') })),
    },
    faults: read.faults,
  }
}

const foundPage = (found: (ContentPage & { stems: string }) | FoundDocument, read: Question): FoundPage => ({
  ...pageFacts(found),
  why: explain(found, read),
})

type Facts = Pick<FoundDocument, 'kind' | 'slug' | 'invented' | 'title' | 'summary'>

function pageFacts(found: ContentPage | Facts): Omit<FoundPage, 'why'>
function pageFacts(found: ContentPage | Facts | undefined): Omit<FoundPage, 'why'> | undefined
function pageFacts(found: ContentPage | Facts | undefined): Omit<FoundPage, 'why'> | undefined {
  if (found === undefined) return undefined
  const entry = 'slug' in found
  return {
    kind: found.kind as FoundKind,
    id: entry ? found.slug : String(found.id),
    entry,
    invented: entry && found.invented,
    title: found.title,
    summary: found.summary,
  }
}

/** What was chosen stays among the choices, even where it would leave nothing. */
function withChosen(counts: Record<string, readonly Counted[]>, filter: CaseFilter): Facets {
  const chosen = (facet: CaseFacet | 'years'): readonly string[] => {
    if (facet !== 'years') return filter[facet] ?? []
    return filter.minYears === undefined ? [] : [String(filter.minYears)]
  }
  return Object.fromEntries(
    ([...CASE_FACETS, 'years'] as const).map((facet) => {
      const counted = counts[facet] ?? []
      const absent = chosen(facet).filter((id) => !counted.some((one) => one.id === id))
      return [facet, [...counted, ...absent.map((id) => ({ id, count: 0 }))]]
    }),
  ) as unknown as Facets
}
