import type { Member } from '#lib/access/actor.ts'
import type { Draft } from '#lib/db/drafts.ts'
import { type Change, diffBodies } from '#lib/entry/diff.ts'
import { pathText } from '#lib/entry/json.ts'
import { type MergeConflict, mergeBodies, mergeWith, type Side } from '#lib/entry/merge.ts'
import { rebaseDraft } from '#lib/workflow/draft-rebase.ts'
import { newerRevision } from '#lib/workflow/draft-submit.ts'
import { printDraft } from '../_write/print-draft.ts'
import { type FormView, viewOf } from '../_write/view.ts'

/** A draft beside the version that came between. */
export interface Beside {
  readonly view: FormView
  readonly number: number
  readonly bodies: readonly [base: unknown, theirs: unknown, yours: unknown]
  readonly conflicts: readonly MergeConflict[]
  /** What the draft takes over from the version that came between, and what it keeps of its own, both undisputed. */
  readonly taken: readonly Change[]
  readonly kept: readonly Change[]
}

/** What stands against a draft of an earlier version; null when nothing came between. */
export async function besideNewer(draft: Draft): Promise<Beside | null> {
  const newer = await newerRevision(draft)
  if (newer === null) return null
  const view = await viewOf(draft)
  const bodies = [ungranted(newer.base), ungranted(newer.body), ungranted(view.read.body)] as const
  const { merged, conflicts } = mergeBodies(...bodies)
  const undisputed = ({ path }: Change) =>
    !conflicts.some((conflict) => isWithin(path, conflict.path) || isWithin(conflict.path, path))
  return {
    ...{ view, number: newer.number, bodies, conflicts },
    taken: diffBodies(bodies[2], merged).filter(undisputed),
    kept: diffBodies(bodies[1], merged).filter(undisputed),
  }
}

/** What a writer grants is asked anew of each version, and merged with nobody's. */
function ungranted(body: unknown): unknown {
  const { rights, ...rest } = body as { rights?: unknown }
  return rest
}

const isWithin = (inner: readonly string[], outer: readonly string[]): boolean =>
  outer.every((part, index) => inner[index] === part)

export const choiceName = (path: readonly string[]) => `choice-${pathText(path)}`

/** What the page of both showed when its writer chose. */
export interface Looked {
  readonly number: number
  readonly version: number
}

/**
 * Brings both together as chosen. Text that is no value of a field yet is held, to be put in again.
 *
 * @returns `done`; `again` where either changed since it was shown; `choose` while a field has no choice
 */
export async function takeOverNewer(
  actor: Member,
  draft: Draft,
  looked: Looked,
  choices: Readonly<Record<string, Side>>,
): Promise<'done' | 'again' | 'choose'> {
  const beside = await besideNewer(draft)
  if (beside === null) return 'done'
  const { view, number, bodies, conflicts } = beside
  if (looked.number !== number || looked.version !== draft.version) return 'again'
  if (conflicts.some(({ path }) => choices[pathText(path)] === undefined)) return 'choose'
  const body = mergeWith(...bodies, choices)
  const { typed } = draft
  const entry = Object.entries(typed).filter(([name]) => /^(entry|rights)\./.test(name))
  const unread = view.read.faults.flatMap(({ field }) => {
    const text = typed[field]
    return text === undefined || text === '' ? [] : [[field, text] as const]
  })
  await rebaseDraft(actor, {
    id: draft.id,
    version: draft.version,
    basedOn: number,
    typed: { ...(await printDraft(draft.kind, body as object, view.picks)), ...Object.fromEntries(entry) },
    held: Object.fromEntries(unread),
  })
  return 'done'
}
