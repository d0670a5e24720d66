import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { freePort } from '#lib/db/embedded/server.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** A `serve` started by a test. */
export interface Serving {
  url: string
  port: number
  dataDir: string
  process: ChildProcess
  /** All it has said so far. */
  said(): string
  /** Resolves once it has said this; rejects with all it said if it ends first or takes too long. */
  says(words: RegExp, withinMs?: number): Promise<void>
  /** Its exit code, once it ended. */
  ended: Promise<number | null>
  /** Asks it to stop and resolves with its exit code. */
  stop(signal?: NodeJS.Signals): Promise<number | null>
}

const folders: string[] = []
const started: ChildProcess[] = []
/** A test that failed half-way leaves no server behind. */
process.once('exit', () => {
  for (const child of started) child.kill('SIGTERM')
  for (const folder of folders) rmSync(folder, { recursive: true, force: true })
})

/** A new folder for data, removed when the test process ends. */
export function newFolder(name = 'putlog-serve-'): string {
  const folder = mkdtempSync(join(tmpdir(), name))
  folders.push(folder)
  return folder
}

/** Starts `serve` on a free port over a data folder of its own, as a person would. `env` is added to ours; `as` is
 * another user to run it as, when root runs the tests. */
export async function startServe(
  env: Record<string, string> = {},
  as: { uid?: number; gid?: number } = {},
): Promise<Serving> {
  const port = Number(env.PORT ?? (await freePort()))
  const dataDir = env.DATA_DIR ?? newFolder()
  const { DATABASE_URL: _, ...ours } = process.env
  const child = spawn(process.execPath, [join(root, 'lib/cli/start.mjs'), 'serve'], {
    cwd: root,
    ...as,
    env: { ...ours, DEMO: 'off', PORT: String(port), DATA_DIR: dataDir, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  started.push(child)
  let output = ''
  for (const stream of [child.stdout, child.stderr])
    stream.setEncoding('utf8').on('data', (text: string) => {
      output += text
    })
  let running = true
  const ended = new Promise<number | null>((resolve) => {
    child.once('close', (code) => {
      running = false
      resolve(code)
    })
  })
  return {
    url: `http://127.0.0.1:${port}`,
    port,
    dataDir,
    process: child,
    said: () => output,
    says: async (words, withinMs = 240_000) => {
      for (const deadline = performance.now() + withinMs; !words.test(output); await sleep(20))
        if (!running || performance.now() > deadline)
          throw new Error(`It never said ${words}. It said:\n${output}`)
    },
    ended,
    stop: (signal = 'SIGTERM') => {
      child.kill(signal)
      return ended
    },
  }
}
