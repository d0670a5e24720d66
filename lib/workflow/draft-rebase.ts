import type { Actor } from '#lib/access/actor.ts'
import { db } from '#lib/db/client.ts'
import type { DraftText } from '#lib/db/drafts.ts'
import { Refusal } from '#lib/errors.ts'
import { holding, lockOpen } from './draft-save.ts'

/** A draft brought together with a version that came after the one it started from. */
export interface Rebased {
  readonly id: string
  /** Of the draft when it was read. */
  readonly version: number
  /** The version that it now starts from. */
  readonly basedOn: number
  readonly typed: DraftText
  /** Text that could not be read into the body, and so is offered instead of put in. */
  readonly held: DraftText
}

/**
 * Lets a draft start from a later version, with the text that both make together.
 *
 * @throws as `saveDraft`; Refusal `conflict` when the draft changed since it was read
 */
export async function rebaseDraft(
  actor: Actor,
  { id, version, basedOn, typed, held }: Rebased,
): Promise<void> {
  await db().$transaction(async (tx) => {
    const draft = await lockOpen(tx, actor, id)
    if (draft.version !== version || draft.basedOn === null || basedOn <= draft.basedOn)
      throw new Refusal('conflict', 'This draft was changed elsewhere a moment ago. Look at it again.')
    const waiting = holding(draft.held, Object.entries(held))
    const now = new Date()
    await tx.draft.update({
      where: { id },
      data: {
        typed: { ...typed },
        basedOn,
        version: version + 1,
        savedAt: now,
        ...(Object.keys(waiting).length > 0 && {
          held: { ...waiting } as Record<string, string[]>,
          heldAt: now,
        }),
      },
    })
  })
}
