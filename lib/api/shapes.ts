import { z } from 'zod'

/** A figure with the least and the most one should expect. */
export const range = z.object({ low: z.number(), typical: z.number(), high: z.number() })

/** One line of working. */
export const step = z.object({
  symbol: z.string(),
  means: z.string(),
  formula: z.string(),
  numbers: z.string(),
  result: range,
  unit: z.string(),
  source: z.string().optional(),
  /** Which of several pieces of work, from 1. */
  work: z.int().positive().optional(),
})

interface Bounds {
  readonly above?: number
  readonly min?: number
  readonly max?: number
}

function bounded({ above, min, max }: Bounds) {
  let number = z.number()
  if (above !== undefined) number = number.gt(above)
  if (min !== undefined) number = number.gte(min)
  return max === undefined ? number : number.lte(max)
}

/** An input: one number, or a range of which every figure keeps the bounds. */
export const amount = (bounds: Bounds = {}) => {
  const number = bounded(bounds)
  return z.union([
    number,
    z
      .strictObject({ low: number, typical: number, high: number })
      .refine(({ low, typical, high }) => low <= typical && typical <= high, 'out-of-order'),
  ])
}
