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

/** Puts rows back as they were read. A column that is newer than the rows takes null, or refuses them. */
export async function insertSideRows(tx: Db, table: SideTable, rows: readonly SideRow[]): Promise<void> {
  if (rows.length === 0) return
  await tx.$executeRaw`
    INSERT INTO ${name(table)} SELECT * FROM jsonb_populate_recordset(NULL::${name(table)}, ${JSON.stringify(rows)}::jsonb)`
}
