import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { type Db, db } from '#lib/db/client.ts'
import { type Draft, type DraftText, type HeldText, lockDraft } from '#lib/db/drafts.ts'
import { Refusal } from '#lib/errors.ts'
import { type Changes, checkNames, checkSize } from './draft-fields.ts'

export interface Saved {
  readonly version: number
  readonly savedAt: Date
  /** Fields that somebody changed meanwhile to something else: theirs stands, yours is held beside it. */
  readonly conflicts: readonly string[]
}

/**
 * Puts what was typed into a draft, field by field: each where what stood there is still what the writer started
 * from. What is not, is held beside it for them to choose. Saving the same again changes nothing.
 *
 * @throws Refusal `not-found` for a draft that is not theirs; `conflict` once it was sent; `invalid`
 */
export async function saveDraft(actor: Actor, id: string, changes: Changes): Promise<Saved> {
  return db().$transaction(async (tx) => {
    const draft = await lockOpen(tx, actor, id)
    checkNames(draft.kind, changes)
    const conflicts: string[] = []
    const typed: Record<string, string> = { ...draft.typed }
    for (const [field, { was, is }] of Object.entries(changes)) {
      const now = typed[field] ?? ''
      if (now !== is && now !== was) conflicts.push(field)
      else typed[field] = is
    }
    const held = holding(
      draft.held,
      conflicts.map((field) => [field, changes[field]?.is ?? '']),
    )
    return store(tx, draft, typed, held, conflicts)
  })
}

/**
 * Keeps what came in for a draft from somebody who is not signed in any more. It is put into no field: its owner is
 * asked. Who knows a draft's id knows something random that only its owner was told.
 *
 * @throws Refusal `not-found`; `conflict` once it was sent; `invalid`
 */
export async function holdText(id: string, changes: Changes): Promise<void> {
  await db().$transaction(async (tx) => {
    const draft = await lockDraft(tx, id)
    if (draft === null) throw notThere()
    if (draft.submittedRevisionId !== null) throw sent()
    checkNames(draft.kind, changes)
    const fresh = Object.entries(changes).filter(([field, { is }]) => (draft.typed[field] ?? '') !== is)
    const held = holding(
      draft.held,
      fresh.map(([field, { is }]) => [field, is]),
    )
    if (fresh.length > 0) await store(tx, draft, draft.typed, held, [])
  })
}

/**
 * Takes one of the texts that were held for a field, by its place among them, or leaves what stands; either way
 * nothing is held for it any longer.
 */
export async function settleHeld(
  actor: Actor,
  id: string,
  choices: Readonly<Record<string, 'stands' | number>>,
): Promise<Saved> {
  return db().$transaction(async (tx) => {
    const draft = await lockOpen(tx, actor, id)
    const held = Object.entries(draft.held ?? {})
    const taken = held.flatMap(([field, texts]) => {
      const choice = choices[field]
      const text = typeof choice === 'number' ? texts[choice] : undefined
      return text === undefined ? [] : [[field, text] as const]
    })
    const open = held.filter(([field]) => choices[field] === undefined)
    return store(tx, draft, { ...draft.typed, ...Object.fromEntries(taken) }, Object.fromEntries(open), [])
  })
}

/** Texts that wait, with more of them: none pushes another out. */
export function holding(held: HeldText | null, more: readonly (readonly [string, string])[]): HeldText {
  const all: Record<string, readonly string[]> = { ...held }
  for (const [field, text] of more) {
    const before = all[field] ?? []
    if (!before.includes(text)) all[field] = [...before, text]
  }
  return all
}

/** One's own draft, held for this transaction, that was not sent yet. */
export async function lockOpen(tx: Db, actor: Actor, id: string): Promise<Draft> {
  const draft = await lockDraft(tx, id)
  if (draft === null || actor.kind !== 'member' || draft.ownerKey !== actor.key) throw notThere()
  must(actor, 'writeDraft', undefined)
  if (draft.submittedRevisionId !== null) throw sent()
  return draft
}

const notThere = () => new Refusal('not-found', 'There is no such draft of yours.')
const sent = () => new Refusal('conflict', 'This draft was already sent for review.')

async function store(
  tx: Db,
  draft: Draft,
  typed: DraftText,
  held: HeldText,
  conflicts: readonly string[],
): Promise<Saved> {
  const kept = withoutBlanks(typed)
  const held_ = Object.keys(held).length > 0 ? held : null
  checkSize([
    ...Object.entries(kept),
    ...Object.entries(held).flatMap(([name, texts]) => texts.map((text) => [name, text] as const)),
  ])
  const savedAt = new Date()
  const version = draft.version + 1
  // An update through the client cannot write SQL's NULL into a JSON column.
  await tx.$executeRaw`
    UPDATE "Draft" SET typed = ${JSON.stringify(kept)}::jsonb, held = ${held_ && JSON.stringify(held_)}::jsonb,
      "heldAt" = ${held_ && savedAt}, version = ${version}, "savedAt" = ${savedAt}
    WHERE id = ${draft.id}::uuid`
  return { version, savedAt, conflicts }
}

const withoutBlanks = (typed: DraftText): DraftText =>
  Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== ''))
