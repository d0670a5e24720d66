import type { KeptBlock } from '#lib/entry/kept-sheet.ts'
import { Drawing } from '../_ui/drawings/drawing.tsx'
import { BenchBlock } from '../_ui/workshop/blocks.tsx'
import type { BenchData } from '../_ui/workshop/brought.ts'
import { Cited } from '../_ui/workshop/cited.tsx'
import type { Block } from '../_ui/workshop/shown.ts'
import { StepTable } from '../_ui/workshop/working.tsx'
import { words } from '../_words/index.ts'
import { citesOf } from './cites.ts'
import { KeptDrawing } from './kept-drawing.tsx'
import '../_ui/workshop/workshop.css'

type Of<K extends KeptBlock['kind']> = Extract<KeptBlock, { kind: K }>

/**
 * The parts of a kept sheet, drawn as they were when it was worked; its working folded behind them.
 *
 * @param props.open unfolds the working, so that it prints too
 */
export function KeptBlocks({ blocks, open }: { blocks: readonly KeptBlock[]; open: boolean }) {
  const data: BenchData = { materials: {}, terms: {}, cites: citesOf(blocks) }
  const working = blocks.filter((block) => block.kind === 'working')
  const works = blocks.filter(isOfWork)
  return (
    <>
      {blocks.map((block, place) => {
        if (block.kind === 'working') return null
        if (block === works[0]) return <Works key="works" works={works} />
        if (isOfWork(block)) return null
        // biome-ignore lint/suspicious/noArrayIndexKey: parts keep their places; notices have no name
        return <Part key={place} block={block} data={data} />
      })}
      {working.length > 0 && <Working blocks={working} open={open} data={data} />}
    </>
  )
}

const isOfWork = (block: KeptBlock): block is Of<'drawing'> =>
  block.kind === 'drawing' && (block.drawn.of === 'joint' || block.drawn.of === 'face')

/** Joints and faces of works are small and stand side by side, as on a job sheet. */
const Works = ({ works }: { works: readonly Of<'drawing'>[] }) => (
  <div className="drawings">
    {works.map(({ name, title, says, drawn }) => (
      <Drawing key={name} title={title} says={says}>
        <KeptDrawing drawn={drawn} />
      </Drawing>
    ))}
  </div>
)

function Part({ block, data }: { block: Exclude<KeptBlock, Of<'working'>>; data: BenchData }) {
  if (block.kind === 'list') return <List block={block} data={data} />
  const shown: Block =
    block.kind === 'drawing' ? { ...block, draw: <KeptDrawing drawn={block.drawn} /> } : (block as Block)
  // Metric here means as they stand: figures are kept in the units in which they were shown.
  return <BenchBlock block={shown} system="metric" data={data} />
}

function List({ block, data }: { block: Of<'list'>; data: BenchData }) {
  const { title, lead, items, ordered } = block
  const lines = items.map(({ name, text, source }) => (
    <li key={name}>
      {text} {source !== undefined && <Cited text={source} cites={data.cites} />}
    </li>
  ))
  return (
    <div>
      <h3>{title}</h3>
      {lead !== undefined && <p className="note">{lead}</p>}
      {ordered === true ? <ol start={0}>{lines}</ol> : <ul>{lines}</ul>}
    </div>
  )
}

function Working({
  blocks,
  open,
  data,
}: {
  blocks: readonly Of<'working'>[]
  open: boolean
  data: BenchData
}) {
  const t = words('workOut')
  return (
    <details className="bench-working" id="working" open={open}>
      <summary>{t('working.show')}</summary>
      <p className="note">{t('working.note')}</p>
      {blocks.map(({ name, title, steps }) => (
        <div key={name}>
          {blocks.length > 1 && <h4>{title}</h4>}
          <StepTable
            steps={steps}
            meaningOf={(means) => means}
            sourceOf={(text) => <Cited text={text} cites={data.cites} />}
          />
        </div>
      ))}
    </details>
  )
}
