import { spawn } from 'node:child_process'
import { createServer } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'
import { childEnv, type Settings } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import type { Running } from './supervise.ts'

/** Where the site is found in a browser on this machine. */
export function siteUrl({ host, port }: Settings): string {
  const local = ['127.0.0.1', '0.0.0.0', '::', '::1', 'localhost'].includes(host)
  return `http://${local ? 'localhost' : host}:${port}`
}

/**
 * Makes sure, before the long work, that the port can be had.
 *
 * @throws Halt naming the port and the variable that changes it
 */
export async function checkPort({ host, port }: Settings): Promise<void> {
  const probe = createServer()
  try {
    await new Promise<void>((resolve, reject) => {
      probe.once('error', reject)
      probe.listen(port, host, resolve)
    })
  } catch (error) {
    const reasons: Record<string, string> = {
      EADDRINUSE: `Port ${port} is in use by another program. Stop that one, or set PORT to another number.`,
      EACCES: `Port ${port} may not be used by this user. Set PORT to a number from 1024 on.`,
      EADDRNOTAVAIL: `HOST is ${host}, which is no address of this machine. 127.0.0.1 and 0.0.0.0 always work.`,
      ENOTFOUND: `HOST is ${host}, which is no known name. 127.0.0.1 and 0.0.0.0 always work.`,
    }
    const { code = '', message } = error as NodeJS.ErrnoException
    throw new Halt(reasons[code] ?? `Listening on ${host}:${port} failed: ${message}`)
  } finally {
    await new Promise((resolve) => probe.close(resolve))
  }
}

/**
 * Starts the site and resolves when it answers: the built one, or with `development` one that follows every
 * change of the sources.
 */
export async function startSite(
  settings: Settings,
  databaseUrl: string,
  mode: 'production' | 'development' = 'production',
): Promise<Running> {
  const child = spawn(
    process.execPath,
    [
      // An address that is too long gets its answer from the site, in words; Node's own has none.
      `--max-http-header-size=${64 * 1024}`,
      '--import',
      new URL('./end-with-parent.mjs', import.meta.url).href,
      '--import',
      new URL('./peer-address.mjs', import.meta.url).href,
      'node_modules/next/dist/bin/next',
      mode === 'production' ? 'start' : 'dev',
      '--port',
      String(settings.port),
      '--hostname',
      settings.host,
    ],
    {
      // A process group of its own: Ctrl-C reaches `serve`, which stops the site first and the database after.
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      env: childEnv({ NODE_ENV: mode, DATABASE_URL: databaseUrl, DATA_DIR: settings.dataDir }),
    },
  )
  let output = ''
  let ready = false
  for (const stream of [child.stdout, child.stderr])
    stream?.setEncoding('utf8').on('data', (text: string) => {
      if (ready) process.stdout.write(text)
      else output += text
    })
  let running = true
  const exited = new Promise<void>((resolve) => {
    child.once('close', () => {
      running = false
      resolve()
    })
  })
  const site: Running = {
    exited,
    stop: async () => {
      if (running) child.kill('SIGTERM')
      await Promise.race([exited, sleep(5000, undefined, { ref: false })])
      if (running) child.kill('SIGKILL')
      await exited
    },
  }
  for (const deadline = performance.now() + 60_000; ; await sleep(50)) {
    if (!running) throw new Halt(`The site did not start:\n${output}`)
    if (await answers(settings)) break
    if (performance.now() > deadline) {
      await site.stop()
      throw new Halt(`The site did not answer within a minute:\n${output}`)
    }
  }
  // The content is read with the first page; better now than while somebody waits for it.
  await answers(settings, '/', 30_000)
  ready = true
  return site
}

/** Whether the site answers at all, be it to say that the database is away. */
async function answers({ host, port }: Settings, path = '/api/health', patienceMs = 5000): Promise<boolean> {
  const at =
    host === '0.0.0.0' ? '127.0.0.1' : host === '::' ? '[::1]' : host.includes(':') ? `[${host}]` : host
  try {
    const answer = await fetch(`http://${at}:${port}${path}`, { signal: AbortSignal.timeout(patienceMs) })
    await answer.body?.cancel()
    return true
  } catch {
    return false
  }
}
