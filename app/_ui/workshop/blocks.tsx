import { words } from '../../_words/index.ts'
import { DataTable } from '../data-table.tsx'
import { moneyText } from '../money-text.ts'
import { Notice } from '../notice.tsx'
import { Quantity, QuantityTexts } from '../quantity.tsx'
import { RangeBar } from '../range-bar.tsx'
import { Ratio } from '../ratio.tsx'
import type { System } from '../systems.ts'
import type { BenchData } from './brought.ts'
import { Cited } from './cited.tsx'
import { inSystem, isFigure, scaleEnd } from './figures.ts'
import type { Block, Cell, Figure } from './shown.ts'

interface Props<K extends Block['kind']> {
  readonly block: Extract<Block, { kind: K }>
  readonly system: System
  readonly data: BenchData
}

/** One part of a result. */
export function BenchBlock({ block, system, data }: { block: Block; system: System; data: BenchData }) {
  switch (block.kind) {
    case 'figures':
      return <Figures block={block} system={system} data={data} />
    case 'table':
      return <Table block={block} system={system} data={data} />
    case 'notice':
      return (
        <Notice kind={block.tone} title={block.title}>
          <p>{block.text}</p>
        </Notice>
      )
    case 'note':
      return (
        <p className="note">
          {block.text}{' '}
          {block.link && (
            <a className="screen-only" href={block.link.href}>
              {block.link.words}
            </a>
          )}
        </p>
      )
    case 'links':
      return (
        <div>
          <h3>{block.title}</h3>
          {block.lead !== undefined && <p className="note">{block.lead}</p>}
          <ul>
            {block.links.map(({ href, words: name, note }) => (
              <li key={href}>
                <a href={href}>{name}</a> <span className="note">{note}</span>
              </li>
            ))}
          </ul>
        </div>
      )
    case 'drawing':
      return (
        <figure className="bench-drawing">
          <figcaption>
            <h3>{block.title}</h3>
            <p className="note">{block.says}</p>
          </figcaption>
          {block.draw}
        </figure>
      )
  }
}

type Printed = Pick<Figure, 'value' | 'unit' | 'as' | 'liquid' | 'bench'>

/** A figure in the reader's units; a ratio as a ratio; what is not known as not known. */
export function Printed({ figure, system }: { figure: Printed; system: System }) {
  const { value, unit } = inSystem(figure, system)
  if (value === null) return <span className="unknown">{words('workOut')('unknown')}</span>
  if (figure.as === 'ratio')
    return <Ratio value={typeof value === 'number' ? { low: value, typical: value, high: value } : value} />
  if (figure.as === 'money') return <QuantityTexts {...moneyText(value)} />
  return <Quantity value={value} unit={unit} />
}

/** The range of a figure drawn, where it has one above nought. */
function Drawn({ figure, system, max }: { figure: Printed; system: System; max: number }) {
  const { value } = inSystem(figure, system)
  return value === null || typeof value === 'number' || value.low < 0 || value.low === value.high ? null : (
    <RangeBar value={value} max={max} />
  )
}

function Figures({ block: { title, lead, figures }, system, data }: Props<'figures'>) {
  const shown = figures.map((figure) => inSystem(figure, system))
  const endOf = (unit: string) => scaleEnd(shown.filter((one) => one.unit === unit).map(({ value }) => value))
  return (
    <div>
      <h3>{title}</h3>
      {lead !== undefined && <p className="note">{lead}</p>}
      <dl className="facts bench-figures">
        {figures.map((figure, place) => (
          <div key={figure.name}>
            <dt>{figure.label}</dt>
            <dd>
              <Printed figure={figure} system={system} />
              <Drawn figure={figure} system={system} max={endOf(shown[place]?.unit ?? '1')} />
              {figure.note !== undefined && <p className="note">{figure.note}</p>}
              {(figure.basis !== undefined || figure.source !== undefined) && (
                <p className="note">
                  <Cited text={figure.source} basis={figure.basis} cites={data.cites} />
                </p>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  )
}

function Table({ block, system, data }: Props<'table'>) {
  const { title, lead, columns, rows, stack = false, bars } = block
  const max = scaleEnd(
    rows.map(({ cells }) => {
      const cell = bars === undefined ? null : cells[bars]
      return isFigure(cell) ? inSystem(cell, system).value : null
    }),
  )
  return (
    <div>
      <h3>{title}</h3>
      {lead !== undefined && <p className="note">{lead}</p>}
      <DataTable<string>
        label={title}
        caption={title}
        hideCaption
        stack={stack}
        columns={columns.map(({ key, head, words: wordy = false }, place) => ({
          key,
          head,
          ...(place === 0 && { names: true }),
          ...(place > 0 && !wordy && !stack && { number: true }),
        }))}
        rows={rows.map(({ name, cells }) => ({
          key: name,
          cells: Object.fromEntries(
            columns.map(({ key }) => [
              key,
              cellOf(cells[key] ?? null, system, data, key === bars ? max : null),
            ]),
          ),
        }))}
      />
    </div>
  )
}

function cellOf(cell: Cell, system: System, data: BenchData, max: number | null) {
  if (cell === null || typeof cell === 'string') return cell
  return (
    <>
      {isFigure(cell) ? <Printed figure={cell} system={system} /> : cell.words}
      {max !== null && isFigure(cell) && <Drawn figure={cell} system={system} max={max} />}
      {(cell.basis !== undefined || cell.source !== undefined) && (
        <>
          {' '}
          <Cited text={cell.source} basis={cell.basis} cites={data.cites} />
        </>
      )}
      {isFigure(cell) && cell.note !== undefined && <span className="note"> {cell.note}</span>}
    </>
  )
}
