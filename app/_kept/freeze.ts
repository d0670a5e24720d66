import type { KeptBlock, KeptCell, KeptFigure } from '#lib/entry/kept-sheet.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { System } from '../_ui/systems.ts'
import { inSystem, isFigure } from '../_ui/workshop/figures.ts'
import type { Block, Cell, Figure } from '../_ui/workshop/shown.ts'

/**
 * The parts of a result as they are kept: figures in the units in which they are shown, words as they stand, drawings as
 * the numbers that they are drawn from. Links to what lies near change with the site and are not kept.
 */
export const freezeBlocks = (blocks: readonly Block[], system: System): KeptBlock[] =>
  blocks.flatMap((block): KeptBlock[] => {
    if (block.kind === 'figures') {
      const figures = block.figures.map((figure) => ({
        name: figure.name,
        label: figure.label,
        ...frozen(figure, system),
      }))
      return [{ kind: 'figures', ...headOf(block), figures }]
    }
    if (block.kind === 'table')
      return [
        {
          kind: 'table',
          ...headOf(block),
          columns: block.columns.map(({ key, head, words }) => ({ key, head, ...(words && { words }) })),
          rows: block.rows.map(({ name, cells }) => ({ name, cells: frozenCells(cells, system) })),
          ...(block.stack && { stack: true }),
          ...(block.bars !== undefined && { bars: block.bars }),
        },
      ]
    if (block.kind === 'notice') {
      const { tone, title, text } = block
      return [{ kind: 'notice', tone, text, ...(title !== undefined && { title }) }]
    }
    if (block.kind === 'drawing') {
      const { name, title, says, drawn } = block
      return [{ kind: 'drawing', name, title, says, drawn }]
    }
    return block.kind === 'note' ? [{ kind: 'note', text: block.text }] : []
  })

const headOf = ({ name, title, lead }: { name: string; title: string; lead?: string }) => ({
  name,
  title,
  ...(lead !== undefined && { lead }),
})

const frozenCells = (cells: Readonly<Record<string, Cell>>, system: System): Record<string, KeptCell> =>
  Object.fromEntries(
    Object.entries(cells).map(([key, cell]): [string, KeptCell] => {
      if (cell === null || typeof cell === 'string') return [key, cell]
      if (isFigure(cell)) return [key, frozen(cell, system)]
      return [key, { words: cell.words, ...knownFrom(cell) }]
    }),
  )

function frozen(figure: Omit<Figure, 'name' | 'label'>, system: System): KeptFigure {
  const { value, unit } = inSystem(figure, system)
  return {
    value: value === null || typeof value === 'number' ? value : bare(value),
    unit,
    ...(figure.as !== undefined && { as: figure.as }),
    ...knownFrom(figure),
    ...(figure.note !== undefined && { note: figure.note }),
  }
}

/** The three figures alone: a range may carry more with it. */
const bare = ({ low, typical, high }: Range): Range => ({ low, typical, high })

const knownFrom = ({ basis, source }: Pick<Figure, 'basis' | 'source'>) => ({
  ...(basis !== undefined && { basis }),
  ...(source !== undefined && { source }),
})
