import { content } from '#lib/content/index.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { BINDING_ROLES, CASE_FACETS, type CaseFacet, DISPUTED, QUALITIES } from '#lib/entry/facets.ts'
import { isSlug } from '#lib/entry/fields.ts'
import type { FieldFault } from '#lib/errors.ts'
import { countryFault, isCountry } from './countries.ts'
import { nearest } from './distance.ts'

/** A query as an address has it: repeated names are several values. */
export type Params = URLSearchParams | Readonly<Record<string, string | readonly string[] | undefined>>

/** The vocabulary that a facet's values are terms of. */
export const FACET_VOCABULARIES = {
  unit: 'units',
  wall: 'wall-types',
  use: 'uses',
  family: 'families',
  method: 'methods',
  rain: 'driving-rain',
  frost: 'frost',
  salt: 'salts',
  ground: 'ground',
  structure: 'structures',
  joint: 'joint-states',
  unitState: 'unit-states',
  damp: 'damp-states',
} as const satisfies { readonly [F in CaseFacet]?: string }

/** The most values of one facet that are read. */
export const MOST_VALUES = 40
const MOST_YEARS = 200

/**
 * The filter that an address asks for, and what of it cannot be used: each fault names the parameter, the value
 * and, in `limit`, the closest value that would do, where one is close. What is sound is kept; empty values, as an
 * untouched field sends them, are no choice.
 */
export function caseFilterOf(params: Params): { filter: CaseFilter; faults: FieldFault[] } {
  const faults: FieldFault[] = []
  const filter: { [F in CaseFacet]?: readonly string[] } & { minYears?: number; maxYears?: number } = {}
  for (const facet of CASE_FACETS) {
    const given = [...new Set(valuesFor(params, facet))]
    if (given.length > MOST_VALUES)
      faults.push({ field: facet, code: 'too-long', value: given.length, limit: MOST_VALUES })
    const { fits, known, faultOf } = ruleOf(facet)
    const sound = given.slice(0, MOST_VALUES).filter((value) => {
      if (fits(value)) return true
      faults.push(faultOf?.(facet, value) ?? unknownFault(facet, value, known()))
      return false
    })
    if (sound.length > 0) filter[facet] = sound
  }
  for (const name of ['minYears', 'maxYears'] as const) {
    const years = yearsFor(params, name, faults)
    if (years !== undefined) filter[name] = years
  }
  if (filter.minYears !== undefined && filter.maxYears !== undefined && filter.minYears > filter.maxYears) {
    faults.push({ field: 'maxYears', code: 'too-small', value: filter.maxYears, limit: filter.minYears })
    delete filter.maxYears
  }
  return { filter, faults }
}

/** The filter as an address has it: what {@link caseFilterOf} reads, always in the same order. */
export function caseFilterQuery(filter: CaseFilter): URLSearchParams {
  const params = new URLSearchParams()
  for (const facet of CASE_FACETS) for (const value of filter[facet] ?? []) params.append(facet, value)
  for (const name of ['minYears', 'maxYears'] as const)
    if (filter[name] !== undefined) params.append(name, String(filter[name]))
  return params
}

/** The values given for a name, empty ones left out. */
export function valuesFor(params: Params, name: string): string[] {
  const given = params instanceof URLSearchParams ? params.getAll(name) : (params[name] ?? [])
  return (typeof given === 'string' ? [given] : [...given]).filter((value) => value !== '')
}

function yearsFor(params: Params, name: string, faults: FieldFault[]): number | undefined {
  const value = valuesFor(params, name)[0]?.trim()
  if (value === undefined || value === '') return undefined
  if (!/^\d{1,6}$/.test(value)) faults.push({ field: name, code: 'not-whole', value })
  else if (Number(value) > MOST_YEARS)
    faults.push({ field: name, code: 'too-large', value, limit: MOST_YEARS })
  else return Number(value)
  return undefined
}

interface Rule {
  fits(value: string): boolean
  /** What a value that does not fit may have meant. */
  known(): Iterable<string>
  /** What is said of a value that does not fit, where there is more to say than that it is unknown. */
  faultOf?(field: string, value: string): FieldFault
}

function ruleOf(facet: CaseFacet): Rule {
  if (facet in FACET_VOCABULARIES) {
    const terms = content().vocabularies.get(FACET_VOCABULARIES[facet as keyof typeof FACET_VOCABULARIES])
    return { fits: (value) => terms?.has(value) ?? false, known: () => terms?.keys() ?? [] }
  }
  return OPEN_RULES[facet as keyof typeof OPEN_RULES]
}

const closed = (list: readonly string[]): Rule => ({
  fits: (value) => list.includes(value),
  known: () => list,
})

/** Facets whose values the record adds to: what has the right form is taken, and may simply find nothing. */
const OPEN_RULES = {
  binder: { fits: isBinder, known: bindingMaterials },
  country: { fits: isCountry, known: () => [], faultOf: countryFault },
  region: {
    fits: (value) => isCountry(value.slice(0, 2)) && /^..:[^\p{Control}]{1,80}$/u.test(value),
    known: () => [],
  },
  recipe: { fits: isSlug, known: () => [] },
  row: {
    fits: (value) => value.length <= 160 && /^[a-z0-9-]+(#[a-z0-9-]+)?$/.test(value),
    known: () => content().rows.keys(),
  },
  quality: closed(QUALITIES),
  disputed: closed(DISPUTED),
} as const satisfies Record<Exclude<CaseFacet, keyof typeof FACET_VOCABULARIES>, Rule>

/** What is said of a value that is none of the known ones. */
export function unknownFault(field: string, value: string, known: Iterable<string>): FieldFault {
  const closest = nearest(value, known)
  return { field, code: 'unknown', value, ...(closest !== undefined && { limit: closest }) }
}

/** Ids of content's materials that bind a mortar. */
export function* bindingMaterials(): Generator<string> {
  for (const { id } of content().materials.values()) if (isBinder(id)) yield id
}

/** Whether a material binds a mortar. Of one that people added, content cannot tell, so it may. */
export function isBinder(id: string): boolean {
  const material = content().materials.get(id)
  return material === undefined ? isSlug(id) : BINDING_ROLES.some((role) => role === material.role)
}
