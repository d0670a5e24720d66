import type { CaseFilter } from '#lib/db/case-filter.ts'
import { CASE_FACETS, type CaseFacet } from '#lib/entry/facets.ts'
import type { FieldFault } from '#lib/errors.ts'
import { caseFilterOf, SORTS, type Sort, unknownFault } from '#lib/search/index.ts'
import { addressWith, type Choices, first, oneOf, type Query } from '../query.ts'

/** What a list of cases was asked for. */
export interface CasesAsked {
  readonly text: string
  readonly filter: CaseFilter
  /** As chosen; absent, the list decides. */
  readonly sort: Sort | undefined
  readonly after: string | undefined
}

/** What an address asks of a list of cases, and what of it cannot be used. */
export function casesAskedOf(query: Query): { asked: CasesAsked; faults: FieldFault[] } {
  const { filter, faults } = caseFilterOf(query)
  faults.push(...faultsOfChoice('sort', query, SORTS))
  return {
    asked: {
      text: (first(query.q) ?? '').trim(),
      filter,
      sort: oneOf(SORTS, query.sort),
      after: first(query.after),
    },
    faults,
  }
}

/** What is said of a choice of one from a short list that the list does not have. */
export function faultsOfChoice(name: string, query: Query, known: readonly string[]): FieldFault[] {
  const given = first(query[name])
  return given === undefined || given === '' || known.includes(given)
    ? []
    : [unknownFault(name, given, known)]
}

/** What is asked as an address holds it: every page and every link of a list is made from this. */
export const casesChoices = ({ text, filter, sort }: Partial<CasesAsked>): Choices => ({
  q: text || undefined,
  ...filter,
  sort,
})

/** The address of the start of a list for what is asked. */
export const casesAddress = (path: string, asked: Partial<CasesAsked>): string =>
  addressWith(path, casesChoices(asked))

/** One thing that narrows a list. */
export interface Choice {
  readonly name: CaseFacet | 'minYears' | 'maxYears'
  readonly value: string
}

/** Every choice of a filter, in the order in which facets are offered. */
export const choicesOf = (filter: CaseFilter): Choice[] => [
  ...CASE_FACETS.flatMap((name) => (filter[name] ?? []).map((value) => ({ name, value }))),
  ...(['minYears', 'maxYears'] as const).flatMap((name) =>
    filter[name] === undefined ? [] : [{ name, value: String(filter[name]) }],
  ),
]

/** The filter without one choice, or without a facet's every value. */
export function without(filter: CaseFilter, name: Choice['name'], value?: string): CaseFilter {
  const { [name]: given, ...rest } = filter
  if (value === undefined || !Array.isArray(given)) return rest
  const left = given.filter((one) => one !== value)
  return left.length === 0 ? rest : { ...rest, [name]: left }
}
