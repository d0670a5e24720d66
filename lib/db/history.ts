import type { WrittenKind } from '#lib/entry/body.ts'
import type { Outcome, RevisionState } from '#lib/entry/state.ts'
import type { Db } from './client.ts'

export interface StoredRevision {
  readonly id: string
  readonly entryId: string
  readonly number: number
  readonly basedOn: number | null
  readonly body: unknown
  readonly bodyDigest: string
  readonly shape: number
  readonly note: string
  readonly authorKey: string
  readonly state: RevisionState
  readonly createdAt: Date
  readonly digest: string
  readonly key: string
}

export interface StoredDecision {
  readonly id: string
  readonly entryId: string
  readonly revisionId: string
  readonly number: number
  readonly outcome: Outcome
  readonly reviewerKey: string
  readonly checklist: unknown
  readonly words: string
  readonly particulars: unknown
  readonly at: Date
  readonly digest: string
  readonly key: string
}

/** One entry with all that was ever written and decided about it, each in its order. */
export interface History {
  readonly id: string
  readonly kind: WrittenKind
  readonly slug: string
  readonly publishedRevisionId: string | null
  readonly withdrawnAt: Date | null
  readonly revisions: readonly StoredRevision[]
  readonly decisions: readonly StoredDecision[]
}

/** Every entry with its whole history, by id, a piece at a time: the record need not fit in memory. */
export async function* readHistories(tx: Db, size = 200): AsyncGenerator<readonly History[]> {
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const piece = await tx.entry.findMany({
      where: { id: { gt: after } },
      orderBy: { id: 'asc' },
      take: size,
      include: { revisions: { orderBy: { number: 'asc' } }, decisions: { orderBy: { number: 'asc' } } },
    })
    const last = piece.at(-1)
    if (last === undefined) return
    yield piece
    after = last.id
  }
}
