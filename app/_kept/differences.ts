import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { words } from '../_words/index.ts'
import { printedOf } from './printed.ts'

/** One figure or word that prints otherwise today; null where it was not there, or is there no more. */
export interface Difference {
  readonly name: string
  readonly label: string
  readonly kept: string | null
  readonly today: string | null
}

/** All that prints otherwise in `today` than it was kept, in the order of the sheet; what is new comes last. */
export function differencesOf(kept: readonly KeptBlock[], today: readonly KeptBlock[]): Difference[] {
  const [before, now] = [printed(kept), printed(today)]
  const names = new Set([...before.keys(), ...now.keys()])
  return [...names].flatMap((name) => {
    const [was, is] = [before.get(name), now.get(name)]
    if (was?.text === is?.text) return []
    return [{ name, label: (was ?? is)?.label ?? name, kept: was?.text ?? null, today: is?.text ?? null }]
  })
}

/** Everything that a sheet prints, by name. A notice has none, and stands for itself. */
function printed(blocks: readonly KeptBlock[]): Map<string, { label: string; text: string }> {
  const t = words('common')
  const all = new Map(printedOf(blocks).map(({ name, label, value }) => [name, { label, text: value }]))
  for (const block of blocks) {
    if (block.kind === 'list')
      for (const { name, text } of block.items) all.set(`${block.name}.${name}`, { label: block.title, text })
    if (block.kind === 'notice')
      all.set(`notice.${block.text}`, { label: block.title ?? t(`notice.${block.tone}`), text: block.text })
    if (block.kind === 'note') all.set(`note.${block.text}`, { label: t('notice.note'), text: block.text })
  }
  return all
}
