import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

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

/** A server's first process and all that it started, by the system's own list of processes. */
export function serverProcesses(postmaster: number): number[] {
  const listed = execFileSync('ps', ['-A', '-o', 'pid=,ppid='], { encoding: 'utf8' })
  const rows = listed
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number))
  return [postmaster, ...rows.flatMap(([pid, parent]) => (parent === postmaster && pid ? [pid] : []))]
}

/** When the system started a process, in its own words; empty when it doesn't tell. Tells reused numbers apart. */
export function startOf(pid: number): string {
  const file = `/proc/${pid}/stat`
  if (existsSync(file))
    return (
      readFileSync(file, 'utf8')
        .replace(/^.*\) /s, '')
        .split(' ')[19] ?? ''
    )
  if (process.platform === 'win32') return ''
  try {
    return execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).trim()
  } catch {
    return ''
  }
}
