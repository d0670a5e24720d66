import { chmodSync, cpSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Client } from 'pg'
import { describe, expect, it } from 'vitest'
import { type Binaries, findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { isAlive, serverProcesses } from '#lib/db/embedded/processes.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { newFolder } from '#test/support/serve.ts'

const binaries = findBinaries('package')
const asRoot = process.getuid?.() === 0

async function ask<T extends Record<string, unknown>>(url: string, sql: string): Promise<T | undefined> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query<T>(sql)).rows[0]
  } finally {
    await client.end()
  }
}

describe.each([
  ['package', binaries],
  ['system', findBinaries('system')],
] as const)('startServer(cluster) with the binaries of the %s', (_, found: Binaries) => {
  it('runs a server whose writes reach the disk, whose text is Unicode, and whose site user is no superuser', async () => {
    const server = await startServer(prepareCluster(newFolder(), found))
    try {
      expect(
        await ask(
          server.url('putlog'),
          `SELECT current_user AS me, current_setting('is_superuser') AS super, current_setting('fsync') AS fsync,
             current_setting('synchronous_commit') AS sync, lower('ÄÖÕ') AS low, current_setting('server_encoding') AS enc`,
        ),
      ).toEqual({ me: 'putlog', super: 'off', fsync: 'on', sync: 'on', low: 'äöõ', enc: 'UTF8' })
    } finally {
      await server.stop()
    }
  })

  it('stops with all its processes and keeps what was written', async () => {
    const folder = newFolder()
    const first = await startServer(prepareCluster(folder, found))
    await ask(first.url('putlog'), "CREATE TABLE kept AS SELECT 'still here' AS words")
    const processes = serverProcesses(first.pid)
    expect(processes.length).toBeGreaterThan(4)
    await first.stop()
    expect(processes.filter(isAlive)).toEqual([])
    const second = await startServer(prepareCluster(folder, found))
    expect(await ask(second.url('putlog'), 'SELECT words FROM kept')).toEqual({ words: 'still here' })
    await second.stop()
  })
})

describe('startServer(cluster)', () => {
  it('uses loopback, at a port it keeps, when the path is too long for a socket', async () => {
    const folder = join(newFolder(), 'a'.repeat(60), 'b'.repeat(60))
    mkdirSync(folder, { recursive: true })
    for (const at of [folder, join(folder, '..'), join(folder, '../..')]) chmodSync(at, 0o755)
    const first = await startServer(prepareCluster(folder, binaries))
    const url = first.url('putlog')
    await first.stop()
    expect(new URL(url)).toMatchObject({ hostname: '127.0.0.1', search: '' })
    const second = await startServer(prepareCluster(folder, binaries))
    expect(second.url('putlog')).toBe(url)
    expect(await ask(url, 'SELECT 1 AS one')).toEqual({ one: 1 })
    await second.stop()
  })

  it('stops the server that a killed serve left behind on the folder, and no other', async () => {
    const cluster = prepareCluster(newFolder(), binaries)
    const other = await startServer(prepareCluster(newFolder(), binaries))
    const stray = await startServer(cluster)
    const server = await startServer(cluster)
    await stray.exited
    expect(isAlive(other.pid)).toBe(true)
    expect(await ask(server.url('putlog'), 'SELECT 1 AS one')).toEqual({ one: 1 })
    await server.stop()
    await other.stop()
  })

  it('leaves a process alone whose number an old note of a server happens to name', async () => {
    const cluster = prepareCluster(newFolder(), binaries)
    writeFileSync(join(cluster.folder, 'postmaster.pid'), `${process.pid}\n${cluster.folder}\n`)
    // PostgreSQL itself then judges whether that process is a server of the folder.
    const outcome = await startServer(cluster).catch((error: Error) => error)
    expect(isAlive(process.pid)).toBe(true)
    if (!(outcome instanceof Error)) await outcome.stop()
  })

  it('says what the server said when it does not come up', async () => {
    const cluster = prepareCluster(newFolder(), binaries)
    await expect(startServer(cluster, { shared_buffers: 'plenty' })).rejects.toThrow(
      /^The database did not start \(its process ended\)\. It said:\n.*invalid value for parameter "shared_buffers"/,
    )
  })

  it('does not wait when the password file is not the one the files were made with', async () => {
    const folder = newFolder()
    prepareCluster(folder, binaries)
    rmSync(join(folder, 'postgres-password'))
    await expect(startServer(prepareCluster(folder, binaries))).rejects.toThrow(
      /password authentication failed/,
    )
  })
})

describe('prepareCluster(folder, binaries)', () => {
  it('keeps the password where only our own user reads it', () => {
    const folder = newFolder()
    const { password } = prepareCluster(folder, binaries)
    expect(statSync(join(folder, 'postgres-password')).mode & 0o777).toBe(0o600)
    expect(password.length).toBeGreaterThanOrEqual(32)
  })

  it('starts over when a first start was cut short', () => {
    const folder = newFolder()
    mkdirSync(join(folder, 'postgres-new'))
    writeFileSync(join(folder, 'postgres-new', 'half'), 'made')
    const cluster = prepareCluster(folder, binaries)
    expect(readFileSync(join(cluster.folder, 'PG_VERSION'), 'utf8')).toBe('18\n')
  })

  it('refuses files that another major version made', () => {
    const folder = newFolder()
    mkdirSync(join(folder, 'postgres'))
    writeFileSync(join(folder, 'postgres', 'PG_VERSION'), '17\n')
    expect(() => prepareCluster(folder, binaries)).toThrow(
      /was made by PostgreSQL 17, and the binaries found are of version 18/,
    )
  })

  it.runIf(asRoot)('refuses a folder below one that only root may enter', () => {
    const folder = join(newFolder(), 'data')
    mkdirSync(folder)
    expect(() => prepareCluster(folder, binaries)).toThrow(
      /can't enter .*\nSet DATA_DIR to a folder that others may enter/,
    )
  })

  it.runIf(asRoot)('copies programs that stand where only root may go', async () => {
    const hidden = join(newFolder(), 'native')
    cpSync(binaries.home, hidden, { recursive: true, verbatimSymlinks: true })
    const folder = newFolder()
    const cluster = prepareCluster(folder, { ...binaries, home: hidden, bin: join(hidden, 'bin') })
    expect(cluster.binaries.bin).toBe(join(folder, 'postgres-programs', 'bin'))
    const server = await startServer(cluster)
    expect(await ask(server.url('putlog'), 'SELECT 1 AS one')).toEqual({ one: 1 })
    await server.stop()
  })
})
