import type { WrittenKind } from '#lib/entry/body.ts'
import { bodyTree, nodeAt } from '#lib/entry/tree.ts'
import { Refusal } from '#lib/errors.ts'

/** Field → what stood in it when the writer began, and what stands in it now. */
export type Changes = Readonly<Record<string, { readonly was: string; readonly is: string }>>

/** Bounds of one draft, far above what any entry holds: the figures of four kept sheets are two fields each. */
const MOST_FIELDS = 8000
export const LONGEST_TEXT = 20_000
const MOST_TEXT = 800_000

/** Fields of the entry itself, not of its body. */
const OF_ENTRY: readonly string[] = ['entry.slug', 'entry.note']
/** Whether a further version has this field too: an address is settled by the first. */
export const isOfEveryVersion = (name: string): boolean => name !== 'entry.slug'

/** Set when the draft begins, and by nobody after. */
const FIXED: readonly string[] = ['case', 'adaptedFrom', 'invented']

/** Whether a form of this kind has a field of this name that its writer fills. */
export function isField(kind: WrittenKind, name: string): boolean {
  if (OF_ENTRY.includes(name)) return true
  const path = name.replace(/-mark$/, '')
  if (FIXED.includes(path)) return false
  const node = nodeAt(bodyTree(kind), path)
  if (node?.type === 'list') return node.of.type !== 'object'
  if (node !== undefined) return node.type !== 'object'
  return (
    path.endsWith('.typical') && nodeAt(bodyTree(kind), path.slice(0, -'.typical'.length))?.type === 'range'
  )
}

/**
 * Refuses what no form of this kind asks, and text that cannot be kept as it is.
 *
 * @throws Refusal `invalid`
 */
export function checkNames(kind: WrittenKind, changes: Changes): void {
  const faults = Object.entries(changes).flatMap(([field, { is }]) => {
    if (!isField(kind, field)) return [{ field: field.slice(0, 160), code: 'unknown-field' }]
    // PostgreSQL keeps no U+0000 and no half of a character.
    if (is.includes('\0') || /\p{Surrogate}/u.test(is)) return [{ field, code: 'invisible-character' }]
    return is.length > LONGEST_TEXT ? [{ field, code: 'too-long', limit: LONGEST_TEXT }] : []
  })
  if (faults.length > 0) throw new Refusal('invalid', 'Some of this cannot be kept.', faults)
}

/** @throws Refusal `invalid` when a draft would hold more than any entry can */
export function checkSize(texts: readonly (readonly [name: string, text: string])[]): void {
  const sizes = texts.map(([name, text]) => name.length + text.length)
  const size = sizes.reduce((sum, length) => sum + length, 0)
  if (sizes.length > MOST_FIELDS || size > MOST_TEXT)
    throw new Refusal('invalid', `A draft holds at most ${MOST_TEXT} characters.`)
}
