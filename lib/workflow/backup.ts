import { createHash } from 'node:crypto'
import { once } from 'node:events'
import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { finished } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { type Db, db } from '#lib/db/client.ts'
import { readHeads } from '#lib/db/heads.ts'
import { readHistories } from '#lib/db/history.ts'
import { BACKUP_FORMAT } from './record/backup-lines.ts'
import { fingerprint, signJson } from './record/keys.ts'

export interface BackedUp {
  readonly entries: number
  readonly revisions: number
  readonly decisions: number
  /** Of the key that signed it: write it down, and a restore elsewhere can tell that the file is yours. */
  readonly fingerprint: string
}

/**
 * Writes the whole record of one moment into one file: JSON lines, packed with gzip, with the signed heads of all
 * chains, its counts and its own SHA-256. The site keeps running meanwhile. The file appears whole or not at all.
 */
export async function backup(dataDir: string, path: string): Promise<BackedUp> {
  const half = `${path}.half`
  try {
    const written = await db().$transaction((tx) => writeRecord(tx, dataDir, half), {
      isolationLevel: 'RepeatableRead',
      timeout: 3_600_000,
    })
    await rename(half, path)
    return written
  } catch (error) {
    await rm(half, { force: true })
    throw error
  }
}

async function writeRecord(tx: Db, dataDir: string, path: string): Promise<BackedUp> {
  const packed = createGzip()
  const file = createWriteStream(path, { mode: 0o600, flags: 'wx', flush: true })
  // Whoever fails first, the other is told: a full disk must not leave this waiting.
  const done = finished(packed.pipe(file)).catch((error) => packed.destroy(error))
  file.on('error', (error) => packed.destroy(error))
  const hash = createHash('sha256')
  const put = async (line: object) => {
    const text = `${JSON.stringify(line)}\n`
    hash.update(text)
    if (!packed.write(text)) await once(packed, 'drain')
  }
  const at = new Date().toISOString()
  const counts = { entries: 0, revisions: 0, decisions: 0 }
  await put({ line: 'backup', format: BACKUP_FORMAT, at })
  for await (const piece of readHistories(tx))
    for (const { revisions, decisions, ...entry } of piece) {
      await put({ line: 'entry', ...entry })
      for (const revision of revisions) await put({ line: 'revision', ...revision })
      for (const decision of decisions) await put({ line: 'decision', ...decision })
      counts.entries += 1
      counts.revisions += revisions.length
      counts.decisions += decisions.length
    }
  const heads = signJson(dataDir, { at, heads: await readHeads(tx) })
  await put({ line: 'heads', ...heads })
  await put({ line: 'counts', ...counts })
  packed.end(`${JSON.stringify({ line: 'end', sha256: hash.digest('hex') })}\n`)
  await done
  if (file.errored) throw file.errored
  return { ...counts, fingerprint: fingerprint(heads.publicKey) }
}
