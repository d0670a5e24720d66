import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))
export const BARE = fileURLToPath(new URL('./bare', import.meta.url))

const NEXT = fileURLToPath(new URL('../../node_modules/next/dist/bin/next', import.meta.url))

export interface Started {
  readonly url: string
  stop(): Promise<void>
}

/** Builds the bare page unless that was done; the site itself is built by `npm run serve` or `npm test`. */
export function makeReady(): void {
  if (!existsSync(`${ROOT}/.next/BUILD_ID`))
    throw new Error('The site is not built yet: run `npm run serve` once, or `npx next build`.')
  if (!existsSync(`${BARE}/.next/BUILD_ID`))
    execFileSync(process.execPath, [NEXT, 'build', '.'], { cwd: BARE, stdio: 'ignore' })
}

/** Starts a built Next site on a free port of the loopback and waits until it answers. */
export async function startNext(folder: string, databaseUrl: string): Promise<Started> {
  const port = await freePort()
  const child = spawn(process.execPath, [NEXT, 'start', '.', '-H', '127.0.0.1', '-p', String(port)], {
    cwd: folder,
    env: { ...process.env, NODE_ENV: 'production', DATABASE_URL: databaseUrl },
    stdio: ['ignore', 'ignore', 'inherit'],
  })
  const url = `http://127.0.0.1:${port}`
  await untilAnswering(url, child)
  return { url, stop: () => stop(child) }
}

async function untilAnswering(url: string, child: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 150; tries++) {
    if (child.exitCode !== null) throw new Error(`The server at ${url} ended with ${child.exitCode}.`)
    const answered = await fetch(url).then(
      (response) => response.ok,
      () => false,
    )
    if (answered) return
    await new Promise((resolve) => setTimeout(resolve, 200))
  }
  await stop(child)
  throw new Error(`The server at ${url} does not answer.`)
}

function stop(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => resolve())
    child.kill('SIGTERM')
  })
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer()
    server.once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      server.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      )
    })
  })
}
