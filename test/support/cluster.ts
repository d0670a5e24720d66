import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Client } from 'pg'
import type { TestProject } from 'vitest/node'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { migrate } from '#lib/db/migrate/apply.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    binaries: 'package' | 'system'
    /** The superuser's address on the running cluster. */
    adminUrl: string
    /** The site user's address of the migrated database that tests copy. */
    templateUrl: string
  }
}

/** One throwaway server for the project, with one migrated database that each test file gets a copy of. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { binaries } = project.config.provide as { binaries: 'package' | 'system' }
  const folder = mkdtempSync(join(tmpdir(), 'putlog-test-'))
  const server = await startServer(prepareCluster(folder, findBinaries(binaries)), {
    // Nothing here outlives the run, so it need not reach the disk. The crash tests have servers of their own.
    fsync: 'off',
    max_connections: '100',
  })
  const adminUrl = server.url('postgres', 'postgres')
  const client = new Client({ connectionString: adminUrl })
  await client.connect()
  await client.query('CREATE DATABASE template_of_tests OWNER putlog')
  await client.end()
  const templateUrl = server.url('template_of_tests')
  await migrate(templateUrl)
  project.provide('adminUrl', adminUrl)
  project.provide('templateUrl', templateUrl)
  return async () => {
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}
