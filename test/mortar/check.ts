import { expect } from 'vitest'
import type { Outcome } from '#lib/mortar/fault.ts'

/** One comparison of our sums with a figure that the world outside this project gives. */
export interface OutsideCheck {
  readonly id: string
  /** Author, title or dataset, as a reader would look it up. */
  readonly source: string
  /** Page, table, section, row. */
  readonly locator: string
  /**
   * `read` in the source; `quoted` by another; `derived` from figures read there by arithmetic shown;
   * `computed` on those figures by the general-purpose library that the locator names.
   */
  readonly basis: 'read' | 'quoted' | 'derived' | 'practice' | 'computed'
  /** What goes in, in words. */
  readonly input: string
  readonly run: () => number
  readonly expected: number
  /** How far off our answer may be, in the unit of `expected`. */
  readonly tolerance: number
  readonly unit: string
  /** Why this figure, and why this tolerance. */
  readonly why: string
}

/** The value of an outcome that must be one; fails the test with its faults otherwise. */
export function value<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Error(JSON.stringify(outcome.faults))
}

/** Fails unless our answer lies within the check's tolerance of the outside figure. */
export function expectCheck(check: OutsideCheck): void {
  const found = check.run()
  expect(found, `${check.id}: ${found} ${check.unit}`).toBeGreaterThanOrEqual(
    check.expected - check.tolerance,
  )
  expect(found, `${check.id}: ${found} ${check.unit}`).toBeLessThanOrEqual(check.expected + check.tolerance)
}
