import type { BodyOf, WrittenKind } from './body.ts'

/** What an entry says without saying how it is known. */
export type MissingBasis = 'no-source' | 'no-mix' | 'memory-figures' | 'memory-row' | 'no-method'

/** What a reviewer asks about first: statements with nothing under them. */
export function missingBasis<K extends WrittenKind>(kind: K, body: BodyOf<K>): MissingBasis[] {
  return CHECKS[kind](body as never)
}

const when = (missing: boolean, what: MissingBasis): MissingBasis[] => (missing ? [what] : [])

const CHECKS: { readonly [K in WrittenKind]: (body: BodyOf<K>) => MissingBasis[] } = {
  recipe: ({ follows, sources, adaptedFrom }) =>
    when(follows.length === 0 && sources.length === 0 && adaptedFrom === undefined, 'no-source'),
  case: ({ works }) =>
    when(
      works.some(({ recipe, mixed }) => recipe === undefined && mixed === undefined),
      'no-mix',
    ),
  visit: ({ readings }) =>
    when(
      readings.some(({ instrument }) => instrument === undefined),
      'no-method',
    ),
  material: ({ properties }) =>
    when(
      properties.some(({ basis }) => basis === 'memory'),
      'memory-figures',
    ),
  source: () => [],
  row: ({ basis }) => when(basis === 'memory', 'memory-row'),
}
