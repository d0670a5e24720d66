import type { z } from 'zod'
import { type Db, db } from '#lib/db/client.ts'
import { contradicted } from '#lib/db/heads.ts'
import { lockPublishing, refreshAll } from '#lib/db/projection/refresh.ts'
import { Halt } from '#lib/errors.ts'
import {
  type BackupLine,
  type decisionLine,
  type entryLine,
  readBackup,
  type revisionLine,
  type rowLine,
} from './record/backup-lines.ts'
import { type Heads, readLastHeads, setHeadsAside } from './record/heads-file.ts'
import { fingerprint, isSigned, ownFingerprint } from './record/keys.ts'
import { insertSideRows, type SideTable } from './record/side-tables.ts'
import { writeHeads } from './sign-heads.ts'
import { type Verified, verifyIn } from './verify.ts'

export interface Restored extends Verified {
  /** Addresses of which this data folder had signed more than the backup holds: what came after it is lost. */
  readonly lost: readonly string[]
}

type Line<L extends BackupLine['line']> = Extract<BackupLine, { line: L }>

/**
 * Puts a backup into an empty, migrated database: everything or nothing. The file's own SHA-256 and signature are
 * checked before anything is written, and the restored record is verified before it stands. Heads that the data
 * folder signed before are set aside, and the restored record's own are signed.
 *
 * @param trusted fingerprint of the key that must have signed the file; by default this data folder's own
 * @throws Halt when the database is not empty, or the file is damaged, altered or signed by another key
 */
export async function restoreBackup(dataDir: string, path: string, trusted?: string): Promise<Restored> {
  const { heads, counts } = await inspect(path, trusted ?? ownFingerprint(dataDir))
  const last = readLastHeads(dataDir)?.heads?.heads ?? []
  const restored = await db().$transaction(
    async (tx) => {
      await lockPublishing(tx)
      if ((await tx.entry.count()) > 0)
        throw new Halt('A backup goes only into an empty database, and this one holds entries.')
      if ((await tx.account.count()) > 0)
        throw new Halt('A backup goes only into an empty database, and this one holds accounts.')
      const rows = await insertAll(tx, path)
      await refreshAll(tx)
      const verified = await verifyIn(tx, [heads])
      const { entries, revisions, decisions, findings } = verified
      const [first] = findings
      if (first)
        throw new Halt(
          `The backup's record is not whole: ${first.where}: ${first.detail}. Nothing was restored.`,
        )
      if (
        entries !== counts.entries ||
        revisions !== counts.revisions ||
        decisions !== counts.decisions ||
        rows !== counts.rows
      )
        throw new Halt('The backup does not hold what it counts. Nothing was restored.')
      return { ...verified, lost: await contradicted(tx, last) }
    },
    { timeout: 3_600_000 },
  )
  setHeadsAside(dataDir, `before-restore-${Date.now()}`)
  await writeHeads(dataDir)
  return restored
}

/** Reads the file through once: whole, unaltered, and signed by whom we expect. */
async function inspect(
  path: string,
  trusted: string | null,
): Promise<{ heads: Heads; counts: Line<'counts'> }> {
  let heads: Line<'heads'> | undefined
  let counts: Line<'counts'> | undefined
  for await (const line of readBackup(path)) {
    if (line.line === 'heads') heads = line
    if (line.line === 'counts') counts = line
  }
  if (heads === undefined || counts === undefined)
    throw new Halt('The backup lacks its signed heads or counts.')
  if (!isSigned(heads)) throw new Halt('The signature of the backup does not fit its heads.')
  const signer = fingerprint(heads.publicKey)
  if (signer !== trusted)
    throw new Halt(
      `The backup was signed by the key ${signer}, and ${trusted === null ? 'this data folder has no key yet' : `the key trusted here is ${trusted}`}.\n` +
        `If that is the fingerprint you wrote down when you made the backup, add --key=${signer}.`,
    )
  return { heads: heads.payload, counts }
}

/** Lines per statement: far below the number of values that one can take. */
const AT_ONCE = 500

/** Resolves with how many rows of side tables went in. */
async function insertAll(tx: Db, path: string): Promise<number> {
  let entries: z.infer<typeof entryLine>[] = []
  let revisions: z.infer<typeof revisionLine>[] = []
  let decisions: z.infer<typeof decisionLine>[] = []
  const sides = new Map<SideTable, z.infer<typeof rowLine>[]>()
  let rows = 0
  const flush = async () => {
    await insert(tx, entries, revisions, decisions)
    for (const [table, lines] of sides)
      await insertSideRows(
        tx,
        table,
        lines.map(({ row }) => row),
      )
    sides.clear()
    entries = []
    revisions = []
    decisions = []
  }
  for await (const line of readBackup(path)) {
    // An entry and all of its history go in together.
    if (line.line === 'entry' && entries.length + revisions.length + decisions.length >= AT_ONCE)
      await flush()
    if (line.line === 'entry') entries.push(line)
    if (line.line === 'revision') revisions.push(line)
    if (line.line === 'decision') decisions.push(line)
    if (line.line !== 'row') continue
    sides.set(line.table, [...(sides.get(line.table) ?? []), line])
    rows += 1
    if (rows % AT_ONCE === 0) await flush()
  }
  await flush()
  return rows
}

async function insert(
  tx: Db,
  entries: readonly z.infer<typeof entryLine>[],
  revisions: readonly z.infer<typeof revisionLine>[],
  decisions: readonly z.infer<typeof decisionLine>[],
): Promise<void> {
  // An entry can point only at a revision that is there, so the pointer comes last.
  await tx.entry.createMany({ data: entries.map(({ id, kind, slug }) => ({ id, kind, slug })) })
  await tx.revision.createMany({ data: revisions.map(({ line: _, ...row }) => row) })
  await tx.decision.createMany({
    data: decisions.map(({ line: _, particulars, ...row }) => ({
      ...row,
      ...(particulars !== null && { particulars }),
    })),
  })
  for (const { id, publishedRevisionId, withdrawnAt } of entries)
    if (publishedRevisionId !== null || withdrawnAt !== null)
      await tx.entry.update({ where: { id }, data: { publishedRevisionId, withdrawnAt } })
}
