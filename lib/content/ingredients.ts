import type { Parts } from '#lib/entry/fields.ts'
import { MEASURED_STATES, type Measure, type MeasuredState, type Role } from '#lib/entry/terms.ts'
import type { RowIngredient } from './types.ts'

const LIME_ONLY: readonly MeasuredState[] = [
  'lump-quicklime',
  'ground-quicklime',
  'dry-hydrate',
  'putty',
  'slaked-not-stated',
  'quicklime-not-stated',
]
const NUMBER = String.raw`(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)`
const ITEM = new RegExp(
  String.raw`^(?<parts>\?|${NUMBER}(?:-${NUMBER})?)(?: \[(?<range>${NUMBER}-${NUMBER})\])? (?<material>[a-z][a-z0-9-]*)(?: \((?<state>[a-z-]+)\))?(?<mass> by mass)?$`,
)

export type RoleOf = (material: string) => Role | 'unread' | undefined

/** What was read, or the reasons why not with the offset of each in the cell. */
export type IngredientsOutcome =
  | { readonly ok: true; readonly ingredients: readonly RowIngredient[] }
  | { readonly ok: false; readonly faults: readonly { readonly at: number; readonly reason: string }[] }

/**
 * Reads an ingredients cell: `1 lime-fat (putty) : 2-3 sand-river : ? hair-cattle`. Parts are a figure,
 * a fraction (`1/2`, `2 1/2`), a range (`2-3`), a usual figure with its range (`3 [2-4]`) or `?` where
 * the source gives none. A lime always names the state it was measured in.
 *
 * @param roleOf the role of a material; `unread` when its own file is at fault, and is let pass here;
 *   nothing when there is no such material
 */
export function readIngredients(cell: string, roleOf: RoleOf): IngredientsOutcome {
  const faults: { at: number; reason: string }[] = []
  const ingredients: RowIngredient[] = []
  let at = 0
  for (const item of cell.split(' : ')) {
    const read = readItem(item.trim(), roleOf)
    if (typeof read === 'string') faults.push({ at, reason: read })
    else ingredients.push(read)
    at += item.length + ' : '.length
  }
  const measures = new Set(ingredients.filter((one) => one.parts !== null).map((one) => one.by))
  if (measures.size > 1)
    faults.push({ at: 0, reason: 'parts by volume and parts by mass cannot stand in one row' })
  return faults.length > 0 ? { ok: false, faults } : { ok: true, ingredients }
}

function readItem(item: string, roleOf: RoleOf): RowIngredient | string {
  const found = ITEM.exec(item)?.groups
  if (!found) return `"${item}" is not an ingredient such as "3 sand-pit" or "1 lime-fat (putty)"`
  const { material = '', state = 'not-stated', range } = found
  const role = roleOf(material)
  if (role === undefined) return `unknown material "${material}"`
  if (!isState(state)) return `unknown state "${state}"; one of: ${MEASURED_STATES.join(' ')}`
  const by: Measure = found.mass === undefined ? 'volume' : 'mass'
  if (role === 'unread') return { material, role: 'additive', parts: null, by, state }
  if (role === 'lime' && found.state === undefined)
    return `lime "${material}" must name the state it was measured in`
  if (role !== 'lime' && LIME_ONLY.includes(state)) return `"${state}" is a state of lime, not of ${material}`
  if (role === 'lime' && (state === 'dry' || state === 'damp')) return `"${state}" is not a state of lime`
  const parts = found.parts === '?' ? null : readParts(found.parts ?? '', range)
  if (typeof parts === 'string') return parts
  return { material, role, parts, by, state }
}

const isState = (state: string): state is MeasuredState =>
  (MEASURED_STATES as readonly string[]).includes(state)

function readParts(figure: string, range: string | undefined): Parts | string {
  const [low = 0, high = low] = (range ?? figure).split('-').map(readNumber)
  const parts = range === undefined ? { low, high } : { low, typical: readNumber(figure), high }
  const inOrder =
    low <= high && (parts.typical === undefined || (low <= parts.typical && parts.typical <= high))
  return low > 0 && Number.isFinite(high) && inOrder
    ? parts
    : `parts "${figure}" must be above zero and rise from low to high`
}

function readNumber(text: string): number {
  return text.split(' ').reduce((sum, piece) => {
    const [over = '', under = '1'] = piece.split('/')
    return sum + Number(over) / Number(under)
  }, 0)
}
