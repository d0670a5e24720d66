import { defineConfig } from 'vitest/config'

const root = new URL('..', import.meta.url).pathname
const onDatabase = ['test/db/**/*.test.ts', 'test/workflow/**/*.test.ts', 'test/search/**/*.test.ts']

const databaseProject = (name: string, binaries: 'package' | 'system') => ({
  extends: true as const,
  test: {
    name,
    include: onDatabase,
    exclude: ['test/db/embedded/**'],
    globalSetup: ['test/support/cluster.ts'],
    setupFiles: ['test/support/quiet.ts', 'test/support/database.ts'],
    provide: { binaries },
    sequence: { groupOrder: 0 },
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
})

/**
 * `unit` needs nothing; the database tests run twice, on npm's binaries and on the system's own PostgreSQL;
 * `processes` starts servers of its own and kills some; `site` builds the site once and walks through it.
 */
export default defineConfig({
  root,
  test: {
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          sequence: { groupOrder: 0 },
          include: ['test/**/*.test.ts'],
          exclude: [...onDatabase, 'test/cli/**', 'test/site/**', 'test/artefacts/**'],
          setupFiles: ['test/support/quiet.ts'],
          // Reading all content or drawing many ranges takes seconds on a busy machine; no test asserts a time.
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      databaseProject('db-embedded', 'package'),
      databaseProject('db-debian', 'system'),
      {
        extends: true,
        test: {
          name: 'processes',
          sequence: { groupOrder: 1 },
          include: ['test/cli/**/*.test.ts', 'test/db/embedded/**/*.test.ts'],
          setupFiles: ['test/support/quiet.ts'],
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'site',
          sequence: { groupOrder: 2 },
          include: ['test/site/**/*.test.ts'],
          globalSetup: ['test/support/site.ts'],
          setupFiles: ['test/support/quiet.ts'],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
})
