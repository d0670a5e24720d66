import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { CaseFacet, FoundKind } from '#lib/entry/facets.ts'
import { contentSegment } from './content-pages.ts'
import type { CountedFacet } from './count.ts'
import { now } from './current.ts'
import type { Question } from './read-text.ts'
import { type Asked, onlyPart, part, search, searchCases } from './sought.ts'

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

/** For words that nothing has all of: each that could be left out and how many pages that would bring. */
export const droppingWords = ({
  text,
  kind,
}: Pick<Asked, 'text'> & { kind?: FoundKind | undefined }): Promise<Dropped[]> =>
  now(async (record) => {
    const segments = [record, contentSegment()]
    const filter = kind === undefined ? {} : { kind: [kind] }
    const { read } = await search(segments, { text }, filter)
    if (read.clauses.length < 2) return []
    const dropped: Dropped[] = []
    for (const clause of read.clauses) {
      const kept = { ...read, clauses: read.clauses.filter((one) => one !== clause), whole: [] }
      const left = await Promise.all(segments.map((segment) => part(segment, kept, filter)))
      const brings = left.reduce((sum, { narrowed }) => sum + narrowed.ids.length, 0)
      if (brings > 0) dropped.push({ facet: 'text', value: clause.typed, brings })
    }
    return dropped.sort((a, b) => b.brings - a.brings)
  })
