import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { KINDS } from '#lib/entry/terms.ts'
import { fingerprint, isSigned, ownFingerprint, type Signed, signJson } from './keys.ts'

const sha256 = z.string().regex(/^[0-9a-f]{64}$/)

export const headsSchema = z.strictObject({
  at: z.iso.datetime(),
  heads: z.array(
    z.strictObject({
      entryId: z.uuid(),
      kind: z.enum(KINDS),
      slug: z.string(),
      revisions: z.number().int().positive(),
      revision: sha256,
      decisions: z.number().int().nonnegative(),
      decision: sha256.nullable(),
    }),
  ),
})
/** The heads of all chains at one time. */
export type Heads = z.infer<typeof headsSchema>

const fileSchema = z.strictObject({ payload: headsSchema, publicKey: z.string(), signature: z.string() })

/** One file of signed heads; without `heads` it could not be trusted, and `problem` says why. */
export type HeadsFile =
  | { readonly file: string; readonly heads: Heads; readonly problem: null }
  | { readonly file: string; readonly heads: null; readonly problem: string }

/** Each newer file was signed only because it led on from the older ones, so a few are enough. */
const KEEP = 8

const folderOf = (dataDir: string) => join(dataDir, 'heads')

/** All heads that this data folder signed, the oldest first. */
export function readHeadsFiles(dataDir: string): HeadsFile[] {
  return namesIn(dataDir).map((file) => readHeadsFile(dataDir, file))
}

/** The heads signed last; null before the first. */
export function readLastHeads(dataDir: string): HeadsFile | null {
  const file = namesIn(dataDir).at(-1)
  return file === undefined ? null : readHeadsFile(dataDir, file)
}

/** Signs heads into a file of their own (whole or not at all) and lets the oldest files go. Resolves with its name. */
export function writeHeadsFile(dataDir: string, heads: Heads): string {
  const folder = folderOf(dataDir)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  const file = `${heads.at.replaceAll(':', '-')}.json`
  const half = join(folder, `${file}.half`)
  writeFileSync(half, JSON.stringify(signJson(dataDir, heads)), { mode: 0o600, flush: true })
  renameSync(half, join(folder, file))
  for (const old of namesIn(dataDir).slice(0, -KEEP)) rmSync(join(folder, old))
  return file
}

/** Moves all signed heads out of the way, into a folder beside them: a restored record starts from its own. */
export function setHeadsAside(dataDir: string, name: string): void {
  const names = namesIn(dataDir)
  if (names.length === 0) return
  mkdirSync(join(folderOf(dataDir), name), { mode: 0o700 })
  for (const file of names) renameSync(join(folderOf(dataDir), file), join(folderOf(dataDir), name, file))
}

function namesIn(dataDir: string): string[] {
  const folder = folderOf(dataDir)
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
}

function readHeadsFile(dataDir: string, file: string): HeadsFile {
  const signed = parseSigned(readFileSync(join(folderOf(dataDir), file), 'utf8'))
  if (signed === null) return { file, heads: null, problem: 'it cannot be read' }
  if (!isSigned(signed)) return { file, heads: null, problem: 'its signature does not fit' }
  if (fingerprint(signed.publicKey) !== ownFingerprint(dataDir))
    return { file, heads: null, problem: 'another key signed it' }
  return { file, heads: signed.payload, problem: null }
}

function parseSigned(text: string): Signed<Heads> | null {
  try {
    return fileSchema.parse(JSON.parse(text))
  } catch {
    return null
  }
}
