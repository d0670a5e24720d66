import type { Curve, CurvePoint } from './curve.ts'

/** How much more of `a` than of `b` stood at the end of a day. */
export interface Difference {
  readonly day: number
  /** The estimate: one number, or two bounds where either curve has two. */
  readonly low: number
  readonly high: number
  readonly bandLow: number
  readonly bandHigh: number
}

/**
 * The difference a − b on each day that both curves have a point for. Its limits are made of the limits of the
 * two (Newcombe 1998; Zou and Donner 2008). Buildings that stand in both groups are counted as if they were
 * apart, which makes the limits wider rather than narrower where walls of one building fare alike.
 */
export function differenceOf(a: Curve, b: Curve): Difference[] {
  const others = new Map(b.points.map((point) => [point.day, point]))
  return a.points.flatMap((point) => {
    const other = others.get(point.day)
    return other === undefined ? [] : [subtract(point, other)]
  })
}

function subtract(a: CurvePoint, b: CurvePoint): Difference {
  const low = a.low - b.high
  const high = a.high - b.low
  return {
    day: a.day,
    low,
    high,
    bandLow: Math.max(-1, low - Math.hypot(a.low - a.bandLow, b.bandHigh - b.high)),
    bandHigh: Math.min(1, high + Math.hypot(a.bandHigh - a.high, b.low - b.bandLow)),
  }
}
