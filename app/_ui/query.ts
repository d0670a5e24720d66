import { isSlug } from '#lib/entry/fields.ts'

/** The address's query as Next hands it over: repeated names are lists. */
export type Query = Readonly<Record<string, string | readonly string[] | undefined>>

/** The first value given for a name; empty counts as absent, as an untouched select sends it. */
export function first(value: Query[string]): string | undefined {
  const one = typeof value === 'string' ? value : value?.[0]
  return one === undefined || one === '' ? undefined : one
}

/** The value if it is one of a closed list; anything else is no choice. */
export function oneOf<T extends string>(list: readonly T[], value: Query[string]): T | undefined {
  const given = first(value)
  return list.find((item) => item === given)
}

/** An entry's address; anything that cannot be one is no choice. */
export function slugOf(value: Query[string]): string | undefined {
  const given = first(value)
  return given !== undefined && isSlug(given) ? given : undefined
}

/** A whole number above nought, or nothing. */
export function wholeNumber(value: Query[string]): number | undefined {
  const given = first(value)
  return given !== undefined && /^[1-9]\d{0,5}$/.test(given) ? Number(given) : undefined
}

/** Choices as an address holds them: of several values of one name each stands by itself. */
export type Choices = Readonly<Record<string, string | number | readonly string[] | undefined>>

/** An address with the choices that were made; absent ones are left out. */
export function addressWith(path: string, choices: Choices): string {
  const query = new URLSearchParams()
  for (const [name, value] of Object.entries(choices))
    for (const one of value === undefined ? [] : [value].flat()) query.append(name, String(one))
  const text = query.toString()
  return text === '' ? path : `${path}?${text}`
}
