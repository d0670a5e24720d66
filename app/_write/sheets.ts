import type { Draft } from '#lib/db/drafts.ts'
import { keptSheetsOf, ownKeptSheet } from '#lib/db/kept-sheets.ts'
import { copyOf, type WorkedOn } from '#lib/entry/worked-on.ts'
import type { Changes } from '#lib/workflow/draft-fields.ts'
import { kindOf } from '../_kept/kinds.ts'
import type { Option } from '../_ui/field.tsx'
import { formatDate } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { printForm } from './print.ts'
import { itemsOf } from './read.ts'

const LIST = 'sheets'
/** What its writer says of a sheet; all else is copied from it. */
const ASKED = ['sheet', 'of']

/** The sheets that a draft's writer keeps, and those of others that the draft names already. */
export async function sheetChoices({ kind, ownerKey, typed }: Draft): Promise<Option[]> {
  if (kind === 'source' || kind === 'row') return []
  const kept = await keptSheetsOf(ownerKey)
  const own = kept.map(({ id, name, calculation, createdAt }) => ({
    value: id,
    label: words('write')('sheets.choice', {
      name,
      kind: kindOf(calculation),
      on: formatDate(createdAt),
    }),
  }))
  const named = itemsOf(typed, LIST).flatMap((index) => {
    const id = typed[`${LIST}.${index}.sheet`] ?? ''
    const known = id === '' || own.some(({ value }) => value === id)
    return known ? [] : [{ value: id, label: typed[`${LIST}.${index}.title`] ?? id }]
  })
  return [...own, ...named]
}

/** Copies of the sheets that a draft names, of those that its writer keeps. */
export async function sheetsNamed({ ownerKey, typed }: Draft): Promise<Map<string, WorkedOn>> {
  const ids = new Set(itemsOf(typed, LIST).flatMap((index) => typed[`${LIST}.${index}.sheet`] ?? []))
  const kept = await Promise.all([...ids].map((id) => ownKeptSheet(ownerKey, id)))
  return new Map(kept.flatMap((one) => (one === null ? [] : [[one.id, copyOf(one)]])))
}

/**
 * What must be changed in a draft so that each sheet that it names stands there with its figures: those of a newly
 * chosen one come in, those of one that is named no longer go. What another writer named stays as it is.
 */
export function sheetChanges(
  { kind, typed }: Pick<Draft, 'kind' | 'typed'>,
  sheets: ReadonlyMap<string, WorkedOn>,
): Changes {
  const changes: Record<string, { was: string; is: string }> = {}
  for (const index of itemsOf(typed, LIST)) {
    const item = `${LIST}.${index}.`
    const id = typed[`${item}sheet`] ?? ''
    const copy = sheets.get(id)
    if (id !== '' && copy === undefined) continue
    const wanted = copy === undefined ? {} : copyText(kind, copy, item)
    const there = Object.keys(typed).filter((name) => name.startsWith(item))
    for (const name of new Set([...there, ...Object.keys(wanted)])) {
      if (ASKED.includes(name.slice(item.length))) continue
      const [was, is] = [typed[name] ?? '', wanted[name] ?? '']
      if (was !== is) changes[name] = { was, is }
    }
  }
  return changes
}

/** A copy as the text of a draft's fields. */
function copyText(kind: Draft['kind'], copy: WorkedOn, item: string): Record<string, string> {
  const printed = printForm(kind, { sheets: [copy] }, (_, id) => id)
  const first = `${LIST}.0.`
  return Object.fromEntries(
    Object.entries(printed).map(([name, text]) => [item + name.slice(first.length), text]),
  )
}
