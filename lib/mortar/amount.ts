import { inspect, type Limits } from './inspect.ts'
import { exactly, type Range } from './range.ts'

/** A number that is known, or a range. */
export type Amount = number | Range

/** An amount as a range. */
export const toRange = (amount: Amount): Range => (typeof amount === 'number' ? exactly(amount) : amount)

/**
 * Named amounts as ranges, each within its limits.
 *
 * @throws MortarFault with every amount that is not
 */
export function readAmounts<N extends string>(
  amounts: Readonly<Record<N, Amount>>,
  limits: Readonly<Record<N, Limits>>,
): Record<N, Range> {
  const check = inspect()
  const ranges = {} as Record<N, Range>
  for (const name of Object.keys(limits) as N[]) {
    ranges[name] = toRange(amounts[name])
    check.range(name, ranges[name], limits[name])
  }
  check.finish()
  return ranges
}
