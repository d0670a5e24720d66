/** What JSON can hold. Absent is `undefined`, never null: no body has a null in it. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json }

/** Where a field stands in a body: names of fields, and `[key]` for an item of a list whose items have keys. */
export type Path = readonly string[]

/** Lists whose items can be told apart by one of their fields, so that two versions match item by item. */
const ITEM_KEYS: Readonly<Record<string, string>> = {
  works: 'id',
  mortars: 'id',
  samples: 'id',
  photos: 'sha256',
  ingredients: 'material',
  sources: 'source',
  units: 'unit',
  properties: 'property',
  overrides: 'field',
}

export const isObject = (value: Json | undefined): value is { readonly [key: string]: Json } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const isList = (value: Json | undefined): value is readonly Json[] => Array.isArray(value)

/** A figure or a range with its ends is one thing: half of one and half of another would mean nothing. */
export const isRange = (value: Json | undefined): boolean =>
  isObject(value) && typeof value.low === 'number' && typeof value.high === 'number' && !('property' in value)

/**
 * How the items of these versions of one list are told apart, or undefined where they are not: then the list is
 * one thing. `list` is the field that holds it.
 */
export function itemKey(
  list: string | undefined,
  versions: readonly (Json | undefined)[],
): string | undefined {
  const key = list === undefined ? undefined : ITEM_KEYS[list]
  if (key === undefined) return undefined
  const told = versions.every((version) => {
    if (version === undefined) return true
    if (!isList(version)) return false
    const keys = version.map((item) => (isObject(item) ? item[key] : undefined))
    return keys.every((one) => typeof one === 'string') && new Set(keys).size === keys.length
  })
  return told ? key : undefined
}

/** The items of a keyed list by their keys, in their order. */
export const itemsByKey = (list: Json | undefined, key: string): ReadonlyMap<string, Json> =>
  new Map((isList(list) ? list : []).map((item) => [String(isObject(item) ? item[key] : ''), item]))

/** `works[repointing].mixed.waterL`. */
export const pathText = (path: Path): string =>
  path.reduce((text, part) => (text === '' || part.startsWith('[') ? text + part : `${text}.${part}`), '')

/** Whether two values are the same JSON, whatever the order of their fields. */
export function isSame(a: Json | undefined, b: Json | undefined): boolean {
  if (a === b) return true
  if (isList(a) && isList(b)) return a.length === b.length && a.every((item, i) => isSame(item, b[i]))
  if (!isObject(a) || !isObject(b)) return false
  const keys = Object.keys(a)
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSame(a[key], b[key]))
  )
}
