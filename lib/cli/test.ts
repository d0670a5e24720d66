import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import type { Readable } from 'node:stream'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { childEnv, programFolders } from '#lib/env.ts'
import { build } from './build.ts'
import { run as generate } from './generate.ts'
import { say, step } from './say.ts'

const ARTEFACTS = 'test/artefacts'

/**
 * What runs side by side, one run after another in each, since each waits for the disk, for a browser or for other
 * processes half of its time. The second goes after the build; of the first only the last part of the first run needs
 * it, and waits for it by itself.
 */
const LANES = [
  [['unit', 'db-embedded', 'db-debian', 'processes'], ['site-reading']],
  [['site-writing']],
] as const

/** Checks and tests by result: one for each check of ours, one for each test, and what to say of those that failed. */
interface Tally {
  passed: number
  failed: number
  failures: string[]
}

/**
 * `npm test`: types, format and lint, then every test: the sums and content, the record on npm's PostgreSQL and on
 * the system's, the processes, and the built site in a browser. With arguments, only vitest with those arguments.
 */
export async function run(args: readonly string[]): Promise<number> {
  await generate()
  const tally: Tally = { passed: 0, failed: 0, failures: [] }
  const toldToStop = new AbortController().signal
  if (args.length > 0) {
    await build(toldToStop)
    await runTests(tally, 'some', args)
  } else {
    await check(tally, 'Checking types', ['node_modules/typescript/bin/tsc', '--noEmit'])
    await check(tally, 'Checking format and lint', ['node_modules/@biomejs/biome/bin/biome', 'check', '.'])
    await need('PostgreSQL of the system', 'postgresql', hasSystemPostgres)
    await need('Chromium', 'chromium-headless-shell', hasChromium)
    const [first, second] = LANES
    await Promise.all([
      runLane(tally, first),
      build(toldToStop).then(
        () => runLane(tally, second),
        (error: Error) => {
          tally.failures.push(error.message)
          tally.failed += 1
        },
      ),
    ])
  }
  // Once more at the end: by then what was said of them is thousands of lines back.
  for (const failure of tally.failures) say(`Failed: ${failure}`)
  say(`${tally.passed} passed, ${tally.failed} failed`)
  return tally.failed === 0 && tally.passed > 0 ? 0 : 1
}

async function runLane(tally: Tally, runs: readonly (readonly string[])[]): Promise<void> {
  for (const projects of runs)
    await runTests(
      tally,
      projects[0] ?? 'none',
      projects.map((name) => `--project=${name}`),
    )
}

async function check(tally: Tally, title: string, command: readonly string[]): Promise<void> {
  const passed = await step(title, () => runNode(command) === 0)
  tally[passed ? 'passed' : 'failed'] += 1
  if (!passed) tally.failures.push(title)
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
    ['chromium-headless-shell', 'chromium', 'chromium-browser'].some((name) =>
      existsSync(join(folder, name)),
    ),
  )

async function runTests(tally: Tally, name: string, args: readonly string[]): Promise<void> {
  const results = `${ARTEFACTS}/results-${name}.json`
  mkdirSync(ARTEFACTS, { recursive: true })
  rmSync(results, { force: true })
  say(`Running the tests: ${args.join(' ')}`)
  const began = performance.now()
  const code = await runBeside([
    'node_modules/vitest/vitest.mjs',
    'run',
    '--config=test/vitest.config.ts',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${results}`,
    ...args,
  ])
  say(`  ${args.join(' ')} took ${((performance.now() - began) / 1000).toFixed(0)} s`)
  const counted = existsSync(results)
    ? countResults(readFileSync(results, 'utf8'))
    : { passed: 0, failed: 1, failures: [`${name} left no report`] }
  tally.passed += counted.passed
  // A failure outside any test, such as a server that would not start, shows in the exit code alone.
  const outside = code !== 0 && counted.failed === 0
  tally.failed += outside ? 1 : counted.failed
  tally.failures.push(...(outside ? [`${name} ended with ${code}, outside any test`] : counted.failures))
}

/** Vitest's own report, as far as it is read here. */
interface Report {
  numPassedTests: number
  numFailedTests: number
  testResults: {
    name: string
    status: string
    message?: string
    assertionResults: { status: string; fullName: string; failureMessages: string[] }[]
  }[]
}

/** Passed and failed of vitest's own report; a file that could not be run at all counts as one failure. */
export function countResults(report: string): Tally {
  const { numPassedTests, numFailedTests, testResults } = JSON.parse(report) as Report
  const broken = testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
  )
  const failures = testResults.flatMap(({ name, assertionResults }) =>
    assertionResults
      .filter(({ status }) => status === 'failed')
      .map(
        ({ fullName, failureMessages }) =>
          `${name}: ${fullName}: ${failureMessages.join('; ').slice(0, 1_500)}`,
      ),
  )
  return {
    passed: numPassedTests,
    failed: numFailedTests + broken.length,
    failures: [
      ...failures,
      ...broken.map(({ name, message }) => `${name}: ${message ?? 'could not be run'}`),
    ],
  }
}

/** Runs beside others; whole lines are passed on, so that two who speak at once stay readable. */
async function runBeside(command: readonly string[]): Promise<number> {
  const child = spawn(process.execPath, command, { stdio: ['ignore', 'pipe', 'pipe'], env: childEnv({}) })
  const ended = once(child, 'close')
  await Promise.all([child.stdout, child.stderr].map(passOn))
  const [code] = (await ended) as [number | null]
  return code ?? 1
}

async function passOn(stream: Readable): Promise<void> {
  for await (const line of createInterface({ input: stream })) say(line)
}

function runNode(command: readonly string[]): number {
  return spawnSync(process.execPath, command, { stdio: 'inherit', env: childEnv({}) }).status ?? 1
}
