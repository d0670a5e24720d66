import { defineConfig } from 'vitest/config'

const root = new URL('..', import.meta.url).pathname
const onDatabase = ['test/db/**/*.test.ts', 'test/workflow/**/*.test.ts', 'test/search/**/*.test.ts']

/** What leans on the server itself: its triggers, locks, plans, collations and migrations. The rest runs once. */
const onEveryServer = [
  'test/db/{history,library,long-history,projections,reads}.test.ts',
  'test/db/migrate/*.test.ts',
  'test/search/{counts,query}.test.ts',
  'test/workflow/{backup,decide,race,submit,verify}.test.ts',
]

const databaseProject = (name: string, binaries: 'package' | 'system') => ({
  extends: true as const,
  test: {
    name,
    include: binaries === 'system' ? onEveryServer : onDatabase,
    exclude: ['test/db/embedded/**'],
    globalSetup: ['test/support/cluster.ts'],
    setupFiles: ['test/support/quiet.ts', 'test/support/database.ts'],
    provide: { binaries },
    // Each file has a database of its own; the modules, and content, are read once a worker.
    isolate: false,
    sequence: { groupOrder: 0 },
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
})

/** Site tests that fill in forms, and change the record where they send them. */
const WRITING = ['test/site/{account,doors,keyboard,kept,life,offline,photos,send,work-out,write}.test.ts']

/** Each has a server of its own: what one writes would stand in the lists that the other counts. */
const siteProject = (name: string, include: string[], exclude: string[] = []) => ({
  extends: true as const,
  test: {
    name,
    sequence: { groupOrder: 2 },
    include,
    exclude,
    globalSetup: ['test/support/site.ts'],
    setupFiles: ['test/support/quiet.ts'],
    fileParallelism: false,
    // Files run one after another and leave nothing behind; what they read of the project is read once.
    isolate: false,
    // A browser on two busy cores now and then misses its moment: once more before it counts, and said as a retry.
    retry: 1,
    testTimeout: 120_000,
    hookTimeout: 300_000,
  },
})

/**
 * `unit` needs nothing; the database tests run on npm's binaries, and those that lean on the server
 * also on the system's own PostgreSQL;
 * `processes` starts servers of its own and kills some; `site-writing` and `site-reading` walk through the built site.
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
          // They keep nothing from each other; content is then read once for all of them.
          isolate: false,
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
      siteProject('site-writing', WRITING),
      siteProject('site-reading', ['test/site/**/*.test.ts'], WRITING),
    ],
  },
})
