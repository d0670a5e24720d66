import type { CaseFilter } from '#lib/db/case-filter.ts'
import { DOCUMENT_FACETS, type DocumentFacet, type FoundKind } from '#lib/entry/facets.ts'
import type { Columns } from './columns.ts'
import { type Counted, countValues, fittingSets } from './count-values.ts'
import { groupListed, type Test } from './group.ts'
import { groupCases } from './group-cases.ts'
import { pause } from './pause.ts'

/** Which documents are meant: cases by their facets, and pages by their kind. */
export type DocumentFilter = CaseFilter & { readonly kind?: readonly FoundKind[] }

/** Years watched count as one more facet. */
export type CountedFacet = DocumentFacet | 'years'

/** What fits of the documents given, and what each facet would leave under all the other choices. */
export interface Narrowed {
  /** Ids that fit everything, sorted. */
  readonly ids: Int32Array
  /** For each facet of the filter, how many more would fit without it. */
  readonly without: ReadonlyMap<CountedFacet, number>
  /** For each value, how many documents have it and fit all choices but those of its own facet. */
  count(facets: readonly CountedFacet[]): Promise<Record<CountedFacet, Counted[]>>
}

/** Counted for at least so many years. */
export const YEAR_STEPS = [1, 2, 5, 10, 15]

/**
 * Narrows documents by a filter: what fails no choice is found; what fails exactly one counts under that one's facet
 * alone.
 *
 * @param candidates ids of living documents, sorted; of all cases {@link Columns.caseIds}, whose counts are known
 */
export async function narrow(
  columns: Columns,
  candidates: Int32Array,
  filter: DocumentFilter,
): Promise<Narrowed> {
  const isWhole = candidates === columns.caseIds()
  const { kind, ...facets } = filter
  const tests = testsOf(columns, isWhole && kind?.join() === 'case' ? facets : filter)
  const groups = isWhole ? await groupCases(columns, tests) : await groupListed(candidates, tests)
  const without = new Map(tests.map(({ facet }, i) => [facet, groups.of(i + 1).length] as const))
  return {
    ids: groups.of(0),
    without,
    async count(facets) {
      const counts: [CountedFacet, Counted[]][] = []
      for (const facet of facets) {
        const test = tests.findIndex((one) => one.facet === facet) + 1
        const picked = groups.pick(test)
        const { size } = picked
        // Where most fits, what does not is sooner counted.
        const isLess = isWhole && size > candidates.length / 2
        counts.push([facet, countOne(columns, facet, isLess ? picked.others() : picked.lists, isLess)])
        await pause(isLess ? candidates.length - size : size)
      }
      return Object.fromEntries(counts) as Record<CountedFacet, Counted[]>
    },
  }
}

function testsOf(columns: Columns, filter: DocumentFilter): Test<CountedFacet>[] {
  const tests: Test<CountedFacet>[] = DOCUMENT_FACETS.flatMap((facet) => {
    const chosen = filter[facet]
    if (chosen === undefined || chosen.length === 0) return []
    const column = columns.facets[facet]
    const fits = fittingSets(facet, column, chosen)
    return [{ facet, chosen: chosen.join('\n'), codes: column.codes, fits }]
  })
  const { minYears, maxYears } = filter
  if (minYears !== undefined || maxYears !== undefined) {
    const [least, most] = [(minYears ?? -1) + 1, (maxYears ?? 254) + 1]
    const fits = Uint8Array.from({ length: 256 }, (_, code) => (code >= least && code <= most ? 1 : 0))
    tests.push({ facet: 'years', chosen: `${least} ${most}`, codes: columns.yearCodes, fits })
  }
  return tests
}

/** @param isLess whether the lists are what is missing from all cases */
function countOne(
  columns: Columns,
  facet: CountedFacet,
  lists: readonly Int32Array[],
  isLess: boolean,
): Counted[] {
  if (facet === 'years') return countYears(columns, lists, isLess)
  const column = columns.facets[facet]
  const tally = tallied(column.codes, column.sets.length, lists, isLess ? columns.tallies[facet] : undefined)
  return countValues(facet, column, tally).sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
}

function countYears(columns: Columns, lists: readonly Int32Array[], isLess: boolean): Counted[] {
  const tally = tallied(columns.yearCodes, 256, lists, isLess ? columns.yearTally : undefined)
  return YEAR_STEPS.map((least) => ({
    id: String(least),
    count: tally.subarray(least + 1).reduce((sum, count) => sum + count, 0),
  })).filter(({ count }) => count > 0)
}

/** How many of the lists have each code; with `all`, how many are left of them. */
function tallied(
  codes: Test<CountedFacet>['codes'],
  size: number,
  lists: readonly Int32Array[],
  all?: ArrayLike<number>,
): Int32Array {
  const tally = new Int32Array(size)
  for (const ids of lists)
    for (let i = 0; i < ids.length; i += 1) {
      const code = codes[ids[i] as number] as number
      tally[code] = (tally[code] as number) + 1
    }
  if (all !== undefined)
    for (let code = 0; code < size; code += 1) tally[code] = (all[code] ?? 0) - (tally[code] ?? 0)
  return tally
}
