import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { createGunzip } from 'node:zlib'
import { z } from 'zod'
import { OUTCOMES, REVISION_STATES } from '#lib/entry/state.ts'
import { KINDS } from '#lib/entry/terms.ts'
import { Halt } from '#lib/errors.ts'
import { headsSchema } from './heads-file.ts'
import { SIDE_TABLES } from './side-tables.ts'

/** Raise it when a line below changes; a restore refuses a format that it does not know. */
export const BACKUP_FORMAT = 1

const uuid = z.uuid()
const sha256 = z.string().regex(/^[0-9a-f]{64}$/)
const time = z.iso.datetime().transform((text) => new Date(text))
const jsonObject = z.record(z.string(), z.json())
const count = z.number().int().nonnegative()

export const entryLine = z.strictObject({
  line: z.literal('entry'),
  id: uuid,
  kind: z.enum(KINDS),
  slug: z.string(),
  publishedRevisionId: uuid.nullable(),
  withdrawnAt: time.nullable(),
})

export const revisionLine = z.strictObject({
  line: z.literal('revision'),
  id: uuid,
  entryId: uuid,
  number: z.number().int().positive(),
  basedOn: z.number().int().positive().nullable(),
  body: jsonObject,
  bodyDigest: sha256,
  shape: z.number().int().positive(),
  note: z.string(),
  authorKey: z.string(),
  state: z.enum(REVISION_STATES),
  createdAt: time,
  digest: sha256,
  key: uuid,
})

export const decisionLine = z.strictObject({
  line: z.literal('decision'),
  id: uuid,
  entryId: uuid,
  revisionId: uuid,
  number: z.number().int().positive(),
  outcome: z.enum(OUTCOMES),
  reviewerKey: z.string(),
  checklist: jsonObject,
  words: z.string(),
  particulars: jsonObject.nullable().default(null),
  at: time,
  digest: sha256,
  key: uuid,
})

/** A row of a table beside the chains, as it stands. */
export const rowLine = z.strictObject({ line: z.literal('row'), table: z.enum(SIDE_TABLES), row: jsonObject })

/** The signed heads and the counts come after all they are about, and the digest of all lines before it is last. */
const backupLine = z.discriminatedUnion('line', [
  z.strictObject({ line: z.literal('backup'), format: z.literal(BACKUP_FORMAT), at: z.iso.datetime() }),
  entryLine,
  revisionLine,
  decisionLine,
  rowLine,
  z.strictObject({
    line: z.literal('heads'),
    payload: headsSchema,
    publicKey: z.string(),
    signature: z.string(),
  }),
  z.strictObject({
    line: z.literal('counts'),
    entries: count,
    revisions: count,
    decisions: count,
    /** Rows of the side tables; backups from before there were any do not count them. */
    rows: count.default(0),
  }),
  z.strictObject({ line: z.literal('end'), sha256 }),
])
export type BackupLine = z.infer<typeof backupLine>

/**
 * The lines of a backup, one after the other; a file of any size passes through little memory.
 *
 * @throws Halt naming the line that is cut off, altered or of an unknown form
 */
export async function* readBackup(path: string): AsyncGenerator<BackupLine> {
  const hash = createHash('sha256')
  let number = 0
  let ended = false
  for await (const text of linesOf(path)) {
    number += 1
    const line = parseLine(text, number)
    if (ended) throw new Halt(`The backup goes on after its end, at line ${number}.`)
    if (number === 1 && line.line !== 'backup') throw new Halt('This is not a backup of this program.')
    if (line.line === 'end') {
      ended = true
      if (line.sha256 !== hash.digest('hex'))
        throw new Halt('The backup was altered or damaged: its SHA-256 does not fit.')
    } else hash.update(`${text}\n`)
    yield line
  }
  if (!ended) throw new Halt('The backup is cut off: its last line is missing.')
}

async function* linesOf(path: string): AsyncGenerator<string> {
  const file = createReadStream(path)
  const unpacked = createGunzip()
  file.on('error', (error) => unpacked.destroy(error))
  try {
    yield* createInterface({ input: file.pipe(unpacked), crlfDelay: Number.POSITIVE_INFINITY })
  } catch (error) {
    throw new Halt(`The backup cannot be read: ${(error as Error).message}`)
  }
}

function parseLine(text: string, number: number): BackupLine {
  try {
    return backupLine.parse(JSON.parse(text))
  } catch (error) {
    if (error instanceof z.ZodError || error instanceof SyntaxError)
      throw new Halt(`Line ${number} of the backup is not one that this program writes.`)
    throw error
  }
}
