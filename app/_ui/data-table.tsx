// biome-ignore-all lint/a11y/noRedundantRoles: display: block takes the roles away on narrow screens
import type { ReactNode } from 'react'
import { Frame } from './frame.tsx'

export interface Column<K extends string> {
  key: K
  head: ReactNode
  /** Figures: set to the right, never broken. */
  number?: boolean
  /** Short words that must not break. */
  tight?: boolean
  /** This column names its row. */
  names?: boolean
}

export interface Row<K extends string> {
  key: string
  /** An anchor that can be cited. */
  id?: string
  cells: Readonly<Record<K, ReactNode>>
}

/**
 * A ruled table. On a narrow screen it either scrolls in its frame (figures) or, with `stack`, sets each
 * row as a block with the heads repeated (words). Roles are written out because a stacked table would
 * otherwise stop being one to a screen reader.
 */
export function DataTable<K extends string>(props: {
  caption: ReactNode
  hideCaption?: boolean
  columns: readonly Column<K>[]
  rows: readonly Row<K>[]
  stack?: boolean
  /** Names the frame, which the keyboard must be able to reach where it scrolls. */
  label: string
}) {
  const { caption, hideCaption = false, columns, rows, stack = false, label } = props
  const table = (
    <table className={stack ? 'table-stack' : undefined} role="table">
      <caption className={hideCaption ? 'hidden-words' : undefined}>{caption}</caption>
      <thead role="rowgroup">
        <tr role="row">
          {columns.map((column) => (
            <th
              key={column.key}
              scope="col"
              role="columnheader"
              className={column.number ? 'number' : undefined}
            >
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map((row) => (
          <tr key={row.key} id={row.id} role="row">
            {columns.map((column) => cellOf(column, row))}
          </tr>
        ))}
      </tbody>
    </table>
  )
  return stack ? <div className="table-frame">{table}</div> : <Frame label={label}>{table}</Frame>
}

function cellOf<K extends string>(column: Column<K>, row: Row<K>) {
  const content = row.cells[column.key]
  const className = column.number ? 'number' : column.tight ? 'tight' : undefined
  if (column.names)
    return (
      <th key={column.key} scope="row" role="rowheader" className={className}>
        {content}
      </th>
    )
  const head = typeof column.head === 'string' ? column.head : undefined
  const isEmpty = content === undefined || content === null || content === ''
  return (
    <td key={column.key} role="cell" className={className} data-head={head}>
      {isEmpty ? null : <div>{content}</div>}
    </td>
  )
}
