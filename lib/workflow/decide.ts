import { z } from 'zod'
import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { recordAct } from '#lib/db/audit.ts'
import { authorsOf, partiesTo, writersOf } from '#lib/db/authors.ts'
import type { Db } from '#lib/db/client.ts'
import { refresh } from '#lib/db/projection/refresh.ts'
import { publishing } from '#lib/db/publishing.ts'
import { standingBody } from '#lib/db/revisions.ts'
import { readBody } from '#lib/entry/body.ts'
import { todayAnywhere } from '#lib/entry/dates.ts'
import { isErased } from '#lib/entry/erased.ts'
import { slug, text } from '#lib/entry/fields.ts'
import { NOTICE_OF } from '#lib/entry/notices.ts'
import { particulars } from '#lib/entry/particulars.ts'
import { needsTwoReaders } from '#lib/entry/two-readers.ts'
import { Refusal } from '#lib/errors.ts'
import { dropClaim, refuseClaimed } from './claim.ts'
import { type Decided, decisionByKey, type LockedEntry, lockEntry, recordDecision } from './ledger.ts'
import { notify } from './notify.ts'
import { parse } from './parse.ts'
import { missingWorks, unknownWork } from './references/case.ts'

const judgement = z.strictObject({
  key: z.uuid(),
  slug,
  number: z.number().int().positive(),
  outcome: z.enum(['publish', 'return', 'decline']),
  /** What the reviewer looked at, by name. */
  checklist: z.record(z.string().max(80), z.boolean()),
  words: text(2000),
  /** What the author is told of single fields, by their path. */
  fields: particulars.shape.fields,
})
export type Judgement = z.infer<typeof judgement>

/**
 * A reviewer's verdict on a submitted revision. Publishing moves the entry's pointer, supersedes the revision
 * published before and indexes the new one, or nothing happens at all. Where two reviewers are needed, the first
 * who would publish approves (`approve` in the answer), and another publishes.
 *
 * @throws Refusal `forbidden` (nobody judges what they wrote, even in part, or approved already); `not-found`;
 *   `conflict` when it is decided already, in another reviewer's hands, when a later revision is published, when the
 *   entry is withdrawn, or when a case and its visits have come apart meanwhile; `invalid`
 */
export async function decide(actor: Actor, given: Judgement): Promise<Decided> {
  return publishing(async (tx) => {
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
  const { key, slug, number, fields, ...verdict } = parse(judgement, given)
  const entry = await lockEntry(tx, slug)
  const revision = entry && (await readRevision(tx, entry.id, number))
  if (entry === null || revision === null) throw new Refusal('not-found', 'There is no such revision.')
  const authorKeys = await writersOf(entry.id, tx)
  const { key: reviewerKey } = must(actor, 'decide', { authorKeys })
  const first = await decisionByKey(tx, key, reviewerKey)
  if (first !== null) return { decided: first, entryId: entry.id }
  if (revision.state !== 'submitted')
    throw new Refusal('conflict', `This revision is ${revision.state} already.`)
  if (entry.withdrawnAt !== null) throw new Refusal('conflict', 'This entry is withdrawn.')
  await refuseClaimed(tx, revision.id, reviewerKey)
  if (verdict.outcome === 'publish') {
    await refuseOlder(tx, entry.publishedRevisionId, number)
    await refuseStray(tx, entry, revision)
  }
  const outcome =
    verdict.outcome === 'publish' ? await publishOrApprove(tx, entry, revision, reviewerKey) : verdict.outcome
  const decided = await recordDecision(tx, {
    entry,
    revision,
    key,
    reviewerKey,
    ...verdict,
    outcome,
    ...(fields !== undefined && fields.length > 0 && { particulars: { fields } }),
  })
  await dropClaim(tx, revision.id)
  await recordAct(tx, actor, `${outcome}-revision`, slug, { number })
  const tell = await authorsOf(entry.id, number, tx)
  await notify(tx, tell, reviewerKey, { what: NOTICE_OF[outcome], entryId: entry.id, number })
  if (outcome === 'publish' && entry.kind === 'visit') await tellOfVisit(tx, entry.id, revision, reviewerKey)
  return { decided, entryId: entry.id }
}

const readRevision = (tx: Db, entryId: string, number: number) =>
  tx.revision.findUnique({
    where: { entryId_number: { entryId, number } },
    select: { id: true, number: true, digest: true, authorKey: true, state: true, body: true, shape: true },
  })

type Judged = NonNullable<Awaited<ReturnType<typeof readRevision>>>

/** Where two must read it, the first of them approves. Nobody is both. */
async function publishOrApprove(
  tx: Db,
  { kind, id: entryId }: LockedEntry,
  { id, body, shape }: Judged,
  reviewerKey: string,
): Promise<'publish' | 'approve'> {
  const standing = await standingBody(kind, entryId, tx)
  if (!needsTwoReaders(kind, readBody(kind, body, shape), standing)) return 'publish'
  const approvals = await tx.decision.findMany({
    where: { revisionId: id, outcome: 'approve' },
    select: { reviewerKey: true },
  })
  if (approvals.some((approval) => approval.reviewerKey === reviewerKey))
    throw new Refusal('forbidden', 'You approved this already: another reviewer has to read it too.')
  return approvals.length > 0 ? 'publish' : 'approve'
}

/** Whoever wrote the case, and may answer, is told of a visit by somebody else. */
async function tellOfVisit(tx: Db, entryId: string, { number, body, shape }: Judged, by: string) {
  const { case: caseSlug } = readBody('visit', body, shape)
  const { caseAuthorKeys, visitAuthorKeys } = await partiesTo({ entryId, caseSlug }, tx)
  const others = caseAuthorKeys.filter((key) => !visitAuthorKeys.includes(key))
  await notify(tx, others, by, { what: 'visited', entryId, number })
}

/** What is published never goes back to an earlier revision. */
async function refuseOlder(tx: Db, publishedRevisionId: string | null, number: number): Promise<void> {
  if (publishedRevisionId === null) return
  const later = await tx.revision.count({ where: { id: publishedRevisionId, number: { gt: number } } })
  if (later > 0) throw new Refusal('conflict', 'A later revision is published already.')
}

/**
 * While a revision waited, its body may have been erased, visits to a work that it drops may have been published, or
 * the work it tells of dropped.
 */
async function refuseStray(
  tx: Db,
  { kind, slug }: LockedEntry,
  { body, shape }: { body: unknown; shape: number },
): Promise<void> {
  if (isErased(body)) throw new Refusal('conflict', 'Its body was erased.')
  const faults =
    kind === 'case'
      ? await missingWorks(tx, slug, readBody(kind, body, shape))
      : kind === 'visit'
        ? await unknownWork(tx, readBody(kind, body, shape), todayAnywhere(new Date()))
        : []
  if (faults.length > 0)
    throw new Refusal('conflict', 'What it tells of has changed since it was submitted.', faults)
}
