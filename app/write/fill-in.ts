import { materialBy } from '#lib/content/known-materials.ts'
import type { Draft } from '#lib/db/drafts.ts'
import { bodyTree, nodeAt } from '#lib/entry/tree.ts'
import type { Changes } from '#lib/workflow/draft-fields.ts'
import { idFor } from '../_write/ids.ts'
import { folded } from '../_write/pick.ts'
import { itemsOf } from '../_write/read.ts'
import { sheetChanges } from '../_write/sheets.ts'
import type { FormView } from '../_write/view.ts'

/**
 * What a draft can be given without asking, all of it shown when its page is drawn again: ids for what is pointed
 * at, the part that a material plays, the version of a recipe, the local name by which a stone was typed, the figures
 * of a sheet.
 */
export function fillIn(
  { kind, typed }: Draft,
  { picks, sheets }: Pick<FormView, 'picks' | 'sheets'>,
): Changes {
  const found = new Map<string, string>()
  const fill = (name: string, is: string) => {
    if (nodeAt(bodyTree(kind), name) !== undefined && (typed[name] ?? '') === '' && is !== '')
      found.set(name, is)
  }
  for (const list of ['works', 'mortars', ...itemsOf(typed, 'mortars').map((i) => `mortars.${i}.samples`)]) {
    const taken = new Set(itemsOf(typed, list).flatMap((i) => typed[`${list}.${i}.id`] ?? []))
    for (const index of itemsOf(typed, list)) {
      const id = typed[`${list}.${index}.id`] ?? idFor(typed, `${list}.${index}`, taken)
      taken.add(id)
      fill(`${list}.${index}.id`, id)
    }
  }
  for (const index of itemsOf(typed, 'ingredients')) {
    const material = picks.materials.find(typed[`ingredients.${index}.material`] ?? '')
    fill(`ingredients.${index}.role`, materialBy(material ?? '')?.role ?? '')
  }
  for (const index of itemsOf(typed, 'fabric.units')) {
    const name = (typed[`fabric.units.${index}.unit`] ?? '').trim()
    const id = picks.units.find(name)
    if (id !== undefined && id !== name && folded(picks.units.show(id)) !== folded(name))
      fill(`fabric.units.${index}.localName`, name)
  }
  const filled = [...found].map(([name, is]) => [name, { was: '', is }] as const)
  const pinned = itemsOf(typed, 'works').flatMap((index) => {
    const name = `works.${index}.recipe`
    const was = typed[name] ?? ''
    const ref = picks.recipes.find(was.trim())
    const is = ref === undefined ? was : picks.recipes.show(ref)
    return is === was ? [] : [[name, { was, is }] as const]
  })
  return { ...Object.fromEntries([...filled, ...pinned]), ...sheetChanges({ kind, typed }, sheets) }
}
