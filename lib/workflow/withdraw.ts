import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { authorsOf } from '#lib/db/authors.ts'
import type { Db } from '#lib/db/client.ts'
import { refresh } from '#lib/db/projection/refresh.ts'
import { publishing } from '#lib/db/publishing.ts'
import { isErased } from '#lib/entry/erased.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { NOTICE_OF } from '#lib/entry/notices.ts'
import { Refusal } from '#lib/errors.ts'
import { type Decided, decisionByKey, lockEntry, recordDecision } from './ledger.ts'
import { lastDeed, notify } from './notify.ts'
import { parse } from './parse.ts'

const order = z.strictObject({ key: z.uuid(), slug, words: text(2000) })
export type Order = z.infer<typeof order>

/**
 * Takes a published entry down. Its history stays, and its address says when and why.
 *
 * @throws Refusal `forbidden`; `not-found`; `conflict` when nothing of it is published; `invalid`
 */
export const withdraw = (actor: Actor, given: Order): Promise<Decided> => carryOut(actor, 'withdraw', given)

/** Puts a withdrawn entry back as it was; refuses as {@link withdraw} does, and when it is not withdrawn. */
export const restore = (actor: Actor, given: Order): Promise<Decided> => carryOut(actor, 'restore', given)

async function carryOut(actor: Actor, outcome: 'withdraw' | 'restore', given: Order): Promise<Decided> {
  return publishing(async (tx) => {
    const { decided, entryId } = await carryOutIn(tx, actor, outcome, given)
    if (!decided.repeated) await refresh(tx, [entryId])
    return decided
  })
}

/** Both, without their lock and refresh, for a transaction that does many and indexes them together. */
export async function carryOutIn(
  tx: Db,
  actor: Actor,
  outcome: 'withdraw' | 'restore',
  given: Order,
): Promise<{ decided: Decided; entryId: string }> {
  const { key: reviewerKey } = must(actor, outcome, undefined)
  const { key, slug, words } = parse(order, given)
  const entry = await lockEntry(tx, slug)
  if (entry === null) throw new Refusal('not-found', 'There is no such entry.')
  const first = await decisionByKey(tx, key, reviewerKey)
  if (first !== null) return { decided: first, entryId: entry.id }
  const revision = await tx.revision.findFirst({
    where: { entryId: entry.id, state: outcome === 'withdraw' ? 'published' : 'withdrawn' },
    select: { id: true, number: true, digest: true, body: true },
  })
  if (revision === null || isErased(revision.body))
    throw new Refusal('conflict', `There is nothing to ${outcome} here.`)
  const decided = await recordDecision(tx, {
    entry,
    revision,
    key,
    outcome,
    reviewerKey,
    checklist: {},
    words,
  })
  await recordAct(tx, actor, `${outcome}-entry`, slug, { number: revision.number })
  const number = await lastDeed(tx, entry.id)
  await notify(tx, await authorsOf(entry.id, undefined, tx), reviewerKey, {
    what: NOTICE_OF[outcome],
    entryId: entry.id,
    number,
  })
  return { decided, entryId: entry.id }
}
