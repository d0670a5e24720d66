import { type Band, bandOf, worthOfWall } from './band.ts'
import { LEVEL, limitOf } from './distributions.ts'
import { type Caused, fitIncidence, type Incidence, incidenceAt, prepareCauses } from './incidence.ts'
import { type Clustered, countWalls, endOf, weightOf } from './interval.ts'
import { type Filed, fileClusters, finish, type ResampleOptions, resample, type Steps } from './resample.ts'
import { splitOf } from './split.ts'

export interface IncidencePoint extends Band {
  readonly day: number
  /** Share of the walls that the cause had come to: one number, or two bounds inside its stretches. */
  readonly low: number
  readonly high: number
}

export interface IncidenceCurve {
  readonly incidence: Incidence
  readonly clusters: number
  readonly causes: readonly { readonly cause: string; readonly points: readonly IncidencePoint[] }[]
}

/**
 * Cumulative incidence of competing events with a band for each cause, made as that of `estimateCurve`. How far draws
 * spread is taken from an estimate that is near the greatest likelihood and some twenty times as quick: see `splitOf`.
 *
 * @param rows days since the baseline, with the building and what came; equal ones may come once, counted
 * @param days to look at
 * @throws RangeError as for `estimateIncidence`
 */
export const estimateIncidenceCurve = (
  rows: readonly (Caused & Clustered)[],
  days: readonly number[],
  options: ResampleOptions = {},
): IncidenceCurve => finish(incidenceSteps(fileCauses(rows), days, options))

/** The same of rows that are filed already, in steps. */
export function* incidenceSteps(
  { rows: counted, clusters }: Filed<Caused>,
  days: readonly number[],
  options: ResampleOptions = {},
): Steps<IncidenceCurve> {
  const { level = LEVEL } = options
  limitOf(level)
  const walls = countWalls(counted)
  if (walls <= 0) throw new RangeError('rows count no wall; at least one will do')
  const prepared = prepareCauses(counted)
  const own = Float64Array.from(counted, weightOf)
  const split = splitOf(prepared, own)
  const incidence = fitIncidence(prepared, own, {}, split.start)
  yield
  const middle = split.sharesAt(own, days)
  const draws = yield* resample(clusters, counted.length, (weight) => split.sharesAt(weight, days), options)
  const worth = worthOfWall(clusters.count, walls)
  const known = days.map(
    (day) => countWalls(counted.filter((row) => row.from >= day || endOf(row) <= day)) * worth,
  )
  const causes = incidence.causes.map(({ cause, masses }, c) => ({
    cause,
    points: days.map((day, d) => {
      const share = incidenceAt(masses, day)
      const place = 2 * (c * days.length + d)
      const drawn = {
        low: about(share.low, draws[place], middle[place]),
        high: about(share.high, draws[place + 1], middle[place + 1]),
      }
      return { day, ...share, ...bandOf(share, drawn, known[d] as number, level) }
    }),
  }))
  return { incidence, clusters: clusters.count, causes }
}

/** The draws of a share, moved so that they lie about its estimate as they lie about their own middle. */
const about = (share: number, drawn: Float64Array = new Float64Array(1), middle = 0): Float64Array =>
  drawn.map((each) => Math.min(1, Math.max(0, share + each - middle)))

/** Equal rows of all clusters once, with their count, filed under their clusters. */
function fileCauses(given: readonly (Caused & Clustered)[]): Filed<Caused> {
  const rows = given.filter((row) => weightOf(row) > 0)
  const counted: (Caused & { weight: number })[] = []
  const known = new Map<string, number>()
  const places = Uint32Array.from(rows, ({ cause, from, to, weight = 1 }) => {
    const key = `${cause} ${from} ${to}`
    const place = known.get(key) ?? counted.length
    const like = counted[place]
    if (like === undefined) {
      known.set(key, place)
      counted.push({ cause, from, to, weight })
    } else counted[place] = { ...like, weight: like.weight + weight }
    return place
  })
  return { rows: counted, clusters: fileClusters(rows, places) }
}
