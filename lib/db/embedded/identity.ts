import { spawnSync } from 'node:child_process'
import { chownSync, statSync } from 'node:fs'

/** The user a process runs as; undefined means as we are. */
export interface Identity {
  uid: number
  gid: number
}

/** `nobody` on the systems where servers start as root. */
const NOBODY = 65534

/**
 * PostgreSQL refuses to run as root. When root starts us, the server runs as the owner of the data folder or,
 * if that is root as well, as `nobody`; any other user runs it as themselves.
 */
export function serverIdentity(dataDir: string): Identity | undefined {
  if (process.getuid?.() !== 0) return undefined
  const { uid, gid } = statSync(dataDir)
  return uid === 0 ? { uid: NOBODY, gid: NOBODY } : { uid, gid }
}

/** Whether that user can enter the folder, asked of the system itself so that access lists count too. */
export function canEnter(folder: string, identity: Identity | undefined): boolean {
  if (identity === undefined) return true
  const asked = spawnSync('/bin/sh', ['-c', 'cd "$1"', 'sh', folder], {
    ...identity,
    cwd: '/',
    stdio: 'ignore',
  })
  return asked.status === 0
}

/** Hands a folder to the server's user. */
export function giveTo(folder: string, identity: Identity | undefined): void {
  if (identity) chownSync(folder, identity.uid, identity.gid)
}
