import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { partiesTo } from '#lib/db/authors.ts'
import { db } from '#lib/db/client.ts'
import { readBody } from '#lib/entry/body.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { Refusal } from '#lib/errors.ts'
import { heldEntry, publishedOf } from './dispute.ts'
import { type Decided, decisionByKey, lockEntry, recordDecision } from './ledger.ts'
import { lastDeed, notify } from './notify.ts'
import { parse } from './parse.ts'

const reply = z.strictObject({ key: z.uuid(), slug, words: text(1200) })

/**
 * What the author of a case says beside somebody's visit to it. It shows at once, in their name; a steward can take
 * it off the page with {@link strike}.
 *
 * @throws Refusal `forbidden` for all but the authors of the case, and for those of the visit; `not-found`; `conflict`; `invalid`
 */
export async function answerVisit(actor: Actor, given: z.infer<typeof reply>): Promise<Decided> {
  const { key, slug, words } = parse(reply, given)
  return db().$transaction(async (tx) => {
    const entry = await heldEntry(tx, slug)
    const revision = await publishedOf(tx, entry)
    if (entry.kind !== 'visit') throw new Refusal('not-found', 'There is no such visit.')
    const { case: caseSlug } = readBody('visit', revision.body, revision.shape)
    const parties = await partiesTo({ entryId: entry.id, caseSlug }, tx)
    const { key: by } = must(actor, 'answer', parties)
    const first = await decisionByKey(tx, key, by)
    if (first !== null) return first
    const told = { entry, revision, key, reviewerKey: by, checklist: {}, words }
    const decided = await recordDecision(tx, { ...told, outcome: 'answer' })
    await recordAct(tx, actor, 'answer-visit', slug, { number: revision.number })
    const number = await lastDeed(tx, entry.id)
    await notify(tx, parties.visitAuthorKeys, by, { what: 'answered', entryId: entry.id, number })
    return decided
  })
}

const striking = z.strictObject({
  key: z.uuid(),
  slug,
  /** Number of the deed whose words go. */
  deed: z.number().int().positive(),
  words: text(600),
})

/** Deeds that show somebody's own words without a review before. */
const UNREVIEWED = ['dispute', 'answer'] as const

/**
 * A steward takes the words of a dispute or an answer off the page. They stay in the record, and that they were
 * struck, by whom and why, shows instead.
 *
 * @throws Refusal `forbidden`; `not-found`; `conflict` when it was struck already; `invalid`
 */
export async function strike(actor: Actor, given: z.infer<typeof striking>): Promise<Decided> {
  const { key, slug, deed, words } = parse(striking, given)
  const { key: by } = must(actor, 'strike', undefined)
  return db().$transaction(async (tx) => {
    const entry = await lockEntry(tx, slug)
    const struck =
      entry &&
      (await tx.decision.findUnique({
        where: { entryId_number: { entryId: entry.id, number: deed }, outcome: { in: [...UNREVIEWED] } },
        select: { reviewerKey: true, revision: { select: { id: true, number: true, digest: true } } },
      }))
    if (entry === null || struck === null) throw new Refusal('not-found', 'There are no such words.')
    const first = await decisionByKey(tx, key, by)
    if (first !== null) return first
    const before = await tx.decision.count({
      where: { entryId: entry.id, outcome: 'strike', particulars: { path: ['deed'], equals: deed } },
    })
    if (before > 0) throw new Refusal('conflict', 'These words were struck already.')
    const { revision } = struck
    const told = { entry, revision, key, reviewerKey: by, checklist: {}, words, particulars: { deed } }
    const decided = await recordDecision(tx, { ...told, outcome: 'strike' })
    await recordAct(tx, actor, 'strike-words', slug, { deed })
    await notify(tx, [struck.reviewerKey], by, { what: 'struck', entryId: entry.id, number: deed })
    return decided
  })
}
