import jstat from 'jstat'

/** The share of a limit's work that is left outside: 95 % unless said. */
export const LEVEL = 0.95

/** Point of the standard normal distribution that a share `p` lies below. */
export const normalQuantile = (p: number): number => jstat.normal.inv(p, 0, 1)

/** How far from 0, in standard deviations, the middle `level` of a normal distribution reaches. */
export function limitOf(level: number): number {
  if (!(level > 0 && level < 1)) throw new RangeError(`level is ${level}; between 0 and 1 will do`)
  return normalQuantile((1 + level) / 2)
}

/** Two-sided p of a standard normal deviate. */
export const normalTails = (z: number): number => jstat.erfc(Math.abs(z) / Math.SQRT2)

/** Share of a chi-square distribution above `x`. */
export const chiSquareTail = (x: number, df: number): number =>
  df === 1 ? normalTails(Math.sqrt(x)) : 1 - jstat.chisquare.cdf(x, df)

/** Point of a beta distribution that a share `p` lies below. */
export const betaQuantile = (p: number, a: number, b: number): number => jstat.beta.inv(p, a, b)
