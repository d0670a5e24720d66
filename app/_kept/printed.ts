import type { KeptBlock, KeptFigures } from '#lib/entry/kept-sheet.ts'
import { figureText, namedFigures, namedWords } from '../_ui/workshop/figures.ts'
import type { Block } from '../_ui/workshop/shown.ts'
import { words } from '../_words/index.ts'

interface Printed {
  readonly name: string
  readonly label: string
  readonly value: string
  readonly cost?: true
}

/** The parts of a kept sheet that hold figures and words in the way of a result's. */
export const resultBlocks = (blocks: readonly KeptBlock[]): Block[] =>
  blocks.flatMap((block) =>
    block.kind === 'list' || block.kind === 'drawing' || block.kind === 'working' ? [] : [block as Block],
  )

/** Every figure and word in the kept parts of a sheet, by name, as it prints. */
export function printedOf(blocks: readonly KeptBlock[]): Printed[] {
  const drawn = resultBlocks(blocks)
  // Metric here means as they stand: figures are kept in the units in which they were shown.
  const figures = namedFigures(drawn).map(({ name, label, ...figure }) => ({
    name,
    label,
    value: figureText(figure, 'metric') ?? words('workOut')('unknown'),
    ...(figure.as === 'money' && { cost: true as const }),
  }))
  const said = namedWords(drawn).map(({ name, label, words: value }) => ({ name, label, value }))
  return [...figures, ...said].filter(({ value }) => value.trim() !== '')
}

/** The same without names, for whoever names the sheet as what they rest on. */
export const printedLines = (blocks: readonly KeptBlock[]): KeptFigures['printed'] =>
  printedOf(blocks).map(({ name: _, ...line }) => line)
