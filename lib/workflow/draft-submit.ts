import type { Actor } from '#lib/access/actor.ts'
import { content } from '#lib/content/index.ts'
import { db } from '#lib/db/client.ts'
import type { Draft } from '#lib/db/drafts.ts'
import { SHAPES } from '#lib/entry/body.ts'
import { todayAnywhere } from '#lib/entry/dates.ts'
import { isSlug } from '#lib/entry/fields.ts'
import { type FieldFault, Refusal } from '#lib/errors.ts'
import { lockOpen } from './draft-save.ts'
import { checkReferences, type References } from './references.ts'
import { type Submitted, submitIn } from './submit.ts'

/** A draft as it is to be recorded. */
export interface ReadDraft {
  readonly id: string
  /** Of the draft when it was read: what was typed since is not sent unseen. */
  readonly version: number
  readonly slug: string
  readonly body: unknown
  readonly note: string
}

/** Versions of one person that may wait at once: more than a season's work, and no more than reviewers can clear. */
const MOST_WAITING = 100

/**
 * Sends a draft for review, and remembers which revision it became; both or neither.
 *
 * @throws as `submit`; Refusal `conflict` when the draft changed since it was read; `too-many`
 */
export async function submitDraft(
  actor: Actor,
  { id, version, slug, body, note }: ReadDraft,
  references: References = content(),
): Promise<Submitted> {
  return db().$transaction(async (tx) => {
    const draft = await lockOpen(tx, actor, id)
    if (draft.version !== version)
      throw new Refusal('conflict', 'This draft was changed elsewhere a moment ago. Look at it again.')
    const waiting = await tx.revision.count({ where: { authorKey: draft.ownerKey, state: 'submitted' } })
    if (waiting >= MOST_WAITING)
      throw new Refusal(
        'too-many',
        `${MOST_WAITING} of your versions wait for a reviewer. This draft is kept: send it once some are read.`,
      )
    const { kind, basedOn } = draft
    const submitted = await submitIn(
      tx,
      actor,
      { key: id, kind, slug: draft.slug ?? slug, basedOn, body, note },
      references,
    )
    await tx.draft.update({ where: { id }, data: { submittedRevisionId: submitted.revisionId } })
    return submitted
  })
}

/** What stands against sending a draft whose body fits its schema: what it points at, and its address. */
export async function draftFaults(
  draft: Pick<Draft, 'kind' | 'slug' | 'basedOn' | 'ownerKey'>,
  { slug, body }: { readonly slug: string; readonly body: unknown },
  references: References = content(),
): Promise<readonly FieldFault[]> {
  const parsed = SHAPES[draft.kind].schema.safeParse(body)
  if (!parsed.success) return []
  const address = draft.slug ?? slug
  const today = todayAnywhere(new Date())
  const check = { tx: db(), content: references, slug: address, today, authorKey: draft.ownerKey }
  const pointing = await checkReferences(draft.kind, parsed.data as never, check)
  const taken =
    draft.slug === null && isSlug(slug) && (await db().entry.count({ where: { slug } })) > 0
      ? [{ field: 'entry.slug', code: 'taken', value: slug }]
      : []
  return [
    ...pointing.map((fault) => (fault.field === 'slug' ? { ...fault, field: 'entry.slug' } : fault)),
    ...taken,
  ]
}

/** A revision that came after the one a draft started from; null when it can be sent as it is. */
export async function newerRevision(
  draft: Pick<Draft, 'slug' | 'basedOn'>,
): Promise<{ readonly number: number; readonly body: unknown; readonly base: unknown } | null> {
  if (draft.slug === null || draft.basedOn === null) return null
  const revisions = await db().revision.findMany({
    where: {
      entry: { slug: draft.slug },
      OR: [
        { number: draft.basedOn },
        { number: { gt: draft.basedOn }, state: { in: ['submitted', 'published', 'superseded'] } },
      ],
    },
    orderBy: { number: 'asc' },
    select: { number: true, body: true },
  })
  const [base] = revisions
  const theirs = revisions.at(-1)
  if (base === undefined || theirs === undefined || theirs.number === draft.basedOn) return null
  return { number: theirs.number, body: theirs.body, base: base.body }
}
