import {
  DAMP_STATES,
  type DampState,
  JOINT_STATES,
  type JointState,
  SEASONS,
  type Season,
  UNIT_STATES,
  type UnitState,
} from '#lib/entry/terms.ts'
import type { EndHow } from './horizon.ts'

/** How long before a visit it had last rained. */
export const RAINS = ['not-told', 'two-days', 'week', 'longer'] as const
export type Rain = (typeof RAINS)[number]

/** What a visit found, or what had ended the work by then. */
export type StateSeen =
  | {
      readonly joint: JointState
      readonly unit: UnitState
      readonly damp: DampState
      readonly rain: Rain
      readonly season: Season
    }
  | { readonly ended: EndHow }

const ENDS: readonly EndHow[] = ['repointed-failed', 'replaced-other-reason', 'lost']
/** Codes from here on are of what ended a work, those below of what a visit found. */
export const FIRST_END =
  JOINT_STATES.length * UNIT_STATES.length * DAMP_STATES.length * RAINS.length * SEASONS.length

/** A state as one small number, so that a million walls are counted by state in one pass. */
export function packState(seen: StateSeen): number {
  if ('ended' in seen) return FIRST_END + ENDS.indexOf(seen.ended)
  const { joint, unit, damp, rain, season } = seen
  let code = JOINT_STATES.indexOf(joint)
  code = code * UNIT_STATES.length + UNIT_STATES.indexOf(unit)
  code = code * DAMP_STATES.length + DAMP_STATES.indexOf(damp)
  code = code * RAINS.length + RAINS.indexOf(rain)
  return code * SEASONS.length + SEASONS.indexOf(season)
}

/** @throws RangeError for a number that packs no state */
export function unpackState(code: number): StateSeen {
  const ended = ENDS[code - FIRST_END]
  if (ended !== undefined) return { ended }
  let rest = code
  const next = <T>(list: readonly T[]): T | undefined => {
    const item = list[rest % list.length]
    rest = Math.floor(rest / list.length)
    return item
  }
  const season = next(SEASONS)
  const rain = next(RAINS)
  const damp = next(DAMP_STATES)
  const unit = next(UNIT_STATES)
  const joint = next(JOINT_STATES)
  if (!(joint && unit && damp && rain && season) || rest > 0)
    throw new RangeError(`${code} packs no state of a wall`)
  return { joint, unit, damp, rain, season }
}

/** @param days since rain, where the visit tells */
export const rainOf = (days: number | null): Rain =>
  days === null ? 'not-told' : days <= 2 ? 'two-days' : days <= 7 ? 'week' : 'longer'
