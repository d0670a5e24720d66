import { broaderPairs } from '#lib/content/term-tree.ts'
import type { DocumentFacet } from '#lib/entry/facets.ts'
import { isBinder } from './case-query.ts'
import type { Column } from './columns.ts'

/** A value and how many documents have it. */
export interface Counted {
  readonly id: string
  readonly count: number
}

/**
 * What each value of a facet comes to, from how many documents have each set of values.
 *
 * @param tally by the set's number
 */
export function countValues(facet: DocumentFacet, column: Column, tally: Int32Array): Counted[] {
  const { ids, starts, places } = shownOf(facet, column)
  const counts = new Int32Array(ids.length)
  for (let code = 0; code < tally.length; code += 1) {
    const count = tally[code] as number
    if (count === 0) continue
    const end = starts[code + 1] as number
    for (let i = starts[code] as number; i < end; i += 1) {
      const at = places[i] as number
      counts[at] = (counts[at] as number) + count
    }
  }
  return ids.flatMap((id, at) => (counts[at] === 0 ? [] : [{ id, count: counts[at] as number }]))
}

/** For each set of a facet whether any of the values will do: 1 where it does. A unit takes all that is a kind of it. */
export function fittingSets(facet: DocumentFacet, column: Column, chosen: readonly string[]): Uint8Array {
  const { known, starts, places } = shownOf(facet, column)
  const wanted = new Set(chosen.flatMap((value) => known.get(value) ?? []))
  const fits = new Uint8Array(column.sets.length)
  for (let code = 0; code < fits.length; code += 1) {
    const end = starts[code + 1] as number
    for (let i = starts[code] as number; i < end; i += 1) if (wanted.has(places[i] as number)) fits[code] = 1
  }
  return fits
}

/** The values that each set is counted under: those of set n are at `places[starts[n]]` and on, as places in `ids`. */
interface Shown {
  readonly ids: string[]
  readonly known: Map<string, number>
  readonly starts: number[]
  readonly places: number[]
}

/** Sets are only ever added to a column, so what was worked out of them stays. */
const shown = new WeakMap<Column, Shown>()

function shownOf(facet: DocumentFacet, column: Column): Shown {
  const made: Shown = shown.get(column) ?? { ids: [], known: new Map(), starts: [0], places: [] }
  shown.set(column, made)
  for (let code = made.starts.length - 1; code < column.sets.length; code += 1) {
    for (const value of shownValues(facet, column.sets[code] ?? [])) {
      let at = made.known.get(value)
      if (at === undefined) {
        at = made.ids.push(value) - 1
        made.known.set(value, at)
      }
      made.places.push(at)
    }
    made.starts.push(made.places.length)
  }
  return made
}

/** A set's values as they are counted: units with all that they are kinds of, of materials those that bind. */
function shownValues(facet: DocumentFacet, values: readonly string[]): Iterable<string> {
  if (facet === 'unit') return new Set(values.flatMap((unit) => kindsOf().get(unit) ?? [unit]))
  return facet === 'binder' ? values.filter(isBinder) : values
}

let kinds: ReadonlyMap<string, readonly string[]> | undefined

/** Each unit with all that it is a kind of, itself among them. */
function kindsOf(): ReadonlyMap<string, readonly string[]> {
  if (kinds !== undefined) return kinds
  const over = new Map<string, string[]>()
  for (const [unit, broader] of broaderPairs('units')) over.set(unit, [...(over.get(unit) ?? []), broader])
  kinds = over
  return over
}
