import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { childEnv, programFolders } from '#lib/env.ts'
import { build } from './build.ts'
import { run as generate } from './generate.ts'
import { say, step } from './say.ts'

const RESULTS = 'test/artefacts/results.json'

/** Checks and tests by result: one for each check of ours, one for each test. */
interface Tally {
  passed: number
  failed: number
}

/**
 * `npm test`: types, format and lint, then every test: the sums and content, the record on npm's PostgreSQL and on
 * the system's, the processes, and the built site in a browser. With arguments, only vitest with those arguments.
 */
export async function run(args: readonly string[]): Promise<number> {
  await generate()
  const tally: Tally = { passed: 0, failed: 0 }
  if (args.length === 0) {
    await check(tally, 'Checking types', ['node_modules/typescript/bin/tsc', '--noEmit'])
    await check(tally, 'Checking format and lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.'])
    await need('PostgreSQL of the system', 'postgresql', hasSystemPostgres)
    await need('Chromium', 'chromium', hasChromium)
  }
  await build(new AbortController().signal)
  await runTests(tally, args)
  say(`${tally.passed} passed, ${tally.failed} failed`)
  return tally.failed === 0 && tally.passed > 0 ? 0 : 1
}

async function check(tally: Tally, title: string, command: readonly string[]): Promise<void> {
  const passed = await step(title, () => runNode(command) === 0)
  tally[passed ? 'passed' : 'failed'] += 1
}

/**
 * Installs a Debian package that the tests lean on where root and apt-get allow. Where they don't it is said, and
 * the tests that need it fail: a suite that leaves them out has not passed.
 */
async function need(name: string, debianPackage: string, isThere: () => boolean): Promise<void> {
  if (isThere()) return
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    await step(`Installing ${name}`, () => {
      const env = childEnv({ DEBIAN_FRONTEND: 'noninteractive' })
      const options = { env, stdio: ['ignore', 'ignore', 'inherit'] as ('ignore' | 'inherit')[] }
      spawnSync('apt-get', ['update', '-qq'], options)
      spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', debianPackage], options)
    })
  }
  if (!isThere())
    say(
      `${name} is missing and can't be installed from here: the tests that need it will fail. Install ${debianPackage}.`,
    )
}

function hasSystemPostgres(): boolean {
  try {
    return findBinaries('system').from === 'system'
  } catch {
    return false
  }
}

const hasChromium = () =>
  programFolders().some((folder) =>
    ['chromium', 'chromium-browser'].some((name) => existsSync(join(folder, name))),
  )

async function runTests(tally: Tally, args: readonly string[]): Promise<void> {
  mkdirSync(dirname(RESULTS), { recursive: true })
  rmSync(RESULTS, { force: true })
  const code = await step('Running the tests', () =>
    runNode([
      'node_modules/vitest/vitest.mjs',
      'run',
      '--config=test/vitest.config.ts',
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${RESULTS}`,
      ...args,
    ]),
  )
  const counted = existsSync(RESULTS) ? countResults(readFileSync(RESULTS, 'utf8')) : { passed: 0, failed: 1 }
  tally.passed += counted.passed
  // A failure outside any test, such as a server that would not start, shows in the exit code alone.
  tally.failed += code !== 0 && counted.failed === 0 ? 1 : counted.failed
}

/** Passed and failed of vitest's own report; a file that could not be run at all counts as one failure. */
export function countResults(report: string): Tally {
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(report) as {
    numPassedTests: number
    numFailedTests: number
    testResults: { status: string; assertionResults: unknown[] }[]
  }
  const broken = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  )
  return { passed: numPassedTests, failed: numFailedTests + broken.length }
}

function runNode(command: readonly string[]): number {
  return spawnSync(process.execPath, command, { stdio: 'inherit', env: childEnv({}) }).status ?? 1
}
