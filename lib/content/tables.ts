import type { RootContent, Table } from 'mdast'
import { Collection } from './collect.ts'
import type { FaultList } from './fault.ts'
import type { ContentFile } from './files.ts'
import { type Link, placeOf, readCells, readPage, readParagraphs } from './markdown.ts'
import { COLUMNS, type RowContext, readRow } from './row.ts'
import { tableFront } from './schemas.ts'
import type { Material, ProportionTable, Source, TableRow } from './types.ts'

/** Reads the proportion tables: front matter, paragraphs, then one table whose rows are the rows. */
export function readTables(
  files: readonly ContentFile[],
  sources: Collection<Source>,
  materials: Collection<Material>,
  faults: FaultList,
): { tables: Collection<ProportionTable>; rows: Collection<TableRow>; links: Link[] } {
  const tables = new Collection<ProportionTable>('table', faults)
  const rows = new Collection<TableRow>('row', faults)
  const links: Link[] = []
  for (const file of files) {
    const page = readPage(tableFront, file, faults)
    if (!page) continue
    links.push(...page.links)
    const { above, table } = splitAtTable(file, page.blocks, faults)
    const intro = readParagraphs(file, above, faults)
    if (!table) continue
    const context = { table: file.name, defaults: page.front.value, sources, materials, faults }
    const read = readRows(file, table, context, rows)
    tables.add(
      file.name,
      { id: file.name, title: page.front.value.title, intro, rows: read },
      page.front.placeOf([]),
    )
  }
  return { tables, rows, links }
}

function splitAtTable(file: ContentFile, blocks: readonly RootContent[], faults: FaultList) {
  const index = blocks.findIndex((block) => block.type === 'table')
  const table = blocks[index]
  if (table?.type !== 'table') {
    faults.add({ file: file.path, line: 1, column: 1 }, 'the page has no table')
    return { above: blocks, table: undefined }
  }
  const after = blocks[index + 1]
  if (after) faults.add(placeOf(file, after), 'nothing may follow the table')
  return { above: blocks.slice(0, index), table }
}

function readRows(
  file: ContentFile,
  table: Table,
  context: RowContext,
  all: Collection<TableRow>,
): TableRow[] {
  const { head, rows } = readCells(file, table)
  const unknown = head.filter(({ text }) => !COLUMNS.includes(text))
  for (const { text, place } of unknown) {
    context.faults.add(place, `unknown column "${text}"; columns are: ${COLUMNS.join(' ')}`)
  }
  if (unknown.length > 0) return []
  return rows.flatMap(({ cells, place }) => {
    const row = readRow(cells, place, context)
    if (!row) return []
    all.add(row.ref, row, cells.get('id')?.place ?? place)
    return [row]
  })
}
