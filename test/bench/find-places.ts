import { rmSync } from 'node:fs'
import { Client } from 'pg'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { migrate } from '#lib/db/migrate/apply.ts'
import { newFolder } from '#test/support/serve.ts'
import { isLoaded, loadCases } from './find-load.ts'

const SEED = 1

/** Where measured cases are held. */
export interface Places {
  /** Address of a database that holds so many generated cases, loaded now where it did not. */
  open(cases: number, say: (text: string) => void): Promise<string>
  close(): Promise<void>
}

/** A server of our own that is thrown away at the end. */
export async function placesForOnce(): Promise<Places> {
  const folder = newFolder('putlog-find-')
  const server = await startServer(prepareCluster(folder, findBinaries('package')), {
    fsync: 'off',
    max_wal_size: '4GB',
  })
  const { open } = placesOn(server.url('postgres', 'postgres'), (name) => server.url(name, 'postgres'))
  return {
    open,
    async close() {
      await server.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** Databases on a server that stays, one for each number of cases; what is there is measured again as it is. */
export function placesOn(url: string, urlOf = (name: string) => inDatabase(url, name)): Places {
  return {
    async open(cases, say) {
      const name = `putlog_find_${cases}`
      const place = urlOf(name)
      if ((await exists(url, name)) && (await isLoaded(place, cases, SEED))) {
        say(`${cases} cases were kept in ${name}`)
        return place
      }
      await runOn(url, `DROP DATABASE IF EXISTS ${name}`)
      await runOn(url, `CREATE DATABASE ${name} TEMPLATE template0`)
      await migrate(place)
      const start = performance.now()
      await loadCases(place, cases, SEED, say)
      say(`${cases} cases loaded in ${((performance.now() - start) / 1000).toFixed(0)} s`)
      return place
    },
    close: async () => {},
  }
}

function inDatabase(url: string, name: string): string {
  const at = new URL(url)
  at.pathname = `/${name}`
  return at.href
}

async function runOn(url: string, statement: string, values: unknown[] = []): Promise<unknown[]> {
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query(statement, values)).rows
  } finally {
    await client.end()
  }
}

const exists = async (url: string, name: string): Promise<boolean> =>
  (await runOn(url, 'SELECT 1 FROM pg_database WHERE datname = $1', [name])).length > 0
