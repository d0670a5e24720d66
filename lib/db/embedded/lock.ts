import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'
import { isAlive, startOf } from './processes.ts'

/** Who holds a lock: the process, and when the system started it, since numbers are used again. */
interface Holder {
  pid: number
  start: string
}

/**
 * Takes a lock file for this process, taking over from one that is gone.
 *
 * @returns how to give it back, or the number of the living process that holds it
 */
export function takeLock(file: string): { release: () => void } | { heldBy: number } {
  mkdirSync(dirname(file), { recursive: true })
  const mine = JSON.stringify({ pid: process.pid, start: startOf(process.pid) } satisfies Holder)
  for (;;) {
    try {
      writeFileSync(file, mine, { flag: 'wx' })
      return { release: () => rmSync(file, { force: true }) }
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
    }
    const holder = readHolder(file)
    if (holder && isAlive(holder.pid) && startOf(holder.pid) === holder.start) return { heldBy: holder.pid }
    rmSync(file, { force: true })
  }
}

/** The holder written in the file; undefined when it is gone or was cut short. */
function readHolder(file: string): Holder | undefined {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Holder
  } catch {
    return undefined
  }
}
