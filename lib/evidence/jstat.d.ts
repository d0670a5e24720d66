/** The few of jstat's functions that we use; the package brings no types. */
declare module 'jstat' {
  interface Distributions {
    readonly normal: { inv(p: number, mean: number, sd: number): number }
    readonly beta: { inv(p: number, a: number, b: number): number }
    readonly chisquare: { cdf(x: number, df: number): number }
    erfc(x: number): number
  }
  const jstat: Distributions
  export default jstat
}
