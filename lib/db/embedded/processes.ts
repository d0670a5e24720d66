import { execFileSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** Linux tells of processes in files; elsewhere the program `ps` does. Small Linux images have no `ps`. */
const hasProc = existsSync('/proc/self/stat')

/** Whether a process with this number exists. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** The server's own note of the process that runs on a folder of data, if one is left there. */
export function notedPostmaster(folder: string): number | undefined {
  const file = join(folder, 'postmaster.pid')
  if (!existsSync(file)) return undefined
  const pid = Number(readFileSync(file, 'utf8').split('\n')[0])
  return Number.isInteger(pid) && pid > 0 ? pid : undefined
}

/** A process and all that it started itself. */
export function serverProcesses(postmaster: number): number[] {
  const all = hasProc
    ? readdirSync('/proc').filter((name) => /^\d+$/.test(name))
    : ps(['-A', '-o', 'pid=']).trim().split(/\s+/)
  return [postmaster, ...all.map(Number).filter((pid) => parentOf(pid) === postmaster)]
}

/** When the system started a process, in its own words; empty when it doesn't tell. Tells reused numbers apart. */
export const startOf = (pid: number): string =>
  hasProc ? (statOf(pid)[19] ?? '') : ps(['-o', 'lstart=', '-p', String(pid)]).trim()

/** The command line of a process; empty when there is none, or no way to tell. */
export const commandOf = (pid: number): string =>
  hasProc ? readProc(pid, 'cmdline').replaceAll('\0', ' ') : ps(['-ww', '-o', 'command=', '-p', String(pid)])

const parentOf = (pid: number): number =>
  Number(hasProc ? statOf(pid)[1] : ps(['-o', 'ppid=', '-p', String(pid)]))

/** The fields of a process's line after its name, which may itself hold blanks and brackets. */
const statOf = (pid: number): string[] =>
  readProc(pid, 'stat')
    .replace(/^.*\) /s, '')
    .split(' ')

function readProc(pid: number, name: string): string {
  try {
    return readFileSync(`/proc/${pid}/${name}`, 'utf8')
  } catch {
    return ''
  }
}

function ps(args: readonly string[]): string {
  try {
    return execFileSync('ps', args, { encoding: 'utf8', stdio: 'pipe' })
  } catch {
    return ''
  }
}
