import { type Fault, MortarFault } from './fault.ts'
import type { Range } from './range.ts'

/** What a number may be. `above` is a bound that it must not touch; `min` and `max` are allowed. */
export interface Limits {
  readonly above?: number
  readonly min?: number
  readonly max?: number
  readonly unit?: string
}

/** Collects all that is wrong with an input, so that a person can mend it in one go. */
export interface Inspection {
  /** Notes a fault that no limit expresses. */
  refuse(fault: Fault): void
  /** Notes a value that is not a finite number within its limits. */
  number(field: string, value: number, limits?: Limits): void
  /** Notes a range with an end outside the limits, or with its three numbers out of order. */
  range(field: string, range: Range, limits?: Limits): void
  /** @throws MortarFault with every fault noted, if there is one */
  finish(): void
}

/** Starts an inspection with nothing noted. */
export function inspect(): Inspection {
  const faults: Fault[] = []
  const number = (field: string, value: number, limits: Limits = {}) => {
    const fault = judge(field, value, limits)
    if (fault !== undefined) faults.push(fault)
    return fault === undefined
  }
  return {
    refuse: (fault) => void faults.push(fault),
    number,
    range(field, range, limits) {
      const sound = [range.low, range.typical, range.high].every((value) => number(field, value, limits))
      if (sound && !(range.low <= range.typical && range.typical <= range.high))
        faults.push({ field, code: 'out-of-order' })
    },
    finish() {
      if (faults.length > 0) throw new MortarFault(...faults)
    },
  }
}

function judge(field: string, value: number, limits: Limits): Fault | undefined {
  const unit = limits.unit === undefined ? {} : { unit: limits.unit }
  if (!Number.isFinite(value)) return { field, code: 'not-a-number', ...unit }
  if (limits.above !== undefined && value <= limits.above)
    return limits.above === 0
      ? { field, code: 'not-positive', value, ...unit }
      : { field, code: 'too-small', value, limit: limits.above, exclusive: true, ...unit }
  if (limits.min !== undefined && value < limits.min)
    return limits.min === 0
      ? { field, code: 'negative', value, limit: 0, ...unit }
      : { field, code: 'too-small', value, limit: limits.min, ...unit }
  if (limits.max !== undefined && value > limits.max)
    return { field, code: 'too-large', value, limit: limits.max, ...unit }
  return undefined
}
