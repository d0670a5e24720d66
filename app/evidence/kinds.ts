import { HORIZONS } from '#lib/db/projection/horizon.ts'
import { RAINS, type StateSeen } from '#lib/db/projection/state-code.ts'
import { DAMP_STATES, SEASONS } from '#lib/entry/terms.ts'
import type { StateCount } from '#lib/search/works.ts'

/** What a wall may be found like, joint and unit read together; what ended a work stays what it is. */
export const STATE_KINDS = ['sound', 'worn', 'lost', 'damaged', 'both', 'failed', 'replaced', 'gone'] as const
export type StateKind = (typeof STATE_KINDS)[number]

const ENDS = { 'repointed-failed': 'failed', 'replaced-other-reason': 'replaced', lost: 'gone' } as const

export function kindOf(seen: StateSeen): StateKind {
  if ('ended' in seen) return ENDS[seen.ended]
  const isLost = seen.joint === 'lost'
  if (seen.unit !== 'sound') return isLost ? 'both' : 'damaged'
  if (isLost) return 'lost'
  return seen.joint === 'worn' || seen.joint === 'open' ? 'worn' : 'sound'
}

export interface Counted<K extends string> {
  readonly years: number
  readonly counts: Readonly<Record<K, number>>
  readonly sum: number
  /** Watched for longer, and nobody looked near that time. */
  readonly unseen: number
}

/** The states at each time as counts of kinds; times at which nobody looked are left out. */
export const countKinds = (states: readonly StateCount[]) =>
  countAt(states, STATE_KINDS, (seen) => kindOf(seen))

/** The same for damp; what had ended by then has none. */
export const countDamp = (states: readonly StateCount[]) =>
  countAt(states, DAMP_STATES, (seen) => ('ended' in seen ? null : seen.damp))

function countAt<K extends string>(
  states: readonly StateCount[],
  kinds: readonly K[],
  kindOf: (seen: StateSeen) => K | null,
): Counted<K>[] {
  return HORIZONS.flatMap(({ years }) => {
    const here = states.filter((state) => state.years === years)
    const works = (which: (kind: K | null | undefined) => boolean) =>
      here.reduce(
        (sum, { seen, works: n }) => sum + (which(seen === null ? undefined : kindOf(seen)) ? n : 0),
        0,
      )
    const counts = Object.fromEntries(kinds.map((kind) => [kind, works((one) => one === kind)]))
    const sum = works((one) => one !== undefined && one !== null)
    const unseen = works((one) => one === undefined)
    return sum === 0 ? [] : [{ years, counts: counts as Record<K, number>, sum, unseen }]
  })
}

/** Damp against the days since rain, or the season: every look at the times compared. */
export function crossDamp(states: readonly StateCount[], by: 'rain' | 'season') {
  const rows: readonly string[] = by === 'rain' ? RAINS.toSpliced(0, 1).concat('not-told') : SEASONS
  return rows.flatMap((row) => {
    const here = states.filter(({ seen }) => seen !== null && !('ended' in seen) && seen[by] === row)
    const works = (damp: string) =>
      here.reduce(
        (n, { seen, works: w }) => n + (seen !== null && 'damp' in seen && seen.damp === damp ? w : 0),
        0,
      )
    return here.length === 0
      ? []
      : [{ row, counts: DAMP_STATES.map((damp) => ({ damp, works: works(damp) })) }]
  })
}
