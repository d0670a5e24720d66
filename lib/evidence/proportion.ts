import { betaQuantile, LEVEL, limitOf } from './distributions.ts'

/** A share with the limits between which it may lie. */
export interface Limits {
  readonly low: number
  readonly high: number
}
export interface Proportion extends Limits {
  readonly share: number
}

/**
 * Wilson's score interval (1927) of `x` out of `n`; null where n is 0. Neither need be whole: weighted counts
 * will do.
 *
 * @throws RangeError unless 0 ≤ x ≤ n
 */
export function wilson(x: number, n: number, level: number = LEVEL): Proportion | null {
  checkCounts(x, n)
  if (n === 0) return null
  const z = limitOf(level)
  const share = x / n
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n)
  const half = (z / (1 + (z * z) / n)) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n))
  // Rounding must not move the limits off the ends that they reach exactly.
  return {
    share,
    low: x === 0 ? 0 : Math.max(0, middle - half),
    high: x === n ? 1 : Math.min(1, middle + half),
  }
}

/** Clopper and Pearson's interval (1934), which never covers less than `level`; else as {@link wilson}. */
export function clopperPearson(x: number, n: number, level: number = LEVEL): Proportion | null {
  checkCounts(x, n)
  limitOf(level)
  if (n === 0) return null
  const tail = (1 - level) / 2
  return {
    share: x / n,
    low: x === 0 ? 0 : betaQuantile(tail, x, n - x + 1),
    high: x === n ? 1 : betaQuantile(1 - tail, x + 1, n - x),
  }
}

/**
 * Newcombe's interval (1998, method 10) of the difference a − b between two shares, made of their Wilson
 * limits; null where either counts nothing.
 */
export function shareDifference(
  a: { readonly x: number; readonly n: number },
  b: { readonly x: number; readonly n: number },
  level: number = LEVEL,
): (Limits & { readonly difference: number }) | null {
  const one = wilson(a.x, a.n, level)
  const other = wilson(b.x, b.n, level)
  if (one === null || other === null) return null
  const difference = one.share - other.share
  return {
    difference,
    low: difference - Math.hypot(one.share - one.low, other.high - other.share),
    high: difference + Math.hypot(one.high - one.share, other.share - other.low),
  }
}

function checkCounts(x: number, n: number): void {
  if (!(Number.isFinite(n) && n >= 0)) throw new RangeError(`n is ${n}; a count from 0 on will do`)
  if (!(x >= 0 && x <= n)) throw new RangeError(`x is ${x}; a count from 0 to ${n} will do`)
}
