import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { authorsOf, writersOf } from '#lib/db/authors.ts'
import type { Db } from '#lib/db/client.ts'
import { openDisputes } from '#lib/db/disputes.ts'
import { refresh } from '#lib/db/projection/refresh.ts'
import { publishing } from '#lib/db/publishing.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { NOTICE_OF } from '#lib/entry/notices.ts'
import { Refusal } from '#lib/errors.ts'
import { type Decided, decisionByKey, type LockedEntry, lockEntry, recordDecision } from './ledger.ts'
import { lastDeed, notify } from './notify.ts'
import { parse } from './parse.ts'

const objection = z.strictObject({
  key: z.uuid(),
  slug,
  /** Why it is wrong, and how one knows. */
  words: text(2000),
})

/**
 * Says that a published entry is wrong. It shows as disputed until a reviewer answers.
 *
 * @throws Refusal `forbidden`; `not-found` where nothing is published; `conflict`; `invalid`; `too-many`
 */
export async function dispute(actor: Actor, given: z.infer<typeof objection>): Promise<Decided> {
  return publishing(async (tx) => {
    await refuseMany(tx, actor, given.key)
    return disputeIn(tx, actor, given)
  })
}

/** Disputes of one person within a day: each takes a reviewer's time. */
const MOST_A_DAY = 20

async function refuseMany(tx: Db, actor: Actor, key: string): Promise<void> {
  if (actor.kind !== 'member' || !z.uuid().safeParse(key).success) return
  const day = new Date(Date.now() - 86_400_000)
  const own = { reviewerKey: actor.key, outcome: 'dispute' as const, at: { gt: day } }
  const [today, repeated] = [
    await tx.decision.count({ where: own }),
    await tx.decision.count({ where: { key } }),
  ]
  if (today >= MOST_A_DAY && repeated === 0)
    throw new Refusal('too-many', `You disputed ${MOST_A_DAY} entries within a day. Go on tomorrow.`)
}

/** {@link dispute} within a transaction that holds the lock on publishing. */
export async function disputeIn(tx: Db, actor: Actor, given: z.infer<typeof objection>): Promise<Decided> {
  const { key, slug, words } = parse(objection, given)
  const { key: by } = must(actor, 'dispute', undefined)
  const entry = await heldEntry(tx, slug)
  const first = await decisionByKey(tx, key, by)
  if (first !== null) return first
  const revision = await publishedOf(tx, entry)
  const open = await openDisputes(entry.id, tx)
  if (open.some(({ byKey }) => byKey === by))
    throw new Refusal('conflict', 'You dispute this already, and a reviewer has not answered yet.')
  const told = { entry, revision, key, reviewerKey: by, checklist: {}, words }
  const decided = await recordDecision(tx, { ...told, outcome: 'dispute' })
  await refresh(tx, [entry.id])
  await recordAct(tx, actor, 'dispute-entry', slug, { number: revision.number })
  const number = await lastDeed(tx, entry.id)
  await notify(tx, await authorsOf(entry.id, undefined, tx), by, {
    what: 'disputed',
    entryId: entry.id,
    number,
  })
  return decided
}

const ruling = z.strictObject({
  key: z.uuid(),
  slug,
  /** `settle` lets the entry stand, as it is or as corrected since; `uphold` takes it down. */
  outcome: z.enum(['settle', 'uphold']),
  words: text(2000),
  /** Number of the latest dispute that was read: one that came later is not answered unread. */
  read: z.number().int().positive(),
})

/**
 * A reviewer's answer to all open disputes of an entry.
 *
 * @throws Refusal `forbidden` for whoever wrote the entry or disputes it; `not-found`; `conflict` when nothing is
 *   disputed, or a further dispute came; `invalid`
 */
export async function answerDispute(actor: Actor, given: z.infer<typeof ruling>): Promise<Decided> {
  const { key, slug, read, ...verdict } = parse(ruling, given)
  return publishing(async (tx) => {
    const entry = await heldEntry(tx, slug)
    const open = await openDisputes(entry.id, tx)
    const authorKeys = await authorsOf(entry.id, undefined, tx)
    const disputerKeys = open.map(({ byKey }) => byKey)
    const writerKeys = await writersOf(entry.id, tx)
    const { key: by } = must(actor, 'settle', { authorKeys: writerKeys, disputerKeys })
    const first = await decisionByKey(tx, key, by)
    if (first !== null) return first
    if (open.length === 0) throw new Refusal('conflict', 'Nobody disputes this, or it was answered already.')
    if (open.some(({ number }) => number > read))
      throw new Refusal('conflict', 'Another dispute came meanwhile: read it too, and answer both.')
    const revision = await publishedOf(tx, entry)
    const decided = await recordDecision(tx, {
      entry,
      revision,
      key,
      reviewerKey: by,
      checklist: {},
      ...verdict,
    })
    await refresh(tx, [entry.id])
    await recordAct(tx, actor, `${verdict.outcome}-dispute`, slug, { number: revision.number })
    const what = NOTICE_OF[verdict.outcome]
    const number = await lastDeed(tx, entry.id)
    await notify(tx, [...authorKeys, ...disputerKeys], by, { what, entryId: entry.id, number })
    return decided
  })
}

/** The entry at this address, held; @throws Refusal `not-found` */
export async function heldEntry(tx: Db, slug: string): Promise<LockedEntry> {
  const entry = await lockEntry(tx, slug)
  if (entry === null) throw new Refusal('not-found', 'There is no such entry.')
  return entry
}

/** What is published of an entry; @throws Refusal `not-found` where nothing is */
export async function publishedOf(tx: Db, { publishedRevisionId }: LockedEntry) {
  const select = { id: true, number: true, digest: true, body: true, shape: true }
  const revision =
    publishedRevisionId && (await tx.revision.findUnique({ where: { id: publishedRevisionId }, select }))
  if (!revision) throw new Refusal('not-found', 'Nothing is published at this address.')
  return revision
}
