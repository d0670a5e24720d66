import type { Member } from '#lib/access/actor.ts'
import type { Draft } from '#lib/db/drafts.ts'
import { pathText } from '#lib/entry/json.ts'
import { type Merged, mergeBodies, mergeWith, type Side } from '#lib/entry/merge.ts'
import { rebaseDraft } from '#lib/workflow/draft-rebase.ts'
import { newerRevision } from '#lib/workflow/draft-submit.ts'
import { printForm } from '../_write/print.ts'
import { type FormView, shower, viewOf } from '../_write/view.ts'

/** A draft beside the version that came between. */
export interface Beside {
  readonly view: FormView
  readonly number: number
  readonly merged: Merged
  readonly bodies: readonly [base: unknown, theirs: unknown, yours: unknown]
}

/** What stands against a draft of an earlier version; null when nothing came between. */
export async function besideNewer(draft: Draft): Promise<Beside | null> {
  const newer = await newerRevision(draft)
  if (newer === null) return null
  const view = await viewOf(draft)
  const bodies = [newer.base, newer.body, view.read.body] as const
  return { view, number: newer.number, merged: mergeBodies(...bodies), bodies }
}

export const choiceName = (path: readonly string[]) => `choice-${pathText(path)}`

/** Brings both together as chosen. Text that is no value of a field yet is held, to be put in again. */
export async function takeOverNewer(
  actor: Member,
  draft: Draft,
  choices: Readonly<Record<string, Side>>,
): Promise<void> {
  const beside = await besideNewer(draft)
  if (beside === null) return
  const { view, number, bodies } = beside
  const body = mergeWith(...bodies, choices)
  const { typed } = draft
  const entry = Object.entries(typed).filter(([name]) => name.startsWith('entry.'))
  const unread = view.read.faults.flatMap(({ field }) => {
    const text = typed[field]
    return text === undefined || text === '' ? [] : [[field, text] as const]
  })
  await rebaseDraft(actor, {
    id: draft.id,
    version: draft.version,
    basedOn: number,
    typed: { ...printForm(draft.kind, body as object, shower(view.picks)), ...Object.fromEntries(entry) },
    held: Object.fromEntries(unread),
  })
}
