import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { childEnv } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import { step } from './say.ts'

const STAMP = 'prisma/generated/stamp'

/** `npm run generate`: the database client from prisma/schema.prisma, unless it is there for this very schema. */
export async function run(): Promise<number> {
  const version = createRequire(import.meta.url)('prisma/package.json').version as string
  const wanted = createHash('sha256')
    .update(version)
    .update(readFileSync('prisma/schema.prisma'))
    .digest('hex')
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === wanted) return 0
  await step('Generating the database client', () => {
    const made = spawnSync(
      process.execPath,
      ['node_modules/prisma/build/index.js', 'generate', '--config', 'prisma/config.ts'],
      {
        encoding: 'utf8',
        // The tool asks for a native engine that generating never starts; any program quiets it.
        env: childEnv({ PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' }),
      },
    )
    if (made.status !== 0)
      throw new Halt(`The database client could not be generated:\n${made.stdout}${made.stderr}`)
    writeFileSync(STAMP, wanted)
  })
  return 0
}
