import { randomBytes } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { readSettings } from '#lib/env.ts'

let kept: string | undefined

/**
 * What session tokens are encrypted with: NEXTAUTH_SECRET, or else a random value made at first use into the data
 * folder, where only its owner can read it.
 */
export function authSecret(): string {
  kept ??= readSecret()
  return kept
}

function readSecret(): string {
  const { authSecret, dataDir } = readSettings()
  return authSecret ?? keptSecret(dataDir)
}

/** The secret kept in a data folder; of several processes that make it at once, one wins. */
export function keptSecret(dataDir: string): string {
  const file = join(dataDir, 'keys', 'sessions.key')
  mkdirSync(join(dataDir, 'keys'), { recursive: true, mode: 0o700 })
  try {
    writeFileSync(file, randomBytes(32).toString('base64url'), { mode: 0o600, flag: 'wx', flush: true })
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  }
  return readFileSync(file, 'utf8')
}
