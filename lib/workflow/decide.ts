import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { type Db, db } from '#lib/db/client.ts'
import { lockPublishing, refresh } from '#lib/db/projection/refresh.ts'
import { readBody } from '#lib/entry/body.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { Refusal } from '#lib/errors.ts'
import { type Decided, decisionByKey, type LockedEntry, lockEntry, recordDecision } from './ledger.ts'
import { parse } from './parse.ts'
import { missingWorks, unknownWork } from './references.ts'

const judgement = z.strictObject({
  key: z.uuid(),
  slug,
  number: z.number().int().positive(),
  outcome: z.enum(['publish', 'return', 'decline']),
  /** What the reviewer looked at, by name. */
  checklist: z.record(z.string().max(80), z.boolean()),
  words: text(2000),
})
export type Judgement = z.infer<typeof judgement>

/**
 * A reviewer's verdict on a submitted revision. Publishing moves the entry's pointer, supersedes the revision
 * published before and indexes the new one, or nothing happens at all.
 *
 * @throws Refusal `forbidden` (nobody judges their own work); `not-found`; `conflict` when it is decided already,
 *   when a later revision is published, when the entry is withdrawn, or when a case and its visits have come
 *   apart meanwhile; `invalid`
 */
export async function decide(actor: Actor, given: Judgement): Promise<Decided> {
  return db().$transaction(async (tx) => {
    await lockPublishing(tx)
    const { decided, entryId } = await decideIn(tx, actor, given)
    if (decided.outcome === 'publish' && !decided.repeated) await refresh(tx, [entryId])
    return decided
  })
}

/** {@link decide} without its lock and its refresh, for a transaction that does many and indexes them together. */
export async function decideIn(
  tx: Db,
  actor: Actor,
  given: Judgement,
): Promise<{ decided: Decided; entryId: string }> {
  const { key, slug, number, ...verdict } = parse(judgement, given)
  const entry = await lockEntry(tx, slug)
  const revision =
    entry &&
    (await tx.revision.findUnique({
      where: { entryId_number: { entryId: entry.id, number } },
      select: { id: true, number: true, digest: true, authorKey: true, state: true, body: true, shape: true },
    }))
  if (entry === null || revision === null) throw new Refusal('not-found', 'There is no such revision.')
  const { key: reviewerKey } = must(actor, 'decide', revision)
  const first = await decisionByKey(tx, key, reviewerKey)
  if (first !== null) return { decided: first, entryId: entry.id }
  if (revision.state !== 'submitted')
    throw new Refusal('conflict', `This revision is ${revision.state} already.`)
  if (entry.withdrawnAt !== null) throw new Refusal('conflict', 'This entry is withdrawn.')
  if (verdict.outcome === 'publish') {
    await refuseOlder(tx, entry.publishedRevisionId, number)
    await refuseStray(tx, entry, revision)
  }
  const decided = await recordDecision(tx, { entry, revision, key, reviewerKey, ...verdict })
  return { decided, entryId: entry.id }
}

/** What is published never goes back to an earlier revision. */
async function refuseOlder(tx: Db, publishedRevisionId: string | null, number: number): Promise<void> {
  if (publishedRevisionId === null) return
  const later = await tx.revision.count({ where: { id: publishedRevisionId, number: { gt: number } } })
  if (later > 0) throw new Refusal('conflict', 'A later revision is published already.')
}

/** While a revision waited, visits to a work that it drops may have been published, or the work it tells of dropped. */
async function refuseStray(
  tx: Db,
  { kind, slug }: LockedEntry,
  { body, shape }: { body: unknown; shape: number },
): Promise<void> {
  const faults =
    kind === 'case'
      ? await missingWorks(tx, slug, readBody(kind, body, shape))
      : kind === 'visit'
        ? await unknownWork(tx, readBody(kind, body, shape))
        : []
  if (faults.length > 0)
    throw new Refusal('conflict', 'What it tells of has changed since it was submitted.', faults)
}
