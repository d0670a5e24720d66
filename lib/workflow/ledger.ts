import { v7 } from 'uuid'
import type { Db } from '#lib/db/client.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { decisionDigest } from '#lib/entry/digest.ts'
import type { Particulars } from '#lib/entry/particulars.ts'
import { type Outcome, type RevisionState, STEPS } from '#lib/entry/state.ts'
import { Refusal } from '#lib/errors.ts'

export interface LockedEntry {
  readonly id: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly publishedRevisionId: string | null
  readonly withdrawnAt: Date | null
}

/** The entry at this address, held until the transaction ends; null when there is none. */
export async function lockEntry(tx: Db, slug: string): Promise<LockedEntry | null> {
  const [entry] = await tx.$queryRaw<LockedEntry[]>`
    SELECT id, kind::text AS kind, slug, "publishedRevisionId", "withdrawnAt" FROM "Entry"
    WHERE slug = ${slug} FOR UPDATE`
  return entry ?? null
}

/** What is recorded once a decision is taken, and what repeating its key answers. */
export interface Decided {
  readonly slug: string
  /** The revision it is about. */
  readonly revision: number
  readonly outcome: Outcome
  readonly at: Date
  readonly digest: string
  /** True when the same key had been recorded before. */
  readonly repeated: boolean
}

/**
 * The decision that this key recorded before; null when it is new.
 *
 * @throws Refusal `conflict` when somebody else's decision has it
 */
export async function decisionByKey(tx: Db, key: string, reviewerKey: string): Promise<Decided | null> {
  const found = await tx.decision.findUnique({
    where: { key },
    include: { entry: { select: { slug: true } }, revision: { select: { number: true } } },
  })
  if (found === null) return null
  if (found.reviewerKey !== reviewerKey) throw new Refusal('conflict', 'That key belongs to another write.')
  const { outcome, at, digest, entry, revision } = found
  return { slug: entry.slug, revision: revision.number, outcome, at, digest, repeated: true }
}

export interface Verdict {
  readonly entry: LockedEntry
  readonly revision: { readonly id: string; readonly number: number; readonly digest: string }
  readonly key: string
  readonly outcome: Outcome
  readonly reviewerKey: string
  readonly checklist: Readonly<Record<string, boolean>>
  readonly words: string
  readonly particulars?: Particulars
}

/** Chains a decision to the entry's others and moves the revision and the entry's pointer as it says. */
export async function recordDecision(tx: Db, verdict: Verdict): Promise<Decided> {
  const { entry, revision, key, outcome, reviewerKey, checklist, words } = verdict
  const parent = await tx.decision.findFirst({
    where: { entryId: entry.id },
    orderBy: { number: 'desc' },
    select: { number: true, digest: true },
  })
  const number = (parent?.number ?? 0) + 1
  const at = new Date()
  const told = {
    entryId: entry.id,
    number,
    outcome,
    reviewerKey,
    checklist: { ...checklist },
    words,
    at,
    ...(verdict.particulars !== undefined && { particulars: { ...verdict.particulars } }),
  }
  const digest = decisionDigest({
    ...told,
    revisionDigest: revision.digest,
    parentDigest: parent?.digest ?? null,
  })
  await tx.decision.create({ data: { id: v7(), ...told, revisionId: revision.id, digest, key } })
  await move(tx, entry, revision.id, outcome, at)
  return { slug: entry.slug, revision: revision.number, outcome, at, digest, repeated: false }
}

/** Moves the revision and the entry's pointer as the outcome says. */
async function move(
  tx: Db,
  entry: LockedEntry,
  revisionId: string,
  outcome: Outcome,
  at: Date,
): Promise<void> {
  const change = STEPS[outcome]
  if (change === null) return
  const { from, to } = change
  if (outcome === 'publish' && entry.publishedRevisionId !== null)
    await step(tx, entry.publishedRevisionId, 'published', 'superseded')
  await step(tx, revisionId, from, to)
  if (to === 'published')
    await tx.entry.update({
      where: { id: entry.id },
      data: { publishedRevisionId: revisionId, withdrawnAt: null },
    })
  if (to === 'withdrawn')
    await tx.entry.update({ where: { id: entry.id }, data: { publishedRevisionId: null, withdrawnAt: at } })
}

/** The condition stands in the update: a state that changed since it was read is a conflict. */
async function step(tx: Db, id: string, from: RevisionState, to: RevisionState): Promise<void> {
  const { count } = await tx.revision.updateMany({ where: { id, state: from }, data: { state: to } })
  if (count !== 1) throw new Refusal('conflict', `This revision is no longer ${from}.`)
}
