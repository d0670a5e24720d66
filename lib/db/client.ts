import { PrismaPg } from '@prisma/adapter-pg'
import { Pool } from 'pg'
import { readSettings } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import { type Prisma, PrismaClient } from '../../prisma/generated/client.ts'

/** What a read or a write needs: the client itself, or the transaction it stands in. */
export type Db = Prisma.TransactionClient

/** Next loads modules again while developing; the global keeps the one pool. */
const kept = globalThis as { putlogDb?: PrismaClient | undefined; putlogPool?: Pool | undefined }

/**
 * The one client of this process, made at first use from the settings. Its pool drops broken connections and
 * opens new ones, so it recovers by itself after the database was away.
 *
 * @throws Halt when no DATABASE_URL is set: `serve` sets it for the site it starts
 */
export function db(): PrismaClient {
  kept.putlogDb ??= connect()
  return kept.putlogDb
}

/**
 * The client's own connections, for the few reads whose time counts in single milliseconds: a raw query through
 * the client costs one or two more.
 */
export function connections(): Pool {
  db()
  if (kept.putlogPool === undefined) throw new Halt('The database is closed.')
  return kept.putlogPool
}

/** Closes the pool; a later `db()` opens a new one. */
export async function closeDb(): Promise<void> {
  await kept.putlogDb?.$disconnect()
  kept.putlogDb = undefined
  kept.putlogPool = undefined
}

function connect(): PrismaClient {
  const settings = readSettings()
  if (settings.databaseUrl === undefined)
    throw new Halt('DATABASE_URL is not set: start with `npm run serve`.')
  const pool = new Pool({
    connectionString: settings.databaseUrl,
    max: settings.databasePool,
    connectionTimeoutMillis: settings.databaseConnectMs,
    statement_timeout: settings.databaseStatementMs,
    idle_in_transaction_session_timeout: settings.databaseStatementMs,
    idleTimeoutMillis: 30_000,
    application_name: 'putlog',
    // Compiling a query costs more than what pages ask for; a guess of many rows would call for it.
    options: '-c jit=off',
  })
  // A connection that the server ends, idle or in use, is told by the query that needed it and replaced by the
  // pool. Without someone listening, Node would end the whole process over it.
  pool.on('error', () => {})
  pool.on('connect', (connection) => connection.on('error', () => {}))
  kept.putlogPool = pool
  const adapter = new PrismaPg(pool, { disposeExternalPool: true })
  return new PrismaClient({
    adapter,
    transactionOptions: { maxWait: settings.databaseConnectMs, timeout: settings.databaseStatementMs },
  })
}
