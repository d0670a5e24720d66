import { HORIZONS } from '#lib/db/projection/horizon.ts'
import {
  boundLost,
  COMPETING,
  type Competing,
  type Curve,
  type CurvePoint,
  curveSteps,
  DAYS_PER_YEAR,
  type EndPoint,
  estimateTurnbull,
  type IncidencePoint,
  incidenceSteps,
  lacking,
  type Quantile,
  quantileOf,
  type Standing,
  type Steps,
  standingsAt,
} from '#lib/evidence/index.ts'
import type { FateRow, Fates, Grain, Watching } from '#lib/search/works.ts'

/** Up to so many works days are exact. */
export const FINE_WORKS = 300
export const FINE = { gridDays: 1, buckets: null, resamples: 200 } as const satisfies Draws
/** Up to so many days are widened to months, and each building is still drawn by itself. */
export const MIDDLE_WORKS = 2000
export const MIDDLE = { gridDays: 30, buckets: null, resamples: 60 } as const satisfies Draws
/** Above, the band comes from buildings dealt into buckets, and days are widened to quarters of a year. */
export const COARSE = { gridDays: 91, buckets: 64, resamples: 60 } as const satisfies Draws

interface Draws extends Grain {
  readonly resamples: number
}

/** More points than this make no finer drawing. */
const MOST_POINTS = 80

export interface EndPointFigures {
  readonly endPoint: EndPoint
  /** Works that it could happen to, by what is known of them. */
  readonly reached: number
  readonly watched: number
  readonly competing: readonly { readonly how: Competing; readonly works: number }[]
  /** What was looked at after its baseline, of the works that it could come to: the rest tell nothing of it. */
  readonly watching: Watching
  /** Works that had nothing left to worsen. */
  readonly impossible: number
  /** Last seen without it, and lost to sight since. */
  readonly lostWorks: number
  /** What is missing for a curve; null where there is one. */
  readonly lacking: ReturnType<typeof lacking>
  readonly curve: Curve | null
  /** The curve after 1, 2, 5, 10 and 20 years, as far as any work was watched. */
  readonly horizons: readonly (CurvePoint & { readonly years: number })[]
  readonly median: Quantile | null
  /** Days until nothing more is known. */
  readonly endDays: number
  readonly lost: LostBounds | null
  /** Share of all works to which each thing had come first, after so many years. */
  readonly incidence: readonly CauseShares[]
}

export interface CauseShares {
  readonly cause: EndPoint | Competing
  readonly horizons: readonly (IncidencePoint & { readonly years: number })[]
}

/** The share standing had all works lost to sight changed right after they were last seen, and had none. */
export interface LostBounds {
  readonly horizons: readonly {
    readonly years: number
    readonly allChanged: Standing
    readonly noneChanged: Standing
  }[]
}

/** How finely days and buildings are taken, by how many works there are. */
export const grainFor = (works: number): Draws =>
  works <= FINE_WORKS ? FINE : works <= MIDDLE_WORKS ? MIDDLE : COARSE

/** Everything about one end point, from what became of the works, in steps. */
export function* endPointSteps(endPoint: EndPoint, fates: Fates, draws: Draws): Steps<EndPointFigures> {
  const { watching, impossible } = fates
  const { rows } = fates.fates
  return {
    ...{ endPoint, watching, impossible },
    reached: countWorks(rows, ({ kind }) => kind === 'reached'),
    watched: countWorks(rows, ({ kind }) => kind === 'watched'),
    lostWorks: countWorks(rows, ({ lost }) => lost),
    competing: COMPETING.flatMap((how) => {
      const works = countWorks(fates.causes.rows, ({ cause }) => cause === how)
      return works === 0 || how === endPoint ? [] : [{ how, works }]
    }),
    ...(yield* estimate(endPoint, fates, draws)),
  }
}

const countWorks = <Row extends { readonly weight: number }>(
  rows: readonly Row[],
  which: (row: Row) => boolean,
): number => rows.reduce((sum, row) => sum + (which(row) ? row.weight : 0), 0)

function* estimate(endPoint: EndPoint, { fates, causes, watching }: Fates, { resamples }: Draws) {
  const { rows } = fates
  const short = rows.length === 0 ? null : lacking(watching)
  const endDays = rows.reduce((most, { from, to }) => Math.max(most, from, to ?? 0), 0)
  if (short !== null || rows.length === 0)
    return { lacking: short, curve: null, horizons: [], median: null, endDays, lost: null, incidence: [] }
  const years = HORIZONS.map((horizon) => horizon.years).filter((y) => y > 0 && y * DAYS_PER_YEAR <= endDays)
  const curve = yield* curveSteps(fates, { days: daysFor(rows, years, endDays), resamples })
  return {
    lacking: null,
    curve,
    horizons: years.flatMap((y) =>
      curve.points.filter(({ day }) => day === y * DAYS_PER_YEAR).map((point) => ({ ...point, years: y })),
    ),
    median: quantileOf(curve, 0.5),
    endDays,
    lost: yield* boundSteps(rows, years),
    incidence: yield* causeSteps(endPoint, causes, years, resamples),
  }
}

/** The days that a curve is drawn through: every year looked at, and each fall, unless there are too many. */
function daysFor(rows: readonly FateRow[], years: readonly number[], endDays: number): number[] {
  const falls = new Set(rows.flatMap(({ from, to }) => (to === null ? [] : [from, to])))
  const even = Array.from({ length: MOST_POINTS + 1 }, (_, k) => Math.round((endDays * k) / MOST_POINTS))
  const days = falls.size > MOST_POINTS ? even : [0, ...falls, endDays]
  return [...new Set([...days, ...years.map((y) => y * DAYS_PER_YEAR)])].sort((a, b) => a - b)
}

function* boundSteps(rows: readonly FateRow[], years: readonly number[]): Steps<LostBounds | null> {
  const { lost, allChanged, noneChanged } = boundLost(rows)
  if (lost === 0) return null
  const days = years.map((y) => y * DAYS_PER_YEAR)
  const all = standingsAt(estimateTurnbull(allChanged).masses, days)
  yield
  const none = standingsAt(estimateTurnbull(noneChanged).masses, days)
  yield
  return {
    horizons: years.flatMap((y, k) => {
      const [changed, stood] = [all[k], none[k]]
      return changed && stood ? [{ years: y, allChanged: changed, noneChanged: stood }] : []
    }),
  }
}

/** What came first to a work: nothing to estimate where only one thing ever came. */
function* causeSteps(
  endPoint: EndPoint,
  causes: Fates['causes'],
  years: readonly number[],
  resamples: number,
): Steps<CauseShares[]> {
  if (causes.rows.every(({ cause }) => cause === null || cause === endPoint)) return []
  const days = years.map((y) => y * DAYS_PER_YEAR)
  const curve = yield* incidenceSteps(causes, days, { resamples })
  return curve.causes.map(({ cause, points }) => ({
    cause: cause as EndPoint | Competing,
    horizons: points.flatMap((point, k) => {
      const y = years[k]
      return y === undefined ? [] : [{ ...point, years: y }]
    }),
  }))
}
