import { scopeOf } from '#lib/api/evidence-read.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import type { FieldFault } from '#lib/errors.ts'
import { caseFilterOf, caseFilterQuery, unknownFault } from '#lib/search/case-query.ts'
import type { Scope } from '#lib/search/works.ts'
import { choicesOf } from '../../_ui/find/asked.ts'
import { facetLabel } from '../../_ui/find/labels.ts'
import { first, type Query } from '../../_ui/query.ts'
import { words } from '../../_words/index.ts'

const t = words('evidence')

/** Names of the groups in the address; each holds a filter as `/evidence` has it, or `all`. */
export const GROUPS = ['a', 'b', 'c'] as const
export type GroupKey = (typeof GROUPS)[number]
export const ALL = 'all'

/** The longest filter that is read of one group. */
const MOST_QUERY = 2000

/** One group as it was asked for. */
export interface AskedGroup {
  readonly key: GroupKey
  /** Its own choices, as the address has them. */
  readonly query: string
  readonly filter: CaseFilter
  readonly scope: Scope
}

export interface Asked {
  readonly groups: readonly AskedGroup[]
  /** Choices that hold for every group. */
  readonly within: CaseFilter
  readonly faults: readonly FieldFault[]
}

/** What an address asks to compare. A group's own choice of a facet stands in place of the common one. */
export function groupsOf(query: Query): Asked {
  const common = caseFilterOf(query)
  const read = GROUPS.flatMap((key): { group?: AskedGroup; faults: readonly FieldFault[] }[] => {
    const given = first(query[key])?.slice(0, MOST_QUERY)
    if (given === undefined) return []
    const { filter, faults } = caseFilterOf(new URLSearchParams(given === ALL ? '' : given))
    const own = queryOf(filter)
    // A choice of which nothing can be used is no choice of all walls.
    if (given !== ALL && own === ALL)
      return [{ faults: faults.length > 0 ? faults : [unknownFault(key, given, [])] }]
    return [{ group: { key, query: own, filter, scope: scopeOf({ ...common.filter, ...filter }) }, faults }]
  })
  return {
    groups: read.flatMap(({ group }) => group ?? []),
    within: common.filter,
    faults: [...common.faults, ...read.flatMap(({ faults }) => faults)],
  }
}

/** A filter as a group of the address. */
export function queryOf(filter: CaseFilter): string {
  const query = caseFilterQuery(filter).toString()
  return query === '' ? ALL : query
}

/** A group in words: `Air lime; Pointing`. */
export function groupLabel(filter: CaseFilter, titles: ReadonlyMap<string, string>): string {
  const said = choicesOf(filter).map(({ name, value }) =>
    name === 'minYears' || name === 'maxYears'
      ? words('find')(`years.${name}`, { years: Number(value) })
      : facetLabel(name, value, titles),
  )
  return said.length === 0 ? t('compare.all') : said.join('; ')
}
