import { createHash } from 'node:crypto'
import { type FileHandle, open, rename, rm } from 'node:fs/promises'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import { type Db, db } from '#lib/db/client.ts'
import { readHeads } from '#lib/db/heads.ts'
import { readHistories } from '#lib/db/history.ts'
import { BACKUP_FORMAT } from './record/backup-lines.ts'
import { fingerprint, signJson } from './record/keys.ts'
import { readSideRows, SIDE_TABLES } from './record/side-tables.ts'

export interface BackedUp {
  readonly entries: number
  readonly revisions: number
  readonly decisions: number
  /** Rows of the tables beside the chains. */
  readonly rows: number
  /** Of the key that signed it: write it down, and a restore elsewhere can tell that the file is yours. */
  readonly fingerprint: string
}

/**
 * Writes the whole record of one moment into one file: JSON lines, packed with gzip, with the signed heads of all
 * chains, its counts and its own SHA-256. The site keeps running meanwhile. The file appears whole or not at all.
 */
export async function backup(dataDir: string, path: string): Promise<BackedUp> {
  const half = `${path}.half`
  // What an earlier run left half-written is nobody's.
  await rm(half, { force: true })
  const file = await open(half, 'wx', 0o600)
  try {
    const written = await db().$transaction((tx) => writeRecord(tx, dataDir, file), {
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

async function writeRecord(tx: Db, dataDir: string, file: FileHandle): Promise<BackedUp> {
  const counts = { entries: 0, revisions: 0, decisions: 0, rows: 0, fingerprint: '' }
  const lines = withDigest(recordLines(tx, dataDir, counts))
  await pipeline(lines, createGzip(), file.createWriteStream({ flush: true }))
  return counts
}

/** The record line by line; `told` is filled on the way. */
async function* recordLines(tx: Db, dataDir: string, told: Counting<BackedUp>): AsyncGenerator<object> {
  const at = new Date().toISOString()
  yield { line: 'backup', format: BACKUP_FORMAT, at }
  for await (const piece of readHistories(tx))
    for (const { revisions, decisions, ...entry } of piece) {
      yield { line: 'entry', ...entry }
      for (const revision of revisions) yield { line: 'revision', ...revision }
      for (const decision of decisions) yield { line: 'decision', ...decision }
      told.entries += 1
      told.revisions += revisions.length
      told.decisions += decisions.length
    }
  for (const table of SIDE_TABLES)
    for await (const piece of readSideRows(tx, table)) {
      for (const row of piece) yield { line: 'row', table, row }
      told.rows += piece.length
    }
  const heads = signJson(dataDir, { at, heads: await readHeads(tx) })
  told.fingerprint = fingerprint(heads.publicKey)
  yield { line: 'heads', ...heads }
  const { entries, revisions, decisions, rows } = told
  yield { line: 'counts', entries, revisions, decisions, rows }
}

type Counting<T> = { -readonly [K in keyof T]: T[K] }

/** The lines as text, and after the last one the digest of them all. */
async function* withDigest(lines: AsyncIterable<object>): AsyncGenerator<string> {
  const hash = createHash('sha256')
  for await (const line of lines) {
    const text = `${JSON.stringify(line)}\n`
    hash.update(text)
    yield text
  }
  yield `${JSON.stringify({ line: 'end', sha256: hash.digest('hex') })}\n`
}
