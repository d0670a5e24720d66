import { readFileSync } from 'node:fs'
import { Client } from 'pg'
import { describe, expect, it } from 'vitest'
import { migrate } from '#lib/db/migrate/apply.ts'
import { diagnose, differences, schemaFile } from '#lib/db/migrate/engine.ts'
import { readMigrations } from '#lib/db/migrate/folder.ts'
import { createEmpty } from '#test/support/database.ts'
import { HAND_WRITTEN } from '../../../prisma/hand-written.ts'

const schema = readFileSync(schemaFile, 'utf8')

async function run(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows
  } finally {
    await client.end()
  }
}

async function migrated(name: string): Promise<string> {
  const url = await createEmpty(name)
  await migrate(url)
  return url
}

describe('differences(url, schema)', () => {
  it('are none between the migrations and schema.prisma', async () => {
    expect(await differences(await migrated('d_none'), schema, HAND_WRITTEN.inSchemaTables)).toEqual([])
  })

  it('show a column that the migrations lack', async () => {
    const wider = schema.replace(/model Entry \{/, 'model Entry {\n  planted String?')
    expect(await differences(await migrated('d_column'), wider)).toEqual([
      'ALTER TABLE "Entry" ADD COLUMN     "planted" TEXT;',
    ])
  })

  it('leave out an index and a column that are written by hand, and nothing else', async () => {
    const url = await migrated('d_hand')
    await run(
      url,
      `ALTER TABLE "Entry" ADD COLUMN words tsvector GENERATED ALWAYS AS (to_tsvector('simple', slug)) STORED`,
    )
    await run(url, 'CREATE INDEX entry_by_hand ON "Entry" (slug, kind)')
    await run(url, 'CREATE INDEX entry_forgotten ON "Entry" (kind)')
    await run(url, 'CREATE INDEX entry_lower ON "Entry" (lower(slug))')
    const left = await differences(url, schema, ['Entry.words', 'entry_by_hand', 'entry_lower'])
    expect(left).toEqual(['DROP INDEX "entry_forgotten";'])
  })
})

describe('diagnose(url)', () => {
  it('finds that Prisma would agree with what we recorded', async () => {
    expect(await diagnose(await migrated('d_agree'), schema, readMigrations())).toMatchObject({
      editedMigrationNames: [],
      failedMigrationNames: [],
      hasMigrationsTable: true,
      history: null,
    })
  })

  it('finds the migration that Prisma would still apply', async () => {
    const url = await createEmpty('d_behind')
    const all = readMigrations()
    await migrate(url, { migrations: all.slice(0, 1) })
    expect((await diagnose(url, schema, all)).history).toMatchObject({
      diagnostic: 'databaseIsBehind',
      unappliedMigrationNames: all.slice(1).map(({ name }) => name),
    })
  })
})

describe('the list of objects written by hand', () => {
  const ours = `pronamespace = 'public'::regnamespace
    AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = pg_proc.oid AND d.deptype = 'e')`
  it.each([
    ['functions', `SELECT proname AS name FROM pg_proc WHERE ${ours}`],
    ['triggers', `SELECT tgname AS name FROM pg_trigger WHERE NOT tgisinternal`],
    [
      'checks',
      `SELECT conname AS name FROM pg_constraint WHERE contype = 'c' AND connamespace = 'public'::regnamespace`,
    ],
  ] as const)('names all %s of the database and no others', async (kind, query) => {
    const rows = await run(await migrated(`d_list_${kind}`), query)
    expect(rows.map(({ name }) => name).sort()).toEqual([...HAND_WRITTEN[kind]].sort())
  })

  it('names every column with a collation of its own', async () => {
    const rows = await run(
      await migrated('d_list_collations'),
      `SELECT c.relname || '.' || a.attname AS column, k.collname AS collation
       FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid JOIN pg_collation k ON k.oid = a.attcollation
       WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace AND k.collname <> 'default'`,
    )
    expect(Object.fromEntries(rows.map(({ column, collation }) => [column, collation]))).toEqual(
      HAND_WRITTEN.collations,
    )
  })
})
