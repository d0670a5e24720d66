/**
 * When something happened to one wall, in days since its baseline visit: after `from` and not later than
 * `to`. A visit on day `to` saw it, a visit on day `from` did not.
 *
 * - `to: null`: not seen to happen by day `from` (right-censored)
 * - `from: 0`: had happened by the first visit after the baseline (left-censored)
 * - `from === to`: happened on that very day (exact)
 */
export interface Interval {
  readonly from: number
  readonly to: number | null
}

/** The same interval seen on `weight` walls, 1 unless said: the database adds equal intervals up. */
export interface Counted extends Interval {
  readonly weight?: number
}

/** An interval together with the building it was seen on: walls of one building are not independent. */
export interface Clustered extends Counted {
  readonly cluster: string | number
}

export const DAYS_PER_YEAR = 365.25

export const weightOf = ({ weight = 1 }: Counted): number => weight

/** How many walls these intervals stand for. */
export const countWalls = (intervals: readonly Counted[]): number =>
  intervals.reduce((sum, interval) => sum + weightOf(interval), 0)

/**
 * Refuses intervals that are none.
 *
 * @throws RangeError naming the place, the field and the value
 */
export function checkIntervals(intervals: readonly Counted[]): void {
  intervals.forEach(({ from, to, weight = 1 }, i) => {
    if (!(Number.isFinite(from) && from >= 0))
      throw new RangeError(`intervals[${i}].from is ${from}; days from 0 on will do`)
    if (to !== null && !(Number.isFinite(to) && to >= from))
      throw new RangeError(`intervals[${i}].to is ${to}; null or a day not before ${from} will do`)
    if (!(Number.isFinite(weight) && weight >= 0))
      throw new RangeError(`intervals[${i}].weight is ${weight}; a count from 0 on will do`)
  })
}

/**
 * Adds equal intervals up, earliest first. Each estimate on the sum is the same as on the parts.
 *
 * @param gridDays widens each interval outwards to multiples of so many days, so that many visits make few
 *   distinct intervals; what is known of a wall gets vaguer and never wrong. An exact day becomes a range.
 */
export function groupIntervals(intervals: readonly Counted[], gridDays?: number): Required<Counted>[] {
  if (gridDays !== undefined && !(gridDays > 0))
    throw new RangeError(`gridDays is ${gridDays}; a number above 0 will do`)
  const widened = gridDays === undefined ? intervals : intervals.map((each) => widen(each, gridDays))
  return indexIntervals(widened).distinct.sort((a, b) => a.from - b.from || endOf(a) - endOf(b))
}

/** The distinct intervals with their counts, and for each interval given the place of its like among them. */
export function indexIntervals(intervals: readonly Counted[]): {
  distinct: Required<Counted>[]
  places: Uint32Array
} {
  const distinct: { from: number; to: number | null; weight: number }[] = []
  const known = new Map<number, Map<number | null, number>>()
  const places = Uint32Array.from(intervals, ({ from, to, weight = 1 }) => {
    const ends = known.get(from) ?? new Map<number | null, number>()
    known.set(from, ends)
    const place = ends.get(to) ?? distinct.length
    const like = distinct[place]
    if (like === undefined) {
      ends.set(to, place)
      distinct.push({ from, to, weight })
    } else like.weight += weight
    return place
  })
  return { distinct, places }
}

/** The end of an interval on the number line; nothing seen yet ends nowhere. */
export const endOf = ({ to }: Interval): number => to ?? Number.POSITIVE_INFINITY

function widen({ from, to, weight = 1 }: Counted, gridDays: number): Counted {
  const start = from === to ? Math.ceil(from / gridDays) - 1 : Math.floor(from / gridDays)
  return {
    from: Math.max(0, start) * gridDays,
    to: to === null ? null : Math.ceil(to / gridDays) * gridDays,
    weight,
  }
}
