import type { DayRange, Seen, Watched } from './history.ts'
import type { Interval } from './interval.ts'

/**
 * What can happen to a wall, always as worsening since its baseline.
 *
 * - `unit-damaged`: the stone, brick or earth is worse than it was
 * - `joint-lost-unit-sound`: the joint went while the unit was no worse: it may have done its duty
 * - `joint-lost-unit-damaged`: the joint went and the unit was worse by then
 * - `joint-worse`: the joint is any step worse than it was
 */
export const END_POINTS = [
  'unit-damaged',
  'joint-lost-unit-sound',
  'joint-lost-unit-damaged',
  'joint-worse',
] as const
export type EndPoint = (typeof END_POINTS)[number]

/** What ends the watch of an end point before it happened; each makes it impossible from then on. */
export const COMPETING = [
  'joint-lost-unit-sound',
  'joint-lost-unit-damaged',
  'repointed-failed',
  'replaced-other-reason',
  'lost',
] as const
export type Competing = (typeof COMPETING)[number]

/**
 * One work and one end point.
 *
 * - `reached`: it happened in the interval
 * - `watched`: not seen to happen by day `from`
 * - `competing`: something else ended the watch, in `competing.interval`; by `from`, the last visit before,
 *   it had not happened
 * - `impossible`: at the baseline there was nothing left to worsen
 */
export type Observation =
  | { readonly kind: 'reached'; readonly interval: Interval; readonly contradicted: boolean }
  | { readonly kind: 'watched'; readonly interval: Interval; readonly contradicted: boolean }
  | {
      readonly kind: 'competing'
      readonly interval: Interval
      readonly competing: { readonly how: Competing; readonly interval: Interval }
      readonly contradicted: boolean
    }
  | { readonly kind: 'impossible' }

/** Steps of the scales that end points are read on. */
export interface Scales {
  /** The step from which on a joint counts as lost. */
  readonly jointLost: number
  /** The worst steps there are. */
  readonly jointWorst: number
  readonly unitWorst: number
}

/** As the closed lists of states have them: sound, fine cracks, worn, open, lost; sound … broken. */
export const SCALES: Scales = { jointLost: 4, jointWorst: 4, unitWorst: 4 }

/** Reads one end point off a watched work. */
export function observe(endPoint: EndPoint, watched: Watched, scales: Scales = SCALES): Observation {
  const { baseline } = watched
  switch (endPoint) {
    case 'unit-damaged':
      if (baseline.unit >= scales.unitWorst) return { kind: 'impossible' }
      return observeAlone(watched, ({ unit }) => unit > baseline.unit, false)
    case 'joint-worse':
      if (baseline.joint >= scales.jointWorst) return { kind: 'impossible' }
      return observeAlone(watched, ({ joint }) => joint > baseline.joint, true)
    default:
      if (baseline.joint >= scales.jointLost) return { kind: 'impossible' }
      return observeLoss(endPoint, watched, scales)
  }
}

/** @param failed whether a mortar that was repointed because it failed has thereby reached the end point */
function observeAlone(watched: Watched, reached: (seen: Seen) => boolean, failed: boolean): Observation {
  const found = bracket(watched.visits, reached)
  if (found.to !== null) return { kind: 'reached', ...of(found) }
  const { ended } = watched
  if (ended === undefined) return { kind: 'watched', ...of(found) }
  if (failed && ended.how === 'repointed-failed')
    return { kind: 'reached', ...of({ ...found, to: ended.last }) }
  return {
    kind: 'competing',
    ...of(found),
    competing: { how: ended.how, interval: intervalOfEnd(found, ended) },
  }
}

/** The joint's loss comes in two kinds that exclude each other: the unit as it was when the loss was seen. */
function observeLoss(endPoint: EndPoint, watched: Watched, scales: Scales): Observation {
  const lost = observeAlone(watched, ({ joint }) => joint >= scales.jointLost, true)
  if (lost.kind !== 'reached') return lost
  const day = lost.interval.to
  const damaged = watched.visits.some((v) => v.day <= (day ?? 0) && v.unit > watched.baseline.unit)
  const kind = damaged ? 'joint-lost-unit-damaged' : 'joint-lost-unit-sound'
  if (kind === endPoint) return lost
  return {
    kind: 'competing',
    interval: { from: lost.interval.from, to: null },
    competing: { how: kind, interval: lost.interval },
    contradicted: lost.contradicted,
  }
}

type Bracket = Interval & { contradicted: boolean }

/**
 * Between which visits a lasting change came: after the last visit before anybody saw it, by the first one
 * from which on everybody did. A later visit that takes it back makes the stretch longer, to the end if need
 * be, and marks it contradicted; so does a disagreement on one day.
 */
function bracket(visits: readonly Seen[], reached: (seen: Seen) => boolean): Bracket {
  const days = [...new Set(visits.map(({ day }) => day))]
  const on = (day: number) => visits.filter((visit) => visit.day === day).map(reached)
  const firstSeen = days.findIndex((day) => on(day).includes(true))
  if (firstSeen < 0) return { from: days.at(-1) ?? 0, to: null, contradicted: false }
  const lastUnseen = days.findLastIndex((day) => on(day).includes(false))
  return {
    from: days[firstSeen - 1] ?? 0,
    to: days[lastUnseen + 1] ?? null,
    contradicted: lastUnseen >= firstSeen,
  }
}

const of = ({ from, to, contradicted }: Bracket) => ({ interval: { from, to }, contradicted })

/** The day of an end is known as far as its date goes, and it came after the last visit that saw the work. */
const intervalOfEnd = ({ from }: Interval, { first, last }: DayRange): Interval => ({
  from: Math.min(Math.max(from, first - 1), last),
  to: last,
})
