import { z } from 'zod'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { CASE_FACETS, type CaseFacet } from '#lib/entry/facets.ts'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { caseFilterOf, type Params, wallAskedOf } from '#lib/search/index.ts'

/** One value, or several by repeating the name: any of them will do. */
const several = z.union([z.string(), z.array(z.string())]).optional()

/** Every facet that cases are narrowed by; facets are taken together. */
const facets = Object.fromEntries(CASE_FACETS.map((facet) => [facet, several])) as Record<
  CaseFacet,
  typeof several
>

/** What a list of cases takes in its address. */
export const casesQuery = {
  q: z.string().max(300).optional(),
  ...facets,
  minYears: z.string().optional(),
  maxYears: z.string().optional(),
}

/** A wall as an address describes it; every answer may be left out. */
export const wallQuery = {
  unit: several,
  wall: z.string().optional(),
  use: z.string().optional(),
  rain: z.string().optional(),
  frost: z.string().optional(),
  country: z.string().optional(),
  latitude: z.string().optional(),
  longitude: z.string().optional(),
  salt: several,
}

/** The filter that an address asks for; here nothing of it is passed over. */
export function filterIn(params: Params): CaseFilter {
  const { filter, faults } = caseFilterOf(params)
  refuse(faults)
  return filter
}

/** The wall that an address describes, likewise. */
export function wallIn(params: Params) {
  const { wall, faults } = wallAskedOf(params)
  refuse(faults)
  return wall
}

function refuse(faults: readonly FieldFault[]): void {
  if (faults.length > 0)
    throw new Refusal('invalid', 'Some of what was asked cannot be used; the errors name each field.', faults)
}
