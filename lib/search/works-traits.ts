import type { DocumentFacet } from '#lib/entry/facets.ts'
import type { WorkSet, WorkWord } from './works-columns.ts'
import { countWords, raise } from './works-count.ts'
import type { Selected } from './works-scope.ts'

/** What walls are told apart by when groups are compared. `many`: a wall may have several values. */
export const TRAITS = [
  { trait: 'unit', many: true },
  { trait: 'wall', many: false },
  { trait: 'use', many: false },
  { trait: 'rain', many: false },
  { trait: 'frost', many: false },
  { trait: 'ground', many: false },
  { trait: 'salt', many: true },
  { trait: 'country', many: false },
  { trait: 'structure', many: false },
  { trait: 'reporter', many: false },
  { trait: 'mixed', many: false },
] as const
export type Trait = (typeof TRAITS)[number]['trait']

/** Works that have a value of a trait. */
export interface TraitCount {
  readonly trait: Trait
  readonly value: string
  readonly works: number
}

/** How the works in scope are spread over each trait. */
export function traitsOf(selected: Selected): TraitCount[] {
  return TRAITS.flatMap(({ trait }) => {
    const counts =
      trait === 'reporter' || trait === 'mixed'
        ? countReports(selected, trait)
        : trait === 'use'
          ? countSet(selected, 'use')
          : countFacet(selected, trait)
    return [...counts].map(([value, works]) => ({ trait, value, works }))
  })
}

function countReports(selected: Selected, name: WorkWord & ('reporter' | 'mixed')): Map<string, number> {
  const counts = new Map([...countWords(selected, name, selected.rows)].map(([word, n]) => [String(word), n]))
  const told = [...counts.values()].reduce((sum, n) => sum + n, 0)
  return told < selected.rows.length ? counts.set('nobody', selected.rows.length - told) : counts
}

/** How many of the works have each value of a set of theirs. */
export function countSet(
  { works, rows }: Pick<Selected, 'works' | 'rows'>,
  name: WorkSet,
): Map<string, number> {
  const { codes, sets } = works.sets[name]
  return spread(sets, rows, (row) => codes[row] as number)
}

/** How many of the works are on a wall with each value of a facet. */
export function countFacet({ works, documents, rows }: Selected, facet: DocumentFacet): Map<string, number> {
  const { codes, sets } = documents.facets[facet]
  const { document } = works.numbers
  return spread(sets, rows, (row) => codes[document[row] as number] as number)
}

function spread(
  sets: readonly (readonly string[])[],
  rows: Int32Array,
  codeAt: (row: number) => number,
): Map<string, number> {
  const tally = new Uint32Array(sets.length)
  for (let i = 0; i < rows.length; i += 1) raise(tally, codeAt(rows[i] as number))
  const counts = new Map<string, number>()
  sets.forEach((values, code) => {
    const count = tally[code] as number
    if (count > 0) for (const value of values) counts.set(value, (counts.get(value) ?? 0) + count)
  })
  return counts
}
