import { isList, isObject, type Json, type Path } from '#lib/entry/json.ts'
import { labelOf, materialLabel } from '../_ui/label.ts'
import write from '../_words/en/write.json'
import { words } from '../_words/index.ts'
import { shortLabel } from '../_write/labels.ts'
import { wordKey } from '../_write/layout.ts'

type ItemKey = keyof typeof write.item

/** The name that the form gives the field at this path, as it is known there: `works.0.mixed.waterL`. */
export const formName = (path: Path): string =>
  path.map((part) => (part.startsWith('[') ? '0' : part)).join('.')

/** A field's own words; its last name where the form asks nothing of the sort. */
export function fieldLabel(path: Path): string {
  const name = formName(path)
  const key = wordKey(name)
  if (Object.hasOwn(write.label, key)) return shortLabel(name)
  // No form asks for the case of a visit: it is known from the start.
  if (key === 'case') return labelOf('kinds', 'case')
  // A list is called as its items are.
  return itemWords(path) ?? (key === 'invented' ? words('common')('notice.invented') : (path.at(-1) ?? ''))
}

/**
 * What a changed field is called: the items that it stands in by their own names, then the field's words:
 * `Repointing: Water added`.
 *
 * @param bodies of the versions; items are named from the last that has them
 */
export function fieldName(path: Path, bodies: readonly unknown[]): string {
  const items = path.flatMap((part, index) =>
    part.startsWith('[') ? [itemName(path.slice(0, index), part.slice(1, -1), bodies)] : [],
  )
  const isItem = path.at(-1)?.startsWith('[') === true
  const own = isItem ? [] : [fieldLabel(path)].filter((label) => label !== items.at(-1))
  return [...items, ...own].join(': ')
}

/**
 * The same with the number that each item has in its form: `Work 2: North face repointed, Recipe`.
 *
 * @param bodies of the versions; items are counted and named in the last that has them
 */
export function numberedName(path: Path, bodies: readonly unknown[]): string {
  const items = path.flatMap((part, index) => {
    if (!part.startsWith('[')) return []
    const [list, key] = [path.slice(0, index), part.slice(1, -1)]
    const name = ownName(list, key, bodies)
    const item = itemWords(list, numberOf(list, key, bodies))
    if (item === undefined) return [name ?? key]
    return [name === undefined ? item : words('write')('form.item', { item, name })]
  })
  const isItem = path.at(-1)?.startsWith('[') === true
  return [...items, ...(isItem ? [] : [fieldLabel(path)])].join(', ')
}

/** Place of an item as a reader counts. */
function numberOf(list: Path, key: string, bodies: readonly unknown[]): string {
  const places = bodies.map((body) => {
    const items = itemAt(body as Json | undefined, list)
    return isList(items) ? items.findIndex((item) => isObject(item) && Object.values(item).includes(key)) : -1
  })
  const place = places.filter((at) => at >= 0).at(-1)
  return place === undefined ? '' : String(place + 1)
}

const NAMES = ['title', 'where', 'location', 'alt'] as const

const itemName = (list: Path, key: string, bodies: readonly unknown[]): string =>
  ownName(list, key, bodies) ?? itemWords(list) ?? key

/** What an item calls itself. */
function ownName(list: Path, key: string, bodies: readonly unknown[]): string | undefined {
  if (list.at(-1) === 'ingredients') return materialLabel(key)
  if (list.at(-1) === 'overrides') return fieldLabel(key.split('.'))
  const item = bodies
    .map((body) => itemAt(body as Json | undefined, [...list, `[${key}]`]))
    .filter(isObject)
    .at(-1)
  const named = NAMES.map((name) => item?.[name]).find((text) => typeof text === 'string')
  return named === undefined ? undefined : String(named)
}

/** What one item of such a list is called where it has no name of its own. */
export function itemWords(list: Path, number = ''): string | undefined {
  const key = wordKey(formName(list))
  return Object.hasOwn(write.item, key)
    ? words('write')(`item.${key as ItemKey}`, { number }).trim()
    : undefined
}

function itemAt(body: Json | undefined, path: Path): Json | undefined {
  return path.reduce<Json | undefined>((value, part) => {
    if (!part.startsWith('[')) return isObject(value) ? value[part] : undefined
    const key = part.slice(1, -1)
    return isList(value)
      ? value.find((item) => isObject(item) && Object.values(item).some((one) => one === key))
      : undefined
  }, body)
}
