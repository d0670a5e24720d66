import type { Actor } from '#lib/access/actor.ts'
import { must } from '#lib/access/policy.ts'
import { type Db, db } from '#lib/db/client.ts'
import { type Draft, type DraftText, type HeldText, lockDraft } from '#lib/db/drafts.ts'
import { noteOrder } from '#lib/entry/item-order.ts'
import { isSame } from '#lib/entry/json.ts'
import { Refusal } from '#lib/errors.ts'
import { type Changes, checkNames, checkSize } from './draft-fields.ts'

export interface Saved {
  readonly version: number
  readonly savedAt: Date
  /** Fields that somebody changed meanwhile to something else: theirs stands, yours is held beside it. */
  readonly conflicts: readonly string[]
  /** Whether text waits beside its field to be chosen, of this save or of an earlier one. */
  readonly waiting: boolean
  /** The draft had been sent before this came in: none of it was put in, all of it waits. */
  readonly sent: boolean
}

/**
 * Puts what was typed into a draft, field by field: each where what stood there is still what the writer started
 * from. What is not, is held beside it for them to choose, and so is everything once the draft was sent. Saving the
 * same again changes nothing.
 *
 * @throws Refusal `not-found` for a draft that is not theirs; `invalid`
 */
export async function saveDraft(actor: Actor, id: string, changes: Changes): Promise<Saved> {
  return db().$transaction(async (tx) => {
    const draft = await lockOwn(tx, actor, id)
    checkNames(draft.kind, changes)
    if (draft.submittedRevisionId !== null)
      return store(tx, draft, { typed: draft.typed, held: holdAll(draft, changes) })
    const conflicts: string[] = []
    const typed: Record<string, string> = { ...draft.typed }
    let held = draft.held ?? {}
    for (const [field, change] of Object.entries(changes)) {
      const now = typed[field] ?? ''
      if (now !== change.is && now !== change.was) conflicts.push(field)
      else typed[field] = change.is
      // A window that was told of a conflict types on from its own text, which waits.
      if (now !== change.was) held = holdOne(held, field, change, now)
    }
    return store(tx, draft, { typed, held, conflicts })
  })
}

/** Puts in what was worked out for blank fields; where somebody typed meanwhile, or sent the draft, theirs stands. */
export async function fillDraft(actor: Actor, id: string, filled: Changes): Promise<void> {
  await db().$transaction(async (tx) => {
    const draft = await lockOwn(tx, actor, id)
    if (draft.submittedRevisionId !== null) return
    const fitting = Object.entries(filled).filter(([field, { was }]) => (draft.typed[field] ?? '') === was)
    const typed = { ...draft.typed, ...Object.fromEntries(fitting.map(([field, { is }]) => [field, is])) }
    await store(tx, draft, { typed, held: draft.held ?? {} })
  })
}

/**
 * Keeps what came in for a draft from somebody who is not signed in any more. It is put into no field: its owner is
 * asked. Who knows a draft's id knows something random that only its owner was told.
 *
 * @throws Refusal `not-found`; `invalid`
 */
export async function holdText(id: string, changes: Changes): Promise<void> {
  await db().$transaction(async (tx) => {
    const draft = await lockDraft(tx, id)
    if (draft === null) throw notThere()
    checkNames(draft.kind, changes)
    await store(tx, draft, { typed: draft.typed, held: holdAll(draft, changes) })
  })
}

/** What its writer chose for a field, and all that they were shown of it: what stood there, then what was held. */
export interface Choice {
  readonly text: string
  readonly seen: readonly string[]
}

/**
 * Puts in what was chosen where text was held for a field; nothing that was shown is held for it any longer. What came
 * in meanwhile was chosen against by nobody: it goes on waiting, and where it stands in the field itself, so does all
 * the rest (`conflicts`). Of a draft that was sent, nothing can be put in, but text can be let go.
 */
export async function settleHeld(
  actor: Actor,
  id: string,
  choices: Readonly<Record<string, Choice>>,
): Promise<Saved> {
  return db().$transaction(async (tx) => {
    const draft = await lockOwn(tx, actor, id)
    const typed: Record<string, string> = { ...draft.typed }
    const held: Record<string, readonly string[]> = { ...draft.held }
    const conflicts: string[] = []
    for (const [field, { text, seen }] of Object.entries(choices)) {
      const texts = held[field]
      if (texts === undefined) continue
      const now = typed[field] ?? ''
      const open = texts.filter((one) => !seen.includes(one) && one !== text)
      if (text !== now && (now !== seen[0] || draft.submittedRevisionId !== null)) conflicts.push(field)
      else {
        typed[field] = text
        held[field] = open
      }
    }
    return store(tx, draft, { typed, held, conflicts })
  })
}

/** All of it held, but what stands in its field anyway. */
function holdAll(draft: Draft, changes: Changes): HeldText {
  return Object.entries(changes).reduce<HeldText>(
    (held, [field, change]) => holdOne(held, field, change, draft.typed[field] ?? ''),
    draft.held ?? {},
  )
}

/**
 * Texts that wait, with one more: in the place of the one that it was typed on from, so that a sentence saved as it
 * grew waits once. What stands in the field needs no holding.
 */
function holdOne(
  held: HeldText,
  field: string,
  { was, is }: Changes[string],
  stands: string,
): Readonly<Record<string, readonly string[]>> {
  const before = held[field] ?? []
  const at = before.indexOf(was)
  const texts = at < 0 ? [...before, is] : before.map((text, index) => (index === at ? is : text))
  return { ...held, [field]: [...new Set(texts)].filter((text) => text !== stands) }
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
  const draft = await lockOwn(tx, actor, id)
  if (draft.submittedRevisionId !== null)
    throw new Refusal('conflict', 'This draft was already sent for review.')
  return draft
}

async function lockOwn(tx: Db, actor: Actor, id: string): Promise<Draft> {
  const draft = await lockDraft(tx, id)
  if (draft === null || actor.kind !== 'member' || draft.ownerKey !== actor.key) throw notThere()
  must(actor, 'writeDraft', undefined)
  return draft
}

const notThere = () => new Refusal('not-found', 'There is no such draft of yours.')

interface Next {
  readonly typed: DraftText
  readonly held: HeldText
  readonly conflicts?: readonly string[]
}

async function store(tx: Db, draft: Draft, next: Next): Promise<Saved> {
  const typed = noteOrder(draft.typed, withoutBlanks(next.typed))
  const held = Object.fromEntries(Object.entries(next.held).filter(([, texts]) => texts.length > 0))
  const waiting = Object.keys(held).length > 0
  const told = { conflicts: next.conflicts ?? [], waiting, sent: draft.submittedRevisionId !== null }
  if (isSame(typed, draft.typed) && isSame(held, draft.held ?? {}))
    return { version: draft.version, savedAt: draft.savedAt, ...told }
  checkSize([
    ...Object.entries(typed),
    ...Object.entries(held).flatMap(([name, texts]) => texts.map((text) => [name, text] as const)),
  ])
  const savedAt = new Date()
  const version = draft.version + 1
  // An update through the client cannot write SQL's NULL into a JSON column.
  await tx.$executeRaw`
    UPDATE "Draft" SET typed = ${JSON.stringify(typed)}::jsonb,
      held = ${waiting ? JSON.stringify(held) : null}::jsonb, "heldAt" = ${waiting ? savedAt : null},
      version = ${version}, "savedAt" = ${savedAt}
    WHERE id = ${draft.id}::uuid`
  return { version, savedAt, ...told }
}

const withoutBlanks = (typed: DraftText): DraftText =>
  Object.fromEntries(Object.entries(typed).filter(([, text]) => text !== ''))
