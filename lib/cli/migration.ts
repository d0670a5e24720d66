import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { migrate } from '#lib/db/migrate/apply.ts'
import { differences, schemaFile } from '#lib/db/migrate/engine.ts'
import { migrationsFolder } from '#lib/db/migrate/folder.ts'
import { Halt } from '#lib/errors.ts'
import { HAND_WRITTEN } from '../../prisma/hand-written.ts'
import { say } from './say.ts'

/**
 * `npm run migration -- --name add-weather`: writes the SQL between the migrations and prisma/schema.prisma as the
 * next migration, worked out on a throwaway server. With `--empty` the file is left for SQL written by hand.
 */
export async function run(args: readonly string[]): Promise<number> {
  const name = args[args.indexOf('--name') + 1]
  if (!args.includes('--name') || name === undefined || !/^[a-z][a-z0-9-]*$/.test(name))
    throw new Halt('Name the change in small letters and hyphens: npm run migration -- --name add-weather')
  const statements = args.includes('--empty') ? [] : await nextStatements()
  if (statements.length === 0 && !args.includes('--empty')) {
    say('The migrations say what prisma/schema.prisma says; there is nothing to write.')
    return 0
  }
  const time = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
  const folder = join(migrationsFolder, `${time}_${name.replaceAll('-', '_')}`)
  mkdirSync(folder)
  writeFileSync(join(folder, 'migration.sql'), `${statements.join('\n\n')}\n`)
  say(`Written: ${folder}/migration.sql. Read it, and add to it what the schema can't say.`)
  return 0
}

async function nextStatements(): Promise<string[]> {
  const scratch = mkdtempSync(join(tmpdir(), 'putlog-migration-'))
  const server = await startServer(prepareCluster(scratch, findBinaries()), { fsync: 'off' })
  try {
    await migrate(server.url('putlog'))
    return await differences(
      server.url('putlog'),
      readFileSync(schemaFile, 'utf8'),
      HAND_WRITTEN.inSchemaTables,
    )
  } finally {
    await server.stop()
    rmSync(scratch, { recursive: true, force: true })
  }
}
