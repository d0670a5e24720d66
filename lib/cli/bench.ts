import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { childEnv } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'

const FOLDER = 'test/bench'
/** Parts that the benches share, and the page they compare with. */
const PARTS = [
  'clock.ts',
  'evidence-load.ts',
  'find-copy.ts',
  'find-entries.ts',
  'find-hand.ts',
  'find-load.ts',
  'find-places.ts',
  'find-queries.ts',
  'find-run.ts',
  'find-tables.ts',
  'generate-cases.ts',
  'next-server.ts',
]

/** `npm run bench -- job`: runs one of test/bench, which prints figures and ratios and asserts nothing. */
export async function run([name, ...args]: readonly string[]): Promise<number> {
  const names = readdirSync(FOLDER)
    .filter((file) => file.endsWith('.ts') && !PARTS.includes(file))
    .map((file) => file.slice(0, -3))
  if (name === undefined || !names.includes(name))
    throw new Halt(`Name what to measure: npm run bench -- ${names.join(' | ')}`)
  const command = ['--import', 'tsx', `${FOLDER}/${name}.ts`, ...args]
  return spawnSync(process.execPath, command, { stdio: 'inherit', env: childEnv({}) }).status ?? 1
}
