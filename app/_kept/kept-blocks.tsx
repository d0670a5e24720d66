import { content } from '#lib/content/index.ts'
import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { shortCitation } from '../_ui/citation.tsx'
import { BenchBlock } from '../_ui/workshop/blocks.tsx'
import type { BenchData, Block } from '../_ui/workshop/calculation.ts'
import '../_ui/workshop/workshop.css'

/** The parts of a kept sheet, drawn as they were when it was worked. */
export const KeptBlocks = ({ blocks }: { blocks: readonly KeptBlock[] }) => {
  const data: BenchData = { materials: {}, terms: {}, cites: citesOf(blocks) }
  return blocks.map((block, place) =>
    block.kind === 'list' ? (
      <KeptList key={block.name} block={block} />
    ) : (
      // Metric here means as they stand: figures are kept in the units in which they were shown.
      // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their places; notices have no name
      <BenchBlock key={place} block={block as Block} system="metric" data={data} />
    ),
  )
}

function KeptList({ block }: { block: Extract<KeptBlock, { kind: 'list' }> }) {
  const { title, lead, items, ordered } = block
  const lines = items.map(({ name, text }) => <li key={name}>{text}</li>)
  return (
    <div>
      <h3>{title}</h3>
      {lead !== undefined && <p className="note">{lead}</p>}
      {ordered === true ? <ol start={0}>{lines}</ol> : <ul>{lines}</ul>}
    </div>
  )
}

/** Short citations of the sources that the figures name, as the content has them today. */
function citesOf(blocks: readonly KeptBlock[]): Record<string, string> {
  const { sources } = content()
  const named = blocks.flatMap((block) => {
    if (block.kind === 'figures') return block.figures.map(({ source }) => source)
    if (block.kind !== 'table') return []
    return block.rows.flatMap(({ cells }) =>
      Object.values(cells).map((cell) => (typeof cell === 'object' ? cell?.source : undefined)),
    )
  })
  return Object.fromEntries(
    named.flatMap((text) => {
      const id = text?.split(', ')[0]
      const source = id === undefined ? undefined : sources.get(id)
      return source && id !== undefined ? [[id, shortCitation(source)]] : []
    }),
  )
}
