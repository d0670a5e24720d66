import type { Role } from './terms.ts'

/**
 * The facets that cases are narrowed by, in the order in which they are offered. Each takes several values, any of
 * which will do; facets are taken together.
 */
export const CASE_FACETS = [
  'unit',
  'wall',
  'use',
  'family',
  'binder',
  'method',
  'country',
  'region',
  'rain',
  'frost',
  'salt',
  'ground',
  'structure',
  'joint',
  'unitState',
  'damp',
  'recipe',
  'row',
  'quality',
  'disputed',
] as const
export type CaseFacet = (typeof CASE_FACETS)[number]

/** What makes a case worth more as evidence. */
export const QUALITIES = ['analysis', 'photos', 'second-observer', 'past-five'] as const
export type Quality = (typeof QUALITIES)[number]

/** Whether people disagree about it in the record, unsettled. */
export const DISPUTED = ['yes', 'no'] as const

/**
 * Kinds of page that one search covers: what people wrote, then what content holds. `term` is one of the glossary,
 * `unit` one of the vocabulary of units, `vocabulary` a term of any other.
 */
export const FOUND_KINDS = [
  'case',
  'recipe',
  'material',
  'source',
  'row',
  'table',
  'unit',
  'vocabulary',
  'term',
  'guide',
  'caution',
] as const
export type FoundKind = (typeof FOUND_KINDS)[number]

/** Every facet that a document of the search carries: those of cases, and its kind. */
export const DOCUMENT_FACETS = ['kind', ...CASE_FACETS] as const
export type DocumentFacet = (typeof DOCUMENT_FACETS)[number]

export type FacetValues = { readonly [F in DocumentFacet]?: readonly string[] }

// Separators that no text of an entry can hold.
const BETWEEN_FACETS = '\u001e'
const BETWEEN_VALUES = '\u001f'

/** A document's values as one line, facets in the order of {@link DOCUMENT_FACETS}, values in plain order. */
export const facetLine = (values: FacetValues): string =>
  DOCUMENT_FACETS.map((facet) => [...new Set(values[facet] ?? [])].sort().join(BETWEEN_VALUES)).join(
    BETWEEN_FACETS,
  )

/** The line's facets, each as the text of its set of values. */
export const splitFacets = (line: string): string[] => line.split(BETWEEN_FACETS)

/** The values of one such set. */
export const valuesOf = (set: string): string[] => (set === '' ? [] : set.split(BETWEEN_VALUES))

/** A region's id: names of regions are told apart by their country. */
export const regionId = (country: string, region: string): string => `${country}:${region}`

/** Roles of what binds a mortar. */
export const BINDING_ROLES = [
  'lime',
  'pozzolan',
  'earth',
  'cement',
  'gypsum',
] as const satisfies readonly Role[]
