/** A revision is born submitted: what is still being written is no part of the record. */
export const REVISION_STATES = [
  'submitted',
  'returned',
  'declined',
  'published',
  'superseded',
  'withdrawn',
] as const
export type RevisionState = (typeof REVISION_STATES)[number]

export const OUTCOMES = ['publish', 'return', 'decline', 'withdraw', 'restore'] as const
export type Outcome = (typeof OUTCOMES)[number]

/** What each decision does to the revision it is about. Publishing also supersedes the one published before. */
export const STEPS = {
  publish: { from: 'submitted', to: 'published' },
  return: { from: 'submitted', to: 'returned' },
  decline: { from: 'submitted', to: 'declined' },
  withdraw: { from: 'published', to: 'withdrawn' },
  restore: { from: 'withdrawn', to: 'published' },
} as const satisfies Record<Outcome, { from: RevisionState; to: RevisionState }>

/** Where an entry stands: each revision's state, the number published, and since when it is withdrawn. */
export interface EntryState {
  readonly states: ReadonlyMap<number, RevisionState>
  readonly published: number | null
  readonly withdrawnAt: Date | null
}

/**
 * Where an entry must stand after its decisions, told from them alone.
 *
 * @param numbers of the revisions there are
 * @param decisions in their order
 * @throws RangeError when a decision is about a revision that is not there, or not in the state it starts from
 */
export function replay(
  numbers: readonly number[],
  decisions: readonly { readonly revision: number; readonly outcome: Outcome; readonly at: Date }[],
): EntryState {
  const states = new Map<number, RevisionState>(numbers.map((number) => [number, 'submitted']))
  let published: number | null = null
  let withdrawnAt: Date | null = null
  for (const { revision, outcome, at } of decisions) {
    const { from, to } = STEPS[outcome]
    if (states.get(revision) !== from)
      throw new RangeError(
        `cannot ${outcome} revision ${revision} that is ${states.get(revision) ?? 'missing'}`,
      )
    if (outcome === 'publish' && published !== null) states.set(published, 'superseded')
    states.set(revision, to)
    if (to === 'published') published = revision
    if (outcome === 'restore') withdrawnAt = null
    if (outcome === 'withdraw') {
      published = null
      withdrawnAt = at
    }
  }
  return { states, published, withdrawnAt }
}
