import type { Seen, Watched } from './history.ts'
import type { Interval } from './interval.ts'

/** Damp comes and goes, so it is states over time beside the weather, never survival. */

/** Steps of the scale: at most `dry` counts as dry, at least `damp` as damp; what is between is neither. */
const DAMP_SCALE = { dry: 0, damp: 2 } as const

/**
 * How long a wall that was damp at its baseline took until a visit found it dry; null where it was not damp, or nobody came back.
 * A visit soon after rain can find a drying wall damp, so read it beside the weather.
 */
export function timeToDry(work: Watched): Interval | null {
  return work.baseline.damp >= DAMP_SCALE.damp
    ? firstChange(seenOf(work), ({ damp }) => damp <= DAMP_SCALE.dry)
    : null
}

/** How long after a visit found it dry a wall was found damp again; null where none found it dry, or nobody came
 * back. */
export function timeToDampAgain(work: Watched): Interval | null {
  const seen = seenOf(work)
  const dried = seen.findIndex(({ damp }) => damp <= DAMP_SCALE.dry)
  return dried < 0 ? null : firstChange(seen.slice(dried), ({ damp }) => damp >= DAMP_SCALE.damp)
}

const seenOf = ({ baseline, visits }: Watched): readonly Seen[] => [{ ...baseline, day: 0 }, ...visits]

/** Days from the first of these visits to the first that saw the change. */
function firstChange([first, ...later]: readonly Seen[], changed: (seen: Seen) => boolean): Interval | null {
  if (first === undefined || later.length === 0) return null
  const start = first.day
  const at = later.findIndex(changed)
  if (at < 0) return { from: (later.at(-1)?.day ?? start) - start, to: null }
  return { from: (later[at - 1]?.day ?? start) - start, to: (later[at]?.day ?? start) - start }
}
