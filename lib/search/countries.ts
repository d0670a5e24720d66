import { all } from 'iso-3166-1'
import { content } from '#lib/content/index.ts'
import { fold } from '#lib/entry/words.ts'
import type { FieldFault } from '#lib/errors.ts'
import { nearest } from './distance.ts'

const CODES: ReadonlySet<string> = new Set(all().map(({ alpha2 }) => alpha2))

/** Whether this is the code of a country: two capital letters of ISO 3166-1. */
export const isCountry = (code: string): boolean => CODES.has(code)

/** What is wrong with a code of no country; `limit` is the code that was perhaps meant, or else an example. */
export const countryFault = (field: string, value: string): FieldFault => ({
  ...{ field, code: 'unknown-country', value },
  limit: codeMeant(value) ?? content().vocabularies.get('countries')?.keys().next().value ?? 'EE',
})

/** The code of the country that somebody wrote in small letters, by three letters or by a name. */
function codeMeant(given: string): string | undefined {
  const typed = fold(given.trim())
  const named = new Map(
    all().flatMap(({ alpha2, alpha3, country }) =>
      [alpha2, alpha3, country].map((name) => [fold(name), alpha2] as const),
    ),
  )
  for (const { id, label, labels = {} } of content().vocabularies.get('countries')?.values() ?? [])
    for (const name of [label, ...Object.values(labels).flat()]) named.set(fold(name), id)
  const exact = named.get(typed)
  if (exact !== undefined || typed.length < 4) return exact
  return named.get(
    nearest(
      typed,
      [...named.keys()].filter((name) => name.length > 3),
    ) ?? '',
  )
}
