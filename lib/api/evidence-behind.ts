import type { CaseSummary } from '#lib/db/cases.ts'
import { type LabEntry, laboratoryOf } from '#lib/db/laboratory.ts'
import { QUALITIES, type Quality } from '#lib/entry/facets.ts'
import type { Column } from '#lib/search/columns.ts'
import { findCases } from '#lib/search/find.ts'
import { casesFound } from '#lib/search/sought.ts'
import { type Scope, type Selected, selectWorks } from '#lib/search/works.ts'

/** So many recipes, and so many materials, are asked for laboratory results: the most used. */
const MOST_ASKED = 100

/** What stands behind the figures about some walls. */
export interface Behind {
  /** Cases that fit, those that tell too little to be counted and disputed ones among them. */
  readonly total: number
  /** The first of them, the longest watched first. */
  readonly cases: readonly CaseSummary[]
  /** How many of the cases hold each thing that lists can be narrowed to. */
  readonly quality: Readonly<Record<Quality, number>>
  /** Recipes and materials of these walls that carry laboratory results. */
  readonly laboratory: readonly LabEntry[]
}

/** The cases in scope with what is recorded of them, and what laboratories found of the mortars of their works. */
export async function readBehind(scope: Scope, limit: number): Promise<Behind> {
  const { filter, text } = scope
  const [{ total, results }, quality, used] = await Promise.all([
    findCases({ text, filter, sort: 'watched', limit }),
    casesFound({ text, filter }, (ids, { facets }) => countIn(ids, facets.quality)),
    selectWorks([scope], ([selected]) => (selected === undefined ? [] : usedIn(selected))),
  ])
  return {
    total,
    cases: results.map(({ why: _, ...one }) => one),
    quality: Object.fromEntries(QUALITIES.map((one) => [one, quality.get(one) ?? 0])) as Behind['quality'],
    laboratory: await laboratoryOf(used),
  }
}

/** The recipes that most of these works used, and the materials that went into most. */
const usedIn = ({ works, rows, leftOut }: Selected): string[] =>
  [works.sets.recipe, works.sets.materials].flatMap((column) => {
    const counts = countIn(rows, column)
    for (const [value, count] of countIn(leftOut, column)) counts.set(value, (counts.get(value) ?? 0) + count)
    return mostOf(counts)
  })

/** How many of these documents or works have each value. */
function countIn(ids: Int32Array, { codes, sets }: Pick<Column, 'codes' | 'sets'>): Map<string, number> {
  const tally = new Uint32Array(sets.length)
  for (const id of ids) tally[codes[id] ?? 0] = (tally[codes[id] ?? 0] ?? 0) + 1
  const counts = new Map<string, number>()
  for (const [code, values] of sets.entries())
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + (tally[code] ?? 0))
  return counts
}

const mostOf = (counts: ReadonlyMap<string, number>): string[] =>
  [...counts]
    .filter(([, count]) => count > 0)
    .sort(([a, many], [b, more]) => more - many || (a < b ? -1 : 1))
    .slice(0, MOST_ASKED)
    .map(([value]) => value)
