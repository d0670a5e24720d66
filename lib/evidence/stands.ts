import type { EndPoint, Observation } from './end-points.ts'

/** How a wall stood on a day, for bars that add up to all walls. */
export const STANDINGS = [
  'both-sound',
  'unit-damaged',
  'joint-lost-unit-sound',
  'joint-lost-unit-damaged',
  'replaced-other-reason',
  'lost',
  'not-known',
] as const
export type Stands = (typeof STANDINGS)[number]

/** What {@link observe} read off one work. */
export type Observed = Readonly<Record<Exclude<EndPoint, 'joint-worse'>, Observation>>

/**
 * How one wall stood at the end of a day, as far as visits say: `both-sound` when a visit on that day or later
 * saw the joint not lost and the unit no worse than at the baseline; `unit-damaged` when the unit was seen
 * damaged by then and the joint not seen lost; what ended the work once it had; `not-known` between visits that
 * differ, and after the last one.
 */
export function standsOn(day: number, observed: Observed): Stands {
  const sound = observed['joint-lost-unit-sound']
  const damaged = observed['joint-lost-unit-damaged']
  if (hadCome(sound, day)) return 'joint-lost-unit-sound'
  if (hadCome(damaged, day)) return 'joint-lost-unit-damaged'
  const ended = endedBy(sound, day)
  if (ended !== null) return ended
  const unit = observed['unit-damaged']
  if (hadCome(unit, day)) return 'unit-damaged'
  return stillStood(unit, day) && stillStood(sound, day) ? 'both-sound' : 'not-known'
}

const hadCome = (observation: Observation, day: number): boolean =>
  observation.kind === 'reached' && observation.interval.to !== null && observation.interval.to <= day

const stillStood = (observation: Observation, day: number): boolean =>
  observation.kind !== 'impossible' && observation.interval.from >= day

function endedBy(observation: Observation, day: number): 'replaced-other-reason' | 'lost' | null {
  if (observation.kind !== 'competing') return null
  const { how, interval } = observation.competing
  if (interval.to === null || interval.to > day) return null
  return how === 'replaced-other-reason' || how === 'lost' ? how : null
}
