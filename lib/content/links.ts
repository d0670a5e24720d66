import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import type { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { Link } from './markdown.ts'
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

/**
 * Adds a fault for a link that leads nowhere. Pages link to one another by file, `../cautions/quicklime.md`,
 * and to a row as `walls.md#common`; other sites by https address, which is not fetched.
 */
export function checkLinks(
  links: readonly Link[],
  rows: Collection<TableRow>,
  dir: string,
  faults: FaultList,
): void {
  for (const { to, place } of links) {
    if (to.startsWith('https://')) continue
    const [path = '', anchor] = to.split('#')
    const file = join(dirname(place.file), path)
    const isThere =
      path.endsWith('.md') &&
      file.startsWith('content/') &&
      existsSync(join(dir, file.slice('content/'.length)))
    const isRow =
      anchor === undefined || rows.has(`${path.replace(/^.*\//, '').replace(/\.md$/, '')}#${anchor}`)
    if (!isThere || !isRow) faults.add(place, `broken link "${to}"`)
  }
}
