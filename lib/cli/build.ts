import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { content } from '#lib/content/index.ts'
import { workOutRatios } from '#lib/content/ratios.ts'
import { takeLock } from '#lib/db/embedded/lock.ts'
import { childEnv } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import { buildWorker } from './build-worker.ts'
import { say, step } from './say.ts'

const STAMP = '.next/stamp'
/** What the comparison page would otherwise work out for its first reader. */
const RATIOS = '.next/ratios.json'
const SOURCES = [
  'app',
  'lib',
  'content',
  'prisma/schema.prisma',
  'proxy.ts',
  'next.config.ts',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
]

/** Builds the site unless it was built from these very sources; one build at a time in this folder. */
export async function build(signal: AbortSignal): Promise<void> {
  const lock = await waitForLock()
  try {
    const wanted = hashOfSources()
    const built = existsSync(STAMP) && existsSync('.next/BUILD_ID') && readFileSync(STAMP, 'utf8') === wanted
    if (built) return
    await step('Building the site (the first time takes a minute)', async () => {
      const [, ratios] = await Promise.all([
        runNextBuild(signal),
        workOutRatios(content(), () => sleep(0, undefined, { signal })),
      ])
      writeFileSync(RATIOS, JSON.stringify(ratios))
      await buildWorker(wanted.slice(0, 16))
    })
    writeFileSync(STAMP, wanted)
  } finally {
    lock.release()
  }
}

async function waitForLock(): Promise<{ release: () => void }> {
  let told = false
  for (;;) {
    const lock = takeLock('node_modules/.cache/putlog/build.lock')
    if ('release' in lock) return lock
    if (!told) say(`Waiting for process ${lock.heldBy}, which is building in this folder`)
    told = true
    await sleep(250)
  }
}

async function runNextBuild(signal: AbortSignal): Promise<void> {
  const output: Buffer[] = []
  const child = spawn(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
    stdio: ['ignore', 'pipe', 'pipe'],
    signal,
    env: childEnv({ NODE_ENV: 'production' }),
  })
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => output.push(chunk))
  const code = await new Promise((resolve, reject) => {
    child.once('error', reject)
    child.once('close', resolve)
  })
  if (code !== 0) throw new Halt(`The site could not be built:\n${Buffer.concat(output).toString('utf8')}`)
}

/** Everything the build is made from, and the Node that makes it. */
function hashOfSources(): string {
  const hash = createHash('sha256').update(process.version)
  const scripts = readdirSync('.').filter((name) => /\.(ts|mjs)$/.test(name) && name !== 'next-env.d.ts')
  for (const file of [...SOURCES, ...scripts].flatMap(filesBelow).sort())
    hash.update(`\0${file}\0`).update(readFileSync(file))
  return hash.digest('hex')
}

function filesBelow(path: string): string[] {
  if (!existsSync(path)) return []
  const entries = readEntries(path)
  return entries === undefined ? [path] : entries.flatMap((name) => filesBelow(join(path, name)))
}

function readEntries(path: string): string[] | undefined {
  try {
    return readdirSync(path)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOTDIR') return undefined
    throw error
  }
}
