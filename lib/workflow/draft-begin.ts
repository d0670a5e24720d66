import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { type Db, db } from '#lib/db/client.ts'
import { type DraftText, type HeldText, isDraftId, lockDraft } from '#lib/db/drafts.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { isErased } from '#lib/entry/erased.ts'
import { Refusal } from '#lib/errors.ts'
import { isOfEveryVersion } from './draft-fields.ts'

/** What a draft begins with. */
export interface Beginning {
  /** A uuid7 made by whoever asks: beginning again with it finds the same draft. */
  readonly id: string
  readonly kind: WrittenKind
  readonly slug: string | null
  readonly basedOn: number | null
  readonly adaptedFrom: string | null
  readonly typed: DraftText
  /** A draft of theirs that was sent: what came in for it since waits in this one instead. */
  readonly late?: string
}

/** Open drafts that one person may have; nobody writes so many, a faulty program does. */
const MOST_OPEN = 300

/**
 * Begins a draft.
 *
 * @throws Refusal `forbidden`; `conflict` for an id that is somebody else's, or with too many drafts open
 */
export async function beginDraft(actor: Actor, { late, ...begin }: Beginning): Promise<{ id: string }> {
  const { key: ownerKey } = must(actor, 'writeDraft', undefined)
  if (!isDraftId(begin.id))
    throw new Refusal('invalid', 'A draft needs an id.', [{ field: 'id', code: 'wrong-format' }])
  return db().$transaction(async (tx) => {
    const first = await tx.draft.findUnique({ where: { id: begin.id }, select: { ownerKey: true } })
    if (first !== null) return mustBeOwn(first, ownerKey, begin.id)
    await refuseErased(tx, begin)
    const open = await tx.draft.count({ where: { ownerKey, submittedRevisionId: null } })
    if (open >= MOST_OPEN)
      throw new Refusal(
        'conflict',
        `You have ${MOST_OPEN} drafts. Send or discard some before you begin another.`,
      )
    const now = new Date()
    const held = late === undefined ? null : await takeHeld(tx, ownerKey, late)
    const data = {
      ...{ ...begin, typed: { ...begin.typed }, ownerKey, createdAt: now, savedAt: now },
      ...(held !== null && { held: held as Record<string, string[]>, heldAt: now }),
    }
    await tx.draft.createMany({ data: [data], skipDuplicates: true })
    const made = await tx.draft.findUnique({ where: { id: begin.id }, select: { ownerKey: true } })
    return mustBeOwn(made, ownerKey, begin.id)
  })
}

function mustBeOwn(draft: { ownerKey: string } | null, ownerKey: string, id: string): { id: string } {
  if (draft?.ownerKey !== ownerKey) throw new Refusal('conflict', 'That id belongs to another draft.')
  return { id }
}

/** What waits beside a draft that was sent, taken from there, but for what has no field in a further version. */
async function takeHeld(tx: Db, ownerKey: string, id: string): Promise<HeldText | null> {
  const draft = await lockDraft(tx, id)
  if (draft?.ownerKey !== ownerKey || draft.submittedRevisionId === null) return null
  const waiting = Object.entries(draft.held ?? {})
  const held = Object.fromEntries(waiting.filter(([field]) => isOfEveryVersion(field)))
  const rest = Object.fromEntries(waiting.filter(([field]) => !isOfEveryVersion(field)))
  const stays = Object.keys(rest).length > 0
  await tx.$executeRaw`
    UPDATE "Draft" SET held = ${stays ? JSON.stringify(rest) : null}::jsonb,
      "heldAt" = CASE WHEN ${stays} THEN "heldAt" END
    WHERE id = ${id}::uuid`
  return Object.keys(held).length === 0 ? null : held
}

/** Its text may have been erased since it was read; who erases holds the entry, and clears the drafts that are there. */
async function refuseErased(tx: Db, { slug, basedOn, adaptedFrom }: Beginning): Promise<void> {
  const [from, number] = slug === null ? (adaptedFrom?.split('@') ?? []) : [slug, basedOn]
  if (from === undefined) return
  const [entry] = await tx.$queryRaw<{ id: string }[]>`
    SELECT id FROM "Entry" WHERE slug = ${from} FOR SHARE`
  if (entry === undefined) return
  const revision = await tx.revision.findFirst({
    where: { entryId: entry.id, number: Number(number) },
    select: { body: true },
  })
  if (isErased(revision?.body)) throw new Refusal('conflict', 'That version was erased.')
}

/** Throws a draft away; only what was never sent can be. */
export async function discardDraft(actor: Actor, id: string): Promise<void> {
  const { key: ownerKey } = must(actor, 'writeDraft', undefined)
  if (!isDraftId(id)) return
  await db().draft.deleteMany({ where: { id, ownerKey, submittedRevisionId: null } })
}
