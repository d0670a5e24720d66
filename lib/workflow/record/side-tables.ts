import type { Db } from '#lib/db/client.ts'
import { Prisma } from '../../../prisma/generated/client.ts'

/**
 * Tables that hold truth beside the chains of entries. A backup carries every row of them as it stands, and a restore
 * puts them back in this order: what is pointed at comes before what points.
 */
export const SIDE_TABLES = [
  'Account',
  'RoleGrant',
  'Identity',
  'Audit',
  'Photo',
  'Draft',
  'Notice',
  'Reminder',
  'Calendar',
  'KeptSheet',
] as const
export type SideTable = (typeof SIDE_TABLES)[number]

/** One row, its columns by name. */
export type SideRow = Readonly<Record<string, unknown>>

const name = (table: SideTable) => Prisma.raw(`"${table}"`)

/** All rows of a table, a piece at a time, in an order that is the same for the same rows. */
export async function* readSideRows(
  tx: Db,
  table: SideTable,
  size = 500,
): AsyncGenerator<readonly SideRow[]> {
  const cursor = Prisma.raw(`"rows of ${table}"`)
  await tx.$executeRaw`DECLARE ${cursor} CURSOR FOR
    SELECT to_jsonb(t) AS row FROM ${name(table)} t ORDER BY to_jsonb(t)::text COLLATE "C"`
  for (;;) {
    const piece = await tx.$queryRaw<{ row: SideRow }[]>`FETCH ${Prisma.raw(String(size))} FROM ${cursor}`
    if (piece.length === 0) break
    yield piece.map(({ row }) => row)
  }
  await tx.$executeRaw`CLOSE ${cursor}`
}

/**
 * Puts rows back as they were read. A column that is newer than a row takes its default, or null, or refuses it; what
 * was read from a column that is gone is left out.
 */
export async function insertSideRows(tx: Db, table: SideTable, rows: readonly SideRow[]): Promise<void> {
  if (rows.length === 0) return
  const columns = await columnsOf(tx, table)
  // A column that is named takes null from rows that lack it, so only what they have is named.
  for (const [names, alike] of byColumns(rows, columns)) {
    const named = Prisma.raw(names)
    await tx.$executeRaw`
      INSERT INTO ${name(table)} (${named})
      SELECT ${named} FROM jsonb_populate_recordset(NULL::${name(table)}, ${JSON.stringify(alike)}::jsonb)`
  }
}

/** Names of the table's columns that can be written to. */
async function columnsOf(tx: Db, table: SideTable): Promise<string[]> {
  const found = await tx.$queryRaw<{ column: string }[]>`
    SELECT attname AS column FROM pg_attribute
    WHERE attrelid = ${`"${table}"`}::regclass AND attnum > 0 AND NOT attisdropped AND attgenerated = ''
    ORDER BY attnum`
  return found.map(({ column }) => column)
}

/** Rows by the columns that they have, as SQL names them. Keys of a row come from a file; of these only the table's own go in. */
function byColumns(rows: readonly SideRow[], columns: readonly string[]): Map<string, SideRow[]> {
  const groups = new Map<string, SideRow[]>()
  for (const row of rows) {
    const has = columns.filter((column) => Object.hasOwn(row, column))
    const names = has.map((column) => `"${column}"`).join(', ')
    const alike = groups.get(names)
    if (alike) alike.push(row)
    else groups.set(names, [row])
  }
  return groups
}
