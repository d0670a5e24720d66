import { diffWordsWithSpace } from 'diff'
import { isList, isObject, isRange, isSame, itemKey, itemsByKey, type Json, type Path } from './json.ts'

/** What became of one field between two versions. Of a list that changed its order, the keys in their order. */
export type Change =
  | { readonly kind: 'added'; readonly path: Path; readonly after: Json }
  | { readonly kind: 'removed'; readonly path: Path; readonly before: Json }
  | { readonly kind: 'changed'; readonly path: Path; readonly before: Json; readonly after: Json }
  | {
      readonly kind: 'reordered'
      readonly path: Path
      readonly before: readonly string[]
      readonly after: readonly string[]
    }

/**
 * Everything that differs between two bodies of one kind, field by field, in the order of the later one. Items of
 * lists with keys are matched by key; other lists, and figures with their range, are one thing each.
 *
 * @param before undefined for a first version: then every field is `added`
 * @returns empty exactly when both say the same
 */
export function diffBodies(before: unknown, after: unknown): Change[] {
  return compare([], before as Json | undefined, after as Json | undefined)
}

function compare(path: Path, before: Json | undefined, after: Json | undefined): Change[] {
  if (isSame(before, after)) return []
  if (isBranch(before) && isBranch(after)) {
    const keys = new Set([...Object.keys(after ?? {}), ...Object.keys(before ?? {})])
    return [...keys].flatMap((key) => compare([...path, key], before?.[key], after?.[key]))
  }
  const key = itemKey(path.at(-1), [before, after])
  if (key !== undefined && !(isBare(before) && isBare(after))) return compareItems(path, key, before, after)
  if (before === undefined) return after === undefined ? [] : [{ kind: 'added', path, after }]
  if (after === undefined) return [{ kind: 'removed', path, before }]
  return [{ kind: 'changed', path, before, after }]
}

function compareItems(path: Path, key: string, before: Json | undefined, after: Json | undefined): Change[] {
  const [old, now] = [itemsByKey(before, key), itemsByKey(after, key)]
  const changes = [...new Set([...now.keys(), ...old.keys()])].flatMap((one) =>
    compare([...path, `[${one}]`], old.get(one), now.get(one)),
  )
  const [was, is] = [
    [...old.keys()].filter((one) => now.has(one)),
    [...now.keys()].filter((one) => old.has(one)),
  ]
  return isSame(was, is)
    ? changes
    : [...changes, { kind: 'reordered', path, before: [...old.keys()], after: [...now.keys()] }]
}

/** An object to be looked into, or nothing where the other version may have one. An empty object is a value. */
const isBranch = (value: Json | undefined): value is { readonly [key: string]: Json } | undefined =>
  value === undefined || (isObject(value) && !isRange(value) && Object.keys(value).length > 0)

/** No list, or one without items: nothing to match item by item. */
const isBare = (value: Json | undefined) => value === undefined || (isList(value) && value.length === 0)

/** A piece of text that both versions have, or only one. */
export interface TextPiece {
  readonly kind: 'same' | 'added' | 'removed'
  readonly text: string
}

/** Two texts by words: all `same` and `removed` pieces make the first, all `same` and `added` ones the second. */
export const diffWords = (before: string, after: string): TextPiece[] =>
  diffWordsWithSpace(before, after).map(({ added, removed, value }) => ({
    kind: added ? 'added' : removed ? 'removed' : 'same',
    text: value,
  }))
