import { randomUUID } from 'node:crypto'
import type { Client } from 'pg'
import { Halt } from '#lib/errors.ts'
import { openSession } from './connect.ts'
import { checksumOf, type Migration, readMigrations } from './folder.ts'
import { pendingMigrations } from './history.ts'
import { takeTurn } from './turn.ts'

/** The number Prisma takes its own lock by: whichever tool comes second waits for the first. */
const LOCK = 72707369

export interface MigrateOptions {
  migrations?: readonly Migration[]
  /** How long to wait for the server to answer, in ms. */
  connectMs?: number
  /** Told of each step, one plain sentence. */
  say?: (line: string) => void
}

/**
 * Brings a database up to date and resolves with the names of the migrations it applied. One server at a time:
 * a second waits and then finds nothing to do.
 *
 * @throws Halt when the database can't be reached, its history doesn't fit ours, or a migration fails
 */
export async function migrate(url: string, options: MigrateOptions = {}): Promise<string[]> {
  const { migrations = readMigrations(), connectMs = 5000, say = () => {} } = options
  const client = await openSession(url, connectMs)
  try {
    await takeTurn(client, LOCK, () => say('Another server is migrating this database; waiting for it.'))
    const pending = await pendingMigrations(client, migrations)
    for (const migration of pending) {
      say(`Applying migration ${migration.name}`)
      await (migration.inTransaction ? applyWhole(client, migration) : applyInSteps(client, migration))
    }
    return pending.map(({ name }) => name)
  } finally {
    // Ending the session gives the lock back.
    await client.end()
  }
}

/** The migration and its record stand or fall together, so a crash can't leave it half-way. */
async function applyWhole(client: Client, migration: Migration): Promise<void> {
  try {
    await client.query('BEGIN')
    const id = await begin(client, migration)
    await client.query(migration.sql)
    await finish(client, id)
    await client.query('COMMIT')
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {})
    throw new Halt(`The migration ${migration.name} failed and was undone: ${(error as Error).message}`)
  }
}

/** Each statement commits by itself, so the record is opened before and closed after, with what went wrong. */
async function applyInSteps(client: Client, migration: Migration): Promise<void> {
  const id = await begin(client, migration)
  try {
    for (const statement of statementsOf(migration.sql)) await client.query(statement)
  } catch (error) {
    const said = (error as Error).message
    await client.query('UPDATE "_prisma_migrations" SET logs = $2 WHERE id = $1', [id, said])
    throw new Halt(`The migration ${migration.name} stopped half-way: ${said}`)
  }
  await finish(client, id)
}

async function begin(client: Client, { name, sql }: Migration): Promise<string> {
  const id = randomUUID()
  await client.query(
    'INSERT INTO "_prisma_migrations" (id, checksum, started_at, migration_name) VALUES ($1, $2, clock_timestamp(), $3)',
    [id, checksumOf(sql), name],
  )
  return id
}

async function finish(client: Client, id: string): Promise<void> {
  await client.query(
    'UPDATE "_prisma_migrations" SET finished_at = clock_timestamp(), applied_steps_count = applied_steps_count + 1 WHERE id = $1',
    [id],
  )
}

/** Statements apart at `;` line ends: enough for the index statements that may not run in a transaction. */
const statementsOf = (sql: string): string[] =>
  sql
    .split(/;\s*$/m)
    .map((statement) => statement.trim())
    .filter((statement) => statement.replace(/^--.*$/gm, '').trim() !== '')
