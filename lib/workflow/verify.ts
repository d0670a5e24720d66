import { type Db, db } from '#lib/db/client.ts'
import type { Head } from '#lib/db/heads.ts'
import { readHistories } from '#lib/db/history.ts'
import { checkProjections } from '#lib/db/projection/check.ts'
import { checkAgainstHead, checkHistory, erasedIn, type Finding } from './record/chains.ts'
import { type Heads, readHeadsFiles } from './record/heads-file.ts'
import { checkPhotos } from './verify-photos.ts'

export interface Verified {
  readonly entries: number
  readonly revisions: number
  readonly decisions: number
  /** How many files of signed heads the record was held against. */
  readonly heads: number
  /** Revisions whose body was erased lawfully: reported, and no finding. */
  readonly erased: readonly string[]
  /** Empty when the record is whole. */
  readonly findings: readonly Finding[]
}

/**
 * Walks every chain and recomputes every digest; holds the record against all heads that this data folder signed,
 * which finds even a history that was written anew with its digests; compares the projections; and holds the files of
 * photos to their names. Reads one moment of the database and changes nothing.
 */
export async function verify(dataDir: string): Promise<Verified> {
  const files = readHeadsFiles(dataDir)
  const untrusted = files.flatMap(({ file, problem }): Finding[] =>
    problem === null ? [] : [{ what: 'untrusted-heads', where: file, detail: problem }],
  )
  const signed = files.flatMap(({ heads }) => heads ?? [])
  const verified = await db().$transaction((tx) => verifyIn(tx, signed), {
    isolationLevel: 'RepeatableRead',
    timeout: 3_600_000,
  })
  return { ...verified, findings: [...untrusted, ...verified.findings, ...(await checkPhotos())] }
}

/** {@link verify} inside a transaction, against heads that are trusted. */
export async function verifyIn(tx: Db, signed: readonly Heads[]): Promise<Verified> {
  const findings = new Map<string, Finding>()
  // What one file of heads shows, all later ones show again: once is enough.
  const add = (found: readonly Finding[]) => {
    for (const finding of found)
      if (!findings.has(`${finding.what} ${finding.where}`))
        findings.set(`${finding.what} ${finding.where}`, finding)
  }
  const expected = signed.map(({ at, heads }) => ({
    at,
    heads: new Map(heads.map((head) => [head.entryId, head])),
  }))
  let [entries, revisions, decisions] = [0, 0, 0]
  const slugs = new Map<string, string>()
  const erased: string[] = []
  for await (const piece of readHistories(tx))
    for (const entry of piece) {
      entries += 1
      revisions += entry.revisions.length
      decisions += entry.decisions.length
      slugs.set(entry.id, entry.slug)
      erased.push(...erasedIn(entry))
      add(checkHistory(entry))
      for (const { at, heads } of expected)
        add(takeHead(heads, entry.id, (head) => checkAgainstHead(head, entry, at)))
    }
  for (const { at, heads } of expected)
    for (const head of heads.values()) add(checkAgainstHead(head, undefined, at))
  // Bodies that do not fit their schema cannot be projected; what is wrong with them is found already.
  if (findings.size === 0)
    for await (const { table, entryId } of checkProjections(tx)) {
      const where = `${table} ${slugs.get(entryId) ?? entryId}`
      add([
        {
          what: 'wrong-projection',
          where,
          detail: 'it differs from what the revisions say; rebuild makes it again',
        },
      ])
    }
  return { entries, revisions, decisions, heads: signed.length, erased, findings: [...findings.values()] }
}

/** The head of one entry, taken out: what is left in the end is missing from the record. */
function takeHead(heads: Map<string, Head>, id: string, check: (head: Head) => Finding[]): Finding[] {
  const head = heads.get(id)
  heads.delete(id)
  return head === undefined ? [] : check(head)
}
