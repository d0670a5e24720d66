import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Client } from 'pg'
import { afterAll, beforeAll, inject } from 'vitest'
import { forgetAnswers } from '#lib/api/evidence-kept.ts'
import { closeDb } from '#lib/db/client.ts'
import { forgetRecord } from '#lib/search/record.ts'
import { forgetWorks } from '#lib/search/works-known.ts'

/** Every test file of the database projects starts with a fresh, migrated, empty database behind `db()`. */
const name = `t_${randomUUID().replaceAll('-', '')}`
/** And with an empty data folder. */
const dataDir = mkdtempSync(join(tmpdir(), 'putlog-data-'))

beforeAll(async () => {
  process.env.DATABASE_URL = await copyTemplate(name)
  process.env.DATA_DIR = dataDir
  // Racing writers queue for a connection; on a busy machine they may wait long, and no test is about that.
  process.env.DATABASE_CONNECT_MS = '60000'
  process.env.DATABASE_STATEMENT_MS = '60000'
})

afterAll(async () => {
  // Files of a worker share their modules: what a process keeps of one database must not pass for the next one's.
  forgetRecord()
  forgetWorks()
  forgetAnswers()
  await closeDb()
  rmSync(dataDir, { recursive: true, force: true })
  await administer((client) => client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`))
})

/** A further copy of the migrated database, for a test that needs a second one. Resolves with its address. */
export async function copyTemplate(database: string): Promise<string> {
  await administer((client) =>
    client.query(`CREATE DATABASE ${database} TEMPLATE template_of_tests OWNER putlog`),
  )
  return addressOf(database)
}

/** An empty database without tables, for the tests of migrations and restores. Resolves with its address. */
export async function createEmpty(database: string): Promise<string> {
  await administer((client) => client.query(`CREATE DATABASE ${database} OWNER putlog`))
  return addressOf(database)
}

/** The superuser's address of this file's database: what switches triggers off. */
export const superuserUrl = (): string => withDatabase(inject('adminUrl'), name)

/** Runs one thing as superuser on the cluster. */
export async function administer<T>(work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: inject('adminUrl') })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

const addressOf = (database: string) => withDatabase(inject('templateUrl'), database)

function withDatabase(url: string, database: string): string {
  const address = new URL(url)
  address.pathname = `/${database}`
  return address.href
}
