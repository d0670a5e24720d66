import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { writersOf } from '#lib/db/authors.ts'
import { type Db, db } from '#lib/db/client.ts'
import { Refusal } from '#lib/errors.ts'
import { parse } from './parse.ts'

/** How long an item stays in one reviewer's hands. */
export const CLAIM_HOURS = 24

const wish = z.strictObject({ revisionId: z.uuid() })

/**
 * Takes a waiting revision in hand, so that no two reviewers read the same at once; again makes it last longer.
 *
 * @returns until when
 * @throws Refusal `forbidden` for what one may not judge; `not-found`; `conflict` when it waits no more, or when
 *   somebody else has it in hand
 */
export async function claim(actor: Actor, given: z.infer<typeof wish>): Promise<Date> {
  const { revisionId } = parse(wish, given)
  return db().$transaction(async (tx) => {
    const revision = await tx.revision.findUnique({
      where: { id: revisionId },
      select: { entryId: true, state: true },
    })
    if (revision === null) throw new Refusal('not-found', 'There is no such revision.')
    const authorKeys = await writersOf(revision.entryId, tx)
    const { key } = must(actor, 'decide', { authorKeys })
    if (revision.state !== 'submitted')
      throw new Refusal('conflict', `This revision is ${revision.state} already.`)
    const until = new Date(Date.now() + CLAIM_HOURS * 3_600_000)
    // One statement decides between two who ask at the same moment.
    const taken = await tx.$executeRaw`
      INSERT INTO "Claim" ("revisionId", "reviewerKey", until) VALUES (${revisionId}::uuid, ${key}, ${until})
      ON CONFLICT ("revisionId") DO UPDATE SET "reviewerKey" = excluded."reviewerKey", until = excluded.until
      WHERE "Claim"."reviewerKey" = excluded."reviewerKey" OR "Claim".until <= now()`
    if (taken === 0) throw inOtherHands()
    return until
  })
}

/** Puts back what one has in hand; nothing happens where one has not. */
export async function release(actor: Actor, given: z.infer<typeof wish>): Promise<void> {
  const { key } = must(actor, 'review', undefined)
  const { revisionId } = parse(wish, given)
  await db().claim.deleteMany({ where: { revisionId, reviewerKey: key } })
}

/** @throws Refusal `conflict` while another reviewer has it in hand */
export async function refuseClaimed(tx: Db, revisionId: string, reviewerKey: string): Promise<void> {
  const others = await tx.claim.count({
    where: { revisionId, reviewerKey: { not: reviewerKey }, until: { gt: new Date() } },
  })
  if (others > 0) throw inOtherHands()
}

/** What is decided is in nobody's hands. */
export const dropClaim = (tx: Db, revisionId: string) => tx.claim.deleteMany({ where: { revisionId } })

const inOtherHands = () => new Refusal('conflict', 'Another reviewer has this in hand.')
