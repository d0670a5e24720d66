/**
 * Observations over a row of places that hold mass. Each allows some unbroken runs of places; its mass is a sum
 * of differences in the cumulative mass, kept as the cumulative places with a sign.
 */
export interface Mixture {
  readonly places: number
  /** Where each observation's terms start in `at` and `sign`; one more than there are observations. */
  readonly start: Uint32Array
  /** 0 stands before the first place. */
  readonly at: Uint32Array
  readonly sign: Int8Array
  /** How many walls each observation is, above 0. */
  readonly weight: Float64Array
  /** Whether each observation is one run: two terms, the first taken away, the second added. */
  readonly isPaired: boolean
}

/** Cumulative masses, and how the log-likelihood lies there. */
export interface Point {
  readonly sum: Float64Array
  /** First derivatives in the cumulative masses, and second ones with the sign turned. */
  readonly slope: Float64Array
  readonly bend: Float64Array
  /** Minus infinity where an observation has no mass left; the derivatives are then of no use. */
  logLikelihood: number
}

export const newPoint = (sum: Float64Array): Point => ({
  sum,
  slope: new Float64Array(sum.length),
  bend: new Float64Array(sum.length),
  logLikelihood: Number.NEGATIVE_INFINITY,
})

/** Works out the log-likelihood and its derivatives at a point's cumulative masses. */
export function differentiate(point: Point, mixture: Mixture): void {
  point.slope.fill(0)
  point.bend.fill(0)
  point.logLikelihood = mixture.isPaired ? addPairs(point, mixture) : addRuns(point, mixture)
}

/** Where each observation is one run: most estimates are made of these, many thousand times over. */
function addPairs({ sum, slope, bend }: Point, { at, weight }: Mixture): number {
  let logLikelihood = 0
  for (let i = 0; i < weight.length; i++) {
    const [before, last] = [at[2 * i] as number, at[2 * i + 1] as number]
    const mass = (sum[last] as number) - (sum[before] as number)
    if (mass <= 0) return Number.NEGATIVE_INFINITY
    const count = weight[i] as number
    const pull = count / mass
    const bent = pull / mass
    logLikelihood += count * Math.log(mass)
    slope[before] = (slope[before] as number) - pull
    slope[last] = (slope[last] as number) + pull
    bend[before] = (bend[before] as number) + bent
    bend[last] = (bend[last] as number) + bent
  }
  return logLikelihood
}

function addRuns({ sum, slope, bend }: Point, { start, at, sign, weight }: Mixture): number {
  let logLikelihood = 0
  for (let i = 0; i < weight.length; i++) {
    const [first, end] = [start[i] as number, start[i + 1] as number]
    let mass = 0
    for (let e = first; e < end; e++) mass += (sign[e] as number) * (sum[at[e] as number] as number)
    if (mass <= 0) return Number.NEGATIVE_INFINITY
    const pull = (weight[i] as number) / mass
    logLikelihood += (weight[i] as number) * Math.log(mass)
    for (let e = first; e < end; e++) {
      const k = at[e] as number
      slope[k] = (slope[k] as number) + (sign[e] as number) * pull
      bend[k] = (bend[k] as number) + pull / mass
    }
  }
  return logLikelihood
}
