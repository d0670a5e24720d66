import { readFileSync } from 'node:fs'
import { Client } from 'pg'
import { expect, it, vi } from 'vitest'
import { migrate } from '#lib/db/migrate/apply.ts'
import { type Migration, readMigrations } from '#lib/db/migrate/folder.ts'
import { inTurn } from '#lib/db/migrate/turn.ts'
import { administer, createEmpty } from '#test/support/database.ts'

const plain = (name: string, sql: string): Migration => ({ name, sql, inTransaction: true })

const one = plain('20260101000000_one', 'CREATE TABLE one (id int PRIMARY KEY);')
const two = plain('20260102000000_two', 'CREATE TABLE two (id int PRIMARY KEY); INSERT INTO two VALUES (1);')

async function rows<T extends Record<string, unknown>>(url: string, sql: string): Promise<T[]> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query<T>(sql)).rows
  } finally {
    await client.end()
  }
}

const history = (url: string) =>
  rows<{ name: string; steps: number; done: boolean }>(
    url,
    `SELECT migration_name AS name, applied_steps_count AS steps, finished_at IS NOT NULL AS done
     FROM "_prisma_migrations" ORDER BY started_at`,
  )

it('migrate(url) applies every migration of this site to an empty database, once', async () => {
  const url = await createEmpty('m_whole')
  const names = readMigrations().map(({ name }) => name)
  expect(await migrate(url)).toEqual(names)
  expect(await migrate(url)).toEqual([])
  expect((await history(url)).map(({ name }) => name)).toEqual(names)
})

it('migrate(url) applies only what is new, and records it as finished', async () => {
  const url = await createEmpty('m_new')
  await migrate(url, { migrations: [one] })
  expect(await migrate(url, { migrations: [one, two] })).toEqual([two.name])
  expect(await history(url)).toEqual([
    { name: one.name, steps: 1, done: true },
    { name: two.name, steps: 1, done: true },
  ])
})

it('migrate(url) undoes a migration that fails and leaves no trace of it', async () => {
  const url = await createEmpty('m_fails')
  const bad = plain('20260103000000_bad', 'CREATE TABLE three (id int); SELECT nothing_like_it();')
  await expect(migrate(url, { migrations: [one, bad] })).rejects.toThrow(
    /^The migration 20260103000000_bad failed and was undone: function nothing_like_it\(\) does not exist/,
  )
  expect(await history(url)).toEqual([{ name: one.name, steps: 1, done: true }])
  expect(await rows(url, "SELECT 1 FROM pg_class WHERE relname = 'three'")).toEqual([])
})

it('migrate(url) names a migration that stopped half-way, and goes on once it is marked undone', async () => {
  const url = await createEmpty('m_half')
  const outside: Migration = {
    name: '20260104000000_outside',
    sql: '-- outside a transaction\nCREATE TABLE four (id int);\nCREATE INDEX CONCURRENTLY four_id ON four (missing);',
    inTransaction: false,
  }
  await expect(migrate(url, { migrations: [outside] })).rejects.toThrow(/stopped half-way: column "missing"/)
  await expect(migrate(url, { migrations: [outside] })).rejects.toThrow(
    /^The migration 20260104000000_outside stopped half-way on this database\.[\s\S]*UPDATE "_prisma_migrations"/,
  )
  const [row] = await rows<{ logs: string }>(url, 'SELECT logs FROM "_prisma_migrations"')
  expect(row?.logs).toContain('missing')
  await rows(url, 'UPDATE "_prisma_migrations" SET rolled_back_at = now()')
  const mended = {
    ...outside,
    sql: outside.sql.replace('TABLE four', 'TABLE IF NOT EXISTS four').replace('missing', 'id'),
  }
  expect(await migrate(url, { migrations: [mended] })).toEqual([outside.name])
})

it('migrate(url) refuses a migration that was changed after it was applied, but not for its line ends', async () => {
  const url = await createEmpty('m_changed')
  await migrate(url, { migrations: [two] })
  const windows = { ...two, sql: two.sql.replaceAll('\n', '\r\n') }
  expect(await migrate(url, { migrations: [windows] })).toEqual([])
  await expect(migrate(url, { migrations: [{ ...two, sql: `${two.sql} ` }] })).rejects.toThrow(
    /^The migration 20260102000000_two was changed after it was applied/,
  )
})

it('migrate(url) refuses a database that is ahead of this code', async () => {
  const url = await createEmpty('m_ahead')
  await migrate(url, { migrations: [one, two] })
  await expect(migrate(url, { migrations: [one] })).rejects.toThrow(
    /^The database has the migration 20260102000000_two, which this version of the site does not know/,
  )
})

it('migrate(url) run twice at once applies each migration once, and both come back well', async () => {
  const url = await createEmpty('m_twice')
  const said: string[] = []
  const run = () => migrate(url, { migrations: [one], say: (line) => said.push(line) })
  // A third holds the lock until both are waiting for it, so that they truly meet.
  const third = new Client({ connectionString: url })
  await third.connect()
  await third.query('SELECT pg_advisory_lock(72707369)')
  const both = [run(), run()]
  const waiting = 'Another server is migrating this database; waiting for it.'
  await vi.waitFor(() => expect(said).toEqual([waiting, waiting]), { timeout: 30_000 })
  await third.end()
  expect((await Promise.all(both)).flat()).toEqual([one.name])
})

it.each([
  [
    'a wrong port',
    (url: URL) => Object.assign(url, { search: '', host: '127.0.0.1:1' }),
    /nothing listens on 127\.0\.0\.1:1/,
  ],
  [
    'an unknown host',
    (url: URL) => Object.assign(url, { search: '', hostname: 'nowhere.invalid' }),
    /nowhere\.invalid/,
  ],
  [
    'a wrong password',
    (url: URL) => Object.assign(url, { password: 'wrong-one' }),
    /does not accept the user name or password/,
  ],
  [
    'no such database',
    (url: URL) => Object.assign(url, { pathname: '/absent' }),
    /has no database named absent/,
  ],
])('migrate(url) says plainly what is wrong with %s, and never the password', async (_, change, words) => {
  const url = change(new URL(await createEmpty(`m_${Math.floor(performance.now() * 1000)}`)))
  const refusal = await migrate(url.href, { connectMs: 20_000 }).catch((error: Error) => error)
  expect(refusal).toBeInstanceOf(Error)
  const { message } = refusal as Error
  expect(message).toMatch(words)
  expect(message).not.toContain(url.password)
})

it('the records of migrations carry the SHA-256 that other tools compute of the file', async () => {
  const url = await createEmpty('m_checksum')
  await migrate(url)
  const recorded = await rows<{ name: string; checksum: string; computed: string }>(
    url,
    'SELECT migration_name AS name, checksum FROM "_prisma_migrations"',
  )
  for (const { name, checksum } of recorded) {
    const text = readFileSync(
      new URL(`../../../prisma/migrations/${name}/migration.sql`, import.meta.url),
      'utf8',
    )
    // PostgreSQL's own sha256 is the judge.
    const [row] = await administer((client) =>
      client.query<{ hash: string }>("SELECT encode(sha256(convert_to($1, 'UTF8')), 'hex') AS hash", [text]),
    ).then((answer) => answer.rows)
    expect(checksum).toBe(row?.hash)
  }
})

it('inTurn(url, work) lets one server work at a time, and says when it waits', async () => {
  const url = await createEmpty('m_turn')
  const order: string[] = []
  let tell = () => {}
  const secondWaits = new Promise<void>((resolve) => {
    tell = resolve
  })
  const run = (name: string) =>
    inTurn(url, { connectMs: 5000, say: () => tell() }, async () => {
      order.push(`${name} begins`)
      await secondWaits
      order.push(`${name} ends`)
    })
  await Promise.all([run('one'), run('two')])
  const [first, second] = order[0] === 'one begins' ? ['one', 'two'] : ['two', 'one']
  expect(order).toEqual([`${first} begins`, `${first} ends`, `${second} begins`, `${second} ends`])
})
