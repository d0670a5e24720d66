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

/**
 * Everything that is put on record about a revision after it was submitted. `approve` is the first of two reviewers
 * where two are needed; `dispute` says that a published entry is wrong, `settle` lets it stand and `uphold` takes it
 * down; `answer` is said by the author of a case beside somebody's visit; `strike` takes the words of an earlier
 * dispute or answer off the page; `erase` says that the body is gone for a lawful reason.
 */
export const OUTCOMES = [
  'publish',
  'return',
  'decline',
  'withdraw',
  'restore',
  'approve',
  'dispute',
  'settle',
  'uphold',
  'answer',
  'strike',
  'erase',
] as const
export type Outcome = (typeof OUTCOMES)[number]

/**
 * What each decision does to the revision it is about; null for what may be said in any state and changes none.
 * Publishing also supersedes the one published before.
 */
export const STEPS = {
  publish: { from: 'submitted', to: 'published' },
  return: { from: 'submitted', to: 'returned' },
  decline: { from: 'submitted', to: 'declined' },
  withdraw: { from: 'published', to: 'withdrawn' },
  restore: { from: 'withdrawn', to: 'published' },
  approve: { from: 'submitted', to: 'submitted' },
  dispute: { from: 'published', to: 'published' },
  settle: { from: 'published', to: 'published' },
  uphold: { from: 'published', to: 'withdrawn' },
  answer: { from: 'published', to: 'published' },
  strike: null,
  erase: null,
} as const satisfies Record<Outcome, { from: RevisionState; to: RevisionState } | null>

/** Where an entry stands: each revision's state, the number published, since when it is withdrawn, and open disputes. */
export interface EntryState {
  readonly states: ReadonlyMap<number, RevisionState>
  readonly published: number | null
  readonly withdrawnAt: Date | null
  /** Somebody disputed it and no reviewer has answered since. */
  readonly disputed: boolean
}

/**
 * Where an entry must stand after its decisions, told from them alone.
 *
 * @param numbers of the revisions there are
 * @param decisions in their order
 * @throws RangeError when a decision is about a revision that is not there, or not in the state it starts from, or
 *   answers a dispute that is not open
 */
export function replay(
  numbers: readonly number[],
  decisions: readonly { readonly revision: number; readonly outcome: Outcome; readonly at: Date }[],
): EntryState {
  const states = new Map<number, RevisionState>(numbers.map((number) => [number, 'submitted']))
  let published: number | null = null
  let withdrawnAt: Date | null = null
  let disputed = false
  for (const { revision, outcome, at } of decisions) {
    const state = states.get(revision)
    const step = STEPS[outcome]
    if (state === undefined || (step !== null && step.from !== state))
      throw new RangeError(`cannot ${outcome} revision ${revision} that is ${state ?? 'missing'}`)
    if (step === null) continue
    const { to } = step
    if (answersDispute(outcome) && !disputed)
      throw new RangeError(`cannot ${outcome} revision ${revision} that nobody disputes`)
    if (outcome === 'publish' && published !== null) states.set(published, 'superseded')
    states.set(revision, to)
    if (to === 'published') published = revision
    if (outcome === 'restore') withdrawnAt = null
    if (to === 'withdrawn') {
      published = null
      withdrawnAt = at
    }
    if (outcome === 'dispute') disputed = true
    if (answersDispute(outcome)) disputed = false
  }
  return { states, published, withdrawnAt, disputed }
}

const answersDispute = (outcome: Outcome) => outcome === 'settle' || outcome === 'uphold'
