import { content } from '#lib/content/index.ts'
import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { shortCitation } from '../_ui/citation.tsx'

/** Short citations of the sources that a kept sheet names, by id, as the content has them today. */
export function citesOf(blocks: readonly KeptBlock[]): Record<string, string> {
  const { sources } = content()
  return Object.fromEntries(
    blocks.flatMap(sourcesIn).flatMap((text) => {
      const id = text?.split(', ')[0]
      const source = id === undefined ? undefined : sources.get(id)
      return source && id !== undefined ? [[id, shortCitation(source)]] : []
    }),
  )
}

function sourcesIn(block: KeptBlock): (string | undefined)[] {
  if (block.kind === 'figures') return block.figures.map(({ source }) => source)
  if (block.kind === 'list') return block.items.map(({ source }) => source)
  if (block.kind === 'working') return block.steps.map(({ source }) => source)
  if (block.kind !== 'table') return []
  return block.rows.flatMap(({ cells }) =>
    Object.values(cells).map((cell) => (typeof cell === 'object' ? cell?.source : undefined)),
  )
}
