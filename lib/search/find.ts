import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { CaseSummary } from '#lib/db/cases.ts'
import { type FoundDocument, foundCases, foundDocuments } from '#lib/db/search/read.ts'
import { CASE_FACETS, type CaseFacet, FOUND_KINDS, type FoundKind } from '#lib/entry/facets.ts'
import type { FieldFault } from '#lib/errors.ts'
import { type ContentPage, contentSegment } from './content-pages.ts'
import type { Counted } from './count-values.ts'
import { current } from './current.ts'
import { explain, type Why } from './explain.ts'
import { pageOf } from './order.ts'
import { type FoundPage, pageFacts } from './page-facts.ts'
import type { Question } from './read-text.ts'
import { type Asked, onlyPart, type Sought, search, searchCases } from './sought.ts'
import type { Correction } from './spelling.ts'

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

export interface FoundAll extends Told {
  readonly results: readonly FoundPage[]
  /** How many of each kind fit, whatever kinds were asked for. */
  readonly counts: Readonly<Record<FoundKind, number>>
}

/**
 * Pages of every kind by words, the best first; filters take what carries the facet.
 *
 * @param asked with the reader's language, in which excerpts are looked for first
 */
export const findAll = (
  asked: Asked & { kind?: FoundKind | undefined; language?: string | undefined },
): Promise<FoundAll> =>
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
          return found === undefined ? [] : [foundPage(found, sought.read, asked.language)]
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

const foundPage = (
  found: (ContentPage & { stems: string }) | FoundDocument,
  read: Question,
  language: string | undefined,
): FoundPage => ({
  ...pageFacts(found),
  why: explain(found, read, language),
})

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
