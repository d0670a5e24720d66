import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'

/**
 * The share of the finer of two sands that gives a wanted fineness modulus: (F2 − F) / (F2 − F1), held
 * between 0 and 1. Two sands of one modulus cannot be told apart by it, which is a fault.
 */
export function blendToModulus(fine: number, coarse: number, wanted: number): Outcome<number> {
  return attempt(() => {
    const check = inspect()
    for (const [field, value] of Object.entries({ fine, coarse, wanted }))
      check.number(field, value, { min: 0 })
    if (fine >= coarse) check.refuse({ field: 'fine', code: 'out-of-order', value: fine, limit: coarse })
    check.finish()
    return Math.min(1, Math.max(0, (coarse - wanted) / (coarse - fine)))
  })
}
