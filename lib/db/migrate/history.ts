import type { Client } from 'pg'
import { Halt } from '#lib/errors.ts'
import { type Migration, matchesChecksum } from './folder.ts'

/** Prisma's own table, made just as Prisma makes it, so that either tool can go on where the other stopped. */
const TABLE = `
CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    VARCHAR(36) PRIMARY KEY NOT NULL,
    "checksum"              VARCHAR(64) NOT NULL,
    "finished_at"           TIMESTAMPTZ,
    "migration_name"        VARCHAR(255) NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        TIMESTAMPTZ,
    "started_at"            TIMESTAMPTZ NOT NULL DEFAULT now(),
    "applied_steps_count"   INTEGER NOT NULL DEFAULT 0
)`

interface Row {
  migration_name: string
  checksum: string
  finished_at: Date | null
}

/**
 * The migrations still to apply, given what the database says it has.
 *
 * @throws Halt when a migration stopped half-way, was changed after it was applied, or is unknown to this code
 */
export async function pendingMigrations(
  client: Client,
  migrations: readonly Migration[],
): Promise<Migration[]> {
  await client.query(TABLE)
  const { rows } = await client.query<Row>(
    'SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL ORDER BY started_at',
  )
  for (const row of rows)
    refuse(
      row,
      migrations.find(({ name }) => name === row.migration_name),
    )
  const applied = new Set(rows.map((row) => row.migration_name))
  return migrations.filter(({ name }) => !applied.has(name))
}

function refuse(row: Row, onDisk: Migration | undefined): void {
  const name = row.migration_name
  if (row.finished_at === null)
    throw new Halt(
      `The migration ${name} stopped half-way on this database.\n` +
        `Look at what it did (column "logs" of "_prisma_migrations" may say why), undo or complete it by hand, then mark it:\n` +
        `  undone:    UPDATE "_prisma_migrations" SET rolled_back_at = now() WHERE migration_name = '${name}' AND finished_at IS NULL;\n` +
        `  completed: UPDATE "_prisma_migrations" SET finished_at = now(), applied_steps_count = 1 WHERE migration_name = '${name}' AND finished_at IS NULL;\n` +
        'Restoring a backup into an empty database works as well.',
    )
  if (onDisk === undefined)
    throw new Halt(
      `The database has the migration ${name}, which this version of the site does not know.\n` +
        'Run the version that made it, or a newer one.',
    )
  if (!matchesChecksum(onDisk.sql, row.checksum))
    throw new Halt(
      `The migration ${name} was changed after it was applied to this database.\n` +
        `Put its file back as it was, and write the change as a new migration.`,
    )
}
