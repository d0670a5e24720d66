/**
 * A quantity as nature gives it: the least and most one should expect, and what is usual.
 * Always low ≤ typical ≤ high, all finite.
 */
export interface Range {
  readonly low: number
  readonly typical: number
  readonly high: number
}

/** How we know a figure. `read` was checked in the source; `memory` was not, and feeds no check. */
export const BASES = ['read', 'quoted', 'memory', 'practice', 'derived', 'measured', 'invented'] as const
export type Basis = (typeof BASES)[number]

/** A material property: a range with its unit, its basis and where it comes from. */
export interface Property extends Range {
  readonly unit: string
  readonly basis: Basis
  /** `source-id` or `source-id, locator`; absent only for `memory`, `practice` and `measured`. */
  readonly source?: string
  /** Which of the three figures the source gives, and where the others come from. */
  readonly note?: string
}

/** A range of no width. */
export const exactly = (value: number): Range => ({ low: value, typical: value, high: value })

/** Is this range finite and in order? */
export const isRange = (range: Range): boolean =>
  Number.isFinite(range.low) &&
  Number.isFinite(range.typical) &&
  Number.isFinite(range.high) &&
  range.low <= range.typical &&
  range.typical <= range.high

/** The same range in another unit, or for another amount. A negative factor turns the range around. */
export const scale = (range: Range, factor: number): Range =>
  factor >= 0
    ? { low: range.low * factor, typical: range.typical * factor, high: range.high * factor }
    : { low: range.high * factor, typical: range.typical * factor, high: range.low * factor }
