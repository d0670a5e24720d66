import { spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { Halt } from '#lib/errors.ts'
import { type Binaries, programOf } from './binaries.ts'
import { canEnter, giveTo, type Identity, serverIdentity } from './identity.ts'

/** A private server's files, ready to start. */
export interface Cluster {
  binaries: Binaries
  identity: Identity | undefined
  /** The server's own folder of data. */
  folder: string
  /** The server's socket and log stand here. */
  runFolder: string
  /** The superuser's and the site's password; the file that holds it is readable by our own user only. */
  password: string
}

/**
 * Makes the private server's files in `dataDir`, or finds them made: a folder of data owned by the user the
 * server runs as, passwords checked by SCRAM, text in UTF-8. An interrupted first start leaves nothing behind
 * that a second could mistake for a database.
 *
 * @throws Halt when the folder can't be entered by the server's user, or was made by another major version
 */
export function prepareCluster(dataDir: string, found: Binaries): Cluster {
  const identity = serverIdentity(dataDir)
  // The server's user passes through to its own folder; the rest keeps its own narrower modes.
  if (identity) chmodSync(dataDir, statSync(dataDir).mode | 0o011)
  if (!canEnter(dataDir, identity))
    throw new Halt(
      `The database can't run as root, and the user it runs as (uid ${identity?.uid}) can't enter ${dataDir}.\n` +
        'Set DATA_DIR to a folder that others may enter, such as /var/lib/putlog, or start as another user.',
    )
  const binaries = canEnter(found.bin, identity)
    ? found
    : copyBinaries(found, join(dataDir, 'postgres-programs'))
  const folder = join(dataDir, 'postgres')
  const runFolder = join(dataDir, 'postgres-run')
  const password = keepPassword(join(dataDir, 'postgres-password'))
  mkdirSync(runFolder, { recursive: true, mode: 0o700 })
  giveTo(runFolder, identity)
  const cluster = { binaries, identity, folder, runFolder, password }
  if (existsSync(join(folder, 'PG_VERSION'))) refuseOtherVersion(cluster)
  else initialize(cluster)
  return cluster
}

function keepPassword(file: string): string {
  if (!existsSync(file)) writeFileSync(file, randomBytes(24).toString('base64url'), { mode: 0o600 })
  return readFileSync(file, 'utf8')
}

/** When the programs lie below a folder that only root may enter, the server's user gets a copy. */
function copyBinaries(found: Binaries, target: string): Binaries {
  rmSync(target, { recursive: true, force: true })
  cpSync(found.home, target, { recursive: true, verbatimSymlinks: true })
  return { ...found, home: target, bin: join(target, 'bin') }
}

function refuseOtherVersion({ folder, binaries }: Cluster): void {
  const major = Number(readFileSync(join(folder, 'PG_VERSION'), 'utf8'))
  if (major !== binaries.major)
    throw new Halt(
      `${folder} was made by PostgreSQL ${major}, and the binaries found are of version ${binaries.major}.\n` +
        `Back up with the version of this site that made it, then restore into a new DATA_DIR.`,
    )
}

function initialize(cluster: Cluster): void {
  const { binaries, identity, folder, password } = cluster
  const fresh = `${folder}-new`
  rmSync(fresh, { recursive: true, force: true })
  mkdirSync(fresh, { mode: 0o700 })
  giveTo(fresh, identity)
  const passwordFile = join(cluster.runFolder, 'initial-password')
  writeFileSync(passwordFile, `${password}\n`, { mode: 0o600 })
  giveTo(passwordFile, identity)
  const locale =
    binaries.major >= 17
      ? ['--locale-provider=builtin', '--builtin-locale=C.UTF-8']
      : ['--locale-provider=icu', '--icu-locale=und']
  const made = spawnSync(
    programOf(binaries, 'initdb'),
    [
      `--pgdata=${fresh}`,
      '--username=postgres',
      `--pwfile=${passwordFile}`,
      '--auth=scram-sha-256',
      '--encoding=UTF8',
      '--locale=C',
      ...locale,
    ],
    { ...identity, cwd: dirname(fresh), encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] },
  )
  rmSync(passwordFile, { force: true })
  if (made.status !== 0) {
    const said = made.error?.message ?? `${made.stdout}\n${made.stderr}`
    throw new Halt(`The database's files could not be made in ${folder}:\n${lastLines(said)}`)
  }
  renameSync(fresh, folder)
}

/** The end of a program's output: what an operator needs of it. */
export const lastLines = (text: string, count = 12): string =>
  text
    .trimEnd()
    .split('\n')
    .slice(-count)
    .map((line) => `  ${line}`)
    .join('\n')
