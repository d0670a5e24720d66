import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import type { Block } from '../_ui/workshop/calculation.ts'
import { figureText, namedFigures, namedWords } from '../_ui/workshop/figures.ts'
import { words } from '../_words/index.ts'

/** Every figure and word in the kept parts of a sheet, by name, as it prints. */
export function printedOf(blocks: readonly KeptBlock[]): { name: string; label: string; value: string }[] {
  const drawn = blocks.flatMap((block) => (block.kind === 'list' ? [] : [block as Block]))
  // Metric here means as they stand: figures are kept in the units in which they were shown.
  const figures = namedFigures(drawn).map(({ name, label, ...figure }) => ({
    name,
    label,
    value: figureText(figure, 'metric') ?? words('workOut')('unknown'),
  }))
  const said = namedWords(drawn).map(({ name, label, words: value }) => ({ name, label, value }))
  return [...figures, ...said].filter(({ value }) => value.trim() !== '')
}

/** The same without names, for whoever names the sheet as what they rest on. */
export const printedLines = (blocks: readonly KeptBlock[]): { label: string; value: string }[] =>
  printedOf(blocks).map(({ label, value }) => ({ label, value }))
