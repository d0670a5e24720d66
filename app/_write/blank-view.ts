import type { Member } from '#lib/access/actor.ts'
import type { Draft } from '#lib/db/drafts.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { type FormView, viewOf } from './view.ts'

/** Where a draft starts that nobody began: what its form shows, and no row. */
type Start = Pick<Draft, 'slug' | 'basedOn' | 'adaptedFrom' | 'typed'>

const NOTHING: Start = { slug: null, basedOn: null, adaptedFrom: null, typed: {} }

/** The form of a draft that is not begun yet, as it would begin; without what it begins from, all blank. */
export async function blankViewOf(member: Member, kind: WrittenKind, start: Start | null): Promise<FormView> {
  const { slug, basedOn, adaptedFrom, typed } = start ?? NOTHING
  const now = new Date()
  const draft: Draft = {
    id: '',
    ownerKey: member.key,
    ...{ kind, slug, basedOn, adaptedFrom, typed },
    held: null,
    heldAt: null,
    version: 1,
    createdAt: now,
    savedAt: now,
    submittedRevisionId: null,
  }
  return { ...(await viewOf(draft)), blank: true }
}
