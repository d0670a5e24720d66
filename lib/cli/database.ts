import { accessSync, constants, existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { findBinaries } from '#lib/db/embedded/binaries.ts'
import { prepareCluster } from '#lib/db/embedded/cluster.ts'
import { canEnter, serverIdentity } from '#lib/db/embedded/identity.ts'
import { takeLock } from '#lib/db/embedded/lock.ts'
import { startServer } from '#lib/db/embedded/server.ts'
import { readSettings, type Settings, setDatabaseUrl, setDataDir } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'
import type { Running } from './supervise.ts'

/** A database that a verb may use: the one DATABASE_URL names, or the private one in the data folder. */
export interface OpenDatabase {
  url: string
  /** The private server, when it is ours to keep running. */
  server: { first: Running; start: () => Promise<Running> } | undefined
  /** Gives the data folder back, once the server is stopped. */
  release(): void
}

/**
 * Makes the data folder ready for writing and resolves with its path. Where root starts us below a folder that
 * only root may enter, and no DATA_DIR was given, it is /var/lib/putlog instead of ./data.
 *
 * @throws Halt when it can't be made or written to
 */
export function prepareDataDir(settings: Settings): string {
  const dataDir = makeWritable(settings.dataDir)
  if (settings.databaseUrl !== undefined || settings.dataDirGiven) return dataDir
  return canEnter(dataDir, serverIdentity(dataDir)) ? dataDir : makeWritable('/var/lib/putlog')
}

function makeWritable(dataDir: string): string {
  try {
    mkdirSync(dataDir, { recursive: true })
    if (!statSync(dataDir).isDirectory()) throw new Error('it is no folder')
    accessSync(dataDir, constants.W_OK | constants.X_OK)
    return dataDir
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException
    const reasons: Record<string, string> = {
      EEXIST: 'there is a file of that name',
      ENOTDIR: 'a part of that path is a file',
      EACCES: 'this user may not write there',
      EPERM: 'this user may not write there',
      EROFS: 'it is on a file system that is read-only',
    }
    throw new Halt(
      `The data folder ${dataDir} can't be used: ${reasons[code ?? ''] ?? message}.\n` +
        'Set DATA_DIR to a folder this user may write to.',
    )
  }
}

/**
 * Opens the database the settings name. The private server is started unless a `serve` already runs it and
 * `share` allows using that one.
 *
 * @throws Halt when the data folder is in use, or the server can't be started
 */
export async function openDatabase(
  settings: Settings,
  dataDir: string,
  share: 'share' | 'alone',
): Promise<OpenDatabase> {
  if (settings.databaseUrl !== undefined)
    return { url: settings.databaseUrl, server: undefined, release: () => {} }
  const urlFile = join(dataDir, 'postgres-url')
  const lock = takeLock(join(dataDir, 'in-use'))
  if ('heldBy' in lock) {
    if (share === 'share' && existsSync(urlFile))
      return { url: readFileSync(urlFile, 'utf8'), server: undefined, release: () => {} }
    throw new Halt(
      `The data folder ${dataDir} is in use by another server of this site (process ${lock.heldBy}).\n` +
        'Stop that one, or set DATA_DIR to another folder.',
    )
  }
  try {
    const cluster = prepareCluster(dataDir, findBinaries())
    const start = () => startServer(cluster)
    const first = await start()
    const url = first.url('putlog')
    writeFileSync(urlFile, url, { mode: 0o600 })
    return { url, server: { first, start }, release: lock.release }
  } catch (error) {
    lock.release()
    throw error
  }
}

/**
 * Runs one piece of work on the site's database, with `db()` pointing at it, and closes what was opened for it.
 * Beside a running `serve` it uses that one's server.
 */
export async function withDatabase<T>(work: (url: string, dataDir: string) => Promise<T>): Promise<T> {
  const settings = readSettings()
  const dataDir = prepareDataDir(settings)
  const database = await openDatabase(settings, dataDir, 'share')
  setDatabaseUrl(database.url)
  setDataDir(dataDir)
  try {
    return await work(database.url, dataDir)
  } finally {
    const { closeDb } = await import('#lib/db/client.ts')
    await closeDb()
    await database.server?.first.stop()
    database.release()
  }
}
