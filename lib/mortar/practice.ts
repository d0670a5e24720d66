import { attempt, type Outcome } from './fault.ts'
import type { LimeState } from './lime.ts'
import type { Properties } from './material.ts'
import { type PracticeId, type ReasonId, SAYINGS, type Saying, tryOut } from './practice-sayings.ts'
import type { Basis, Range } from './range.ts'

/** What masons and handbooks say in round numbers, and what the sums make of it. */
export interface PracticeComparison {
  readonly id: PracticeId
  /** The state of the slaked (or measured) lime that the comparison takes, as practice seldom says. */
  readonly state: LimeState
  readonly said: { readonly low: number; readonly high: number }
  readonly ours: Range
  /** Does our typical figure lie within what is said? */
  readonly inside: boolean
  /** Why not, where it does not. */
  readonly reason: ReasonId | null
  readonly basis: Basis
  readonly source?: string
}

/**
 * Common practice beside the sums, for an air lime and a sand. Where our typical figure falls outside
 * what is said, the comparison carries the reason, for the page on method.
 */
export const comparePractice = (lime: Properties, sand: Properties): Outcome<readonly PracticeComparison[]> =>
  attempt(() => {
    const tried = tryOut(lime, sand)
    return (Object.keys(SAYINGS) as PracticeId[]).map((id) => {
      const saying: Saying = SAYINGS[id]
      const ours = saying.ours(tried)
      const inside = saying.low <= ours.typical && ours.typical <= saying.high
      return {
        id,
        state: saying.state,
        said: { low: saying.low, high: saying.high },
        ours,
        inside,
        reason: inside ? null : saying.reason,
        basis: saying.basis,
        ...(saying.source === undefined ? {} : { source: saying.source }),
      }
    })
  })
