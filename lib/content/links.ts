import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { Link } from './markdown.ts'
import type { LinkTarget, TableRow } from './types.ts'

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

/** Folders whose pages may be linked to. */
const LINKED = ['tables', 'guides', 'cautions', 'sources'] as const

/**
 * Where a link leads. Pages link to one another by file, `../cautions/quicklime.md` or
 * `../sources/pliny-1857.json`, and to a row as `../tables/walls.md#common`.
 */
export function targetOf(url: string): LinkTarget {
  const found = /^\.\.\/(?<folder>[a-z]+)\/(?<id>[a-z0-9-]+)\.(?:md|json)(?:#(?<anchor>[a-z0-9-]+))?$/.exec(
    url,
  )?.groups
  const collection = LINKED.find((folder) => folder === found?.folder)
  if (!found || collection === undefined) return { collection: 'elsewhere', id: url }
  const { id = '', anchor } = found
  return { collection, id, ...(anchor !== undefined && { anchor }) }
}

/** Adds a fault for a link that leads nowhere; other sites, by https address, are not fetched. */
export function checkLinks(
  links: readonly Link[],
  rows: Collection<TableRow>,
  dir: string,
  faults: FaultList,
): void {
  for (const { to, place } of links) {
    const { collection, id, anchor } = targetOf(to)
    const isThere =
      collection === 'elsewhere'
        ? id.startsWith('https://')
        : existsSync(join(dir, collection, `${id}.${collection === 'sources' ? 'json' : 'md'}`))
    const isRow = anchor === undefined || rows.has(`${id}#${anchor}`)
    if (!isThere || !isRow) faults.add(place, `broken link "${to}"`)
  }
}
