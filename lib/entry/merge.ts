import { isObject, isRange, isSame, itemKey, itemsByKey, type Json, type Path, pathText } from './json.ts'

/** A field that both changed, each in another way. Absent is `undefined`. */
export interface MergeConflict {
  readonly path: Path
  readonly base: Json | undefined
  readonly theirs: Json | undefined
  readonly yours: Json | undefined
}

export interface Merged {
  /** All that only one of the two changed, as they changed it; in conflict, what is recorded already (`theirs`). */
  readonly merged: Json
  readonly conflicts: readonly MergeConflict[]
}

/** Which of two versions a writer keeps in a field. */
export const SIDES = ['theirs', 'yours'] as const
export type Side = (typeof SIDES)[number]

/** Fields that mean something only together: where both touched one of a group, the writer chooses for all of it. */
const TOGETHER: readonly (readonly string[])[] = [
  ['latitude', 'longitude', 'ownerAgreedPosition'],
  ['standing', 'standingReason'],
  ['started', 'finished'],
  ['from', 'to'],
  ['low', 'typical', 'high'],
  ['case', 'work', 'on', 'baseline'],
  ['joint', 'unit', 'damp'],
]

type Merge = { readonly value: Json | undefined; readonly conflicts: readonly MergeConflict[] }

/**
 * Two versions that started from one, brought together field by field. Items of lists with keys are matched by
 * key; other lists, and figures with their range, are one thing each. Nothing is decided where both changed the same
 * field: those are the conflicts.
 *
 * @param base what both started from
 * @param theirs what was recorded meanwhile
 * @param yours what the writer has now
 */
export function mergeBodies(base: unknown, theirs: unknown, yours: unknown): Merged {
  const place = { path: [], settle: ({ theirs }: MergeConflict) => theirs }
  const { value, conflicts } = merge(place, base as Json, theirs as Json, yours as Json)
  return { merged: value ?? {}, conflicts }
}

/** {@link mergeBodies} with each conflict settled; a conflict with no choice keeps what is recorded. */
export function mergeWith(
  base: unknown,
  theirs: unknown,
  yours: unknown,
  choices: Readonly<Record<string, Side>>,
): Json {
  const settle = (conflict: MergeConflict) => conflict[choices[pathText(conflict.path)] ?? 'theirs']
  return merge({ path: [], settle }, base as Json, theirs as Json, yours as Json).value ?? {}
}

/** Where a merge stands, and how it settles what both changed. */
interface Place {
  readonly path: Path
  readonly settle: (conflict: MergeConflict) => Json | undefined
}

function merge(
  place: Place,
  base: Json | undefined,
  theirs: Json | undefined,
  yours: Json | undefined,
): Merge {
  if (isSame(theirs, yours) || isSame(base, yours)) return { value: theirs, conflicts: [] }
  if (isSame(base, theirs)) return { value: yours, conflicts: [] }
  const key = itemKey(place.path.at(-1), [base, theirs, yours])
  if (key !== undefined && theirs !== undefined && yours !== undefined) {
    const [was, one, other] = [itemsByKey(base, key), itemsByKey(theirs, key), itemsByKey(yours, key)]
    const order = mergeOrder([...was.keys()], [...one.keys()], [...other.keys()])
    if (order !== undefined) return mergeItems(place, order, was, one, other)
  } else if (
    isObject(theirs) &&
    isObject(yours) &&
    ![base, theirs, yours].some(isRange) &&
    (base === undefined || isObject(base))
  )
    return mergeFields(place, base ?? {}, theirs, yours)
  return contest(place, base, theirs, yours)
}

function contest(
  { path, settle }: Place,
  base: Json | undefined,
  theirs: Json | undefined,
  yours: Json | undefined,
): Merge {
  const conflict = { path, base, theirs, yours }
  return { value: settle(conflict), conflicts: [conflict] }
}

const inside = ({ path, settle }: Place, part: string): Place => ({ path: [...path, part], settle })

type Fields = { readonly [key: string]: Json }

function mergeFields(place: Place, base: Fields, theirs: Fields, yours: Fields): Merge {
  const names = [...new Set([...Object.keys(theirs), ...Object.keys(yours)])]
  const bound = new Set(TOGETHER.filter((group) => isContested(group, base, theirs, yours)).flat())
  const parts = names.map((name) => {
    const how = bound.has(name) && !isSame(theirs[name], yours[name]) ? contest : merge
    return [name, how(inside(place, name), base[name], theirs[name], yours[name])] as const
  })
  return {
    value: Object.fromEntries(
      parts.flatMap(([name, { value }]) => (value === undefined ? [] : [[name, value]])),
    ),
    conflicts: parts.flatMap(([, { conflicts }]) => conflicts),
  }
}

const isContested = (group: readonly string[], base: Fields, theirs: Fields, yours: Fields): boolean =>
  group.some((name) => !isSame(base[name], theirs[name])) &&
  group.some((name) => !isSame(base[name], yours[name])) &&
  group.some((name) => !isSame(theirs[name], yours[name]))

function mergeItems(
  place: Place,
  order: readonly string[],
  base: ReadonlyMap<string, Json>,
  theirs: ReadonlyMap<string, Json>,
  yours: ReadonlyMap<string, Json>,
): Merge {
  const parts = order.map((key) =>
    merge(inside(place, `[${key}]`), base.get(key), theirs.get(key), yours.get(key)),
  )
  return {
    value: parts.flatMap(({ value }) => (value === undefined ? [] : [value])),
    conflicts: parts.flatMap(({ conflicts }) => conflicts),
  }
}

/** Keys of both versions in the order of the one that moved items; undefined where both moved them, each otherwise. */
function mergeOrder(
  base: readonly string[],
  theirs: readonly string[],
  yours: readonly string[],
): readonly string[] | undefined {
  const yoursMoved = hasMoved(base, yours)
  if (yoursMoved && hasMoved(base, theirs) && hasMoved(theirs, yours)) return undefined
  return yoursMoved ? interleave(yours, theirs) : interleave(theirs, yours)
}

const hasMoved = (before: readonly string[], after: readonly string[]): boolean => {
  const [was, is] = [before.filter((key) => after.includes(key)), after.filter((key) => before.includes(key))]
  return !isSame(was, is)
}

/** The first list with the keys that only the second has, each after the one that it follows there. */
function interleave(first: readonly string[], second: readonly string[]): string[] {
  const order = [...first]
  for (const [index, key] of second.entries()) {
    if (order.includes(key)) continue
    const before = second[index - 1]
    order.splice(before === undefined ? 0 : order.indexOf(before) + 1, 0, key)
  }
  return order
}
