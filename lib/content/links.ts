import type { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { TableRow } from './types.ts'

/** Adds a fault for an ancestor that does not exist, is the row itself, or would lend memory a better name. */
export function checkAncestors(rows: Collection<TableRow>, faults: FaultList): void {
  for (const [ref, row, place] of rows) {
    if (row.ancestor === undefined) continue
    const ancestor = rows.get(row.ancestor)
    if (ref === row.ancestor) faults.add(place, 'a row cannot be its own ancestor')
    else if (!ancestor) faults.add(place, `unknown row "${row.ancestor}" given as ancestor`)
    else if (ancestor.basis === 'memory' && row.basis !== 'memory') {
      faults.add(place, `a ${row.basis} row cannot rest on "${row.ancestor}", which is from memory`)
    }
  }
}

/** Rows from memory stay apart: a table holds only such rows, or none. */
export function checkMemoryApart(rows: Collection<TableRow>, faults: FaultList): void {
  const first = new Map<string, TableRow>()
  for (const [, row, place] of rows) {
    const other = first.get(row.table) ?? row
    first.set(row.table, other)
    if ((other.basis === 'memory') !== (row.basis === 'memory')) {
      faults.add(place, `rows from memory stay in a table of their own; "${other.id}" is ${other.basis}`)
    }
  }
}
