import type { Seen, Watched } from './history.ts'
import type { Interval } from './interval.ts'

/** Damp comes and goes, so it is states over time beside the weather, never survival. */

/** Steps of the scale: at most `dry` counts as dry, at least `damp` as damp; what is between is neither. */
export const DAMP_SCALE = { dry: 0, damp: 2, steps: 5 } as const

/** Visits are told apart by how long before them rain had fallen. This project's own classes. */
export const RAIN_CLASSES = [
  { id: 'within-2-days', upTo: 2 },
  { id: '3-to-7-days', upTo: 7 },
  { id: 'over-7-days', upTo: Number.POSITIVE_INFINITY },
] as const
export type RainClass = (typeof RAIN_CLASSES)[number]['id'] | 'not-recorded'

/** Visits in one weather: how many saw each step of damp, and how the wall had stood at the visit before. */
export interface DampRow {
  readonly rain: RainClass
  readonly season: string
  readonly visits: number
  readonly steps: readonly number[]
  /** `changes[before][now]`, from each visit to the next. */
  readonly changes: readonly (readonly number[])[]
}

export const rainClassOf = ({ daysSinceRain }: Pick<Seen, 'daysSinceRain'>): RainClass =>
  daysSinceRain === undefined
    ? 'not-recorded'
    : (RAIN_CLASSES.find(({ upTo }) => daysSinceRain <= upTo)?.id ?? 'not-recorded')

/** Counts what visits saw, by days since rain and season. */
export function tabulateDamp(works: readonly Watched[]): DampRow[] {
  const rows = new Map<string, { rain: RainClass; season: string; steps: number[]; changes: number[][] }>()
  const blank = () => new Array<number>(DAMP_SCALE.steps).fill(0)
  for (const work of works) {
    seenOf(work).forEach((seen, i, all) => {
      const [rain, season] = [rainClassOf(seen), seen.season ?? 'not-recorded']
      const key = `${rain} ${season}`
      const row = rows.get(key) ?? { rain, season, steps: blank(), changes: blank().map(blank) }
      rows.set(key, row)
      row.steps[seen.damp] = (row.steps[seen.damp] ?? 0) + 1
      const before = row.changes[all[i - 1]?.damp ?? -1]
      if (before !== undefined) before[seen.damp] = (before[seen.damp] ?? 0) + 1
    })
  }
  return [...rows.values()].map((row) => ({ ...row, visits: row.steps.reduce((sum, n) => sum + n, 0) }))
}

/**
 * How long a wall that was damp at its baseline took until a visit found it dry; null where it was not damp, or nobody came back.
 * A visit soon after rain can find a drying wall damp, so read it beside {@link tabulateDamp}.
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
