/** Why an input was refused. The words catalogue has a sentence for each. */
export const FAULT_CODES = [
  'not-a-number',
  'negative',
  'not-positive',
  'too-small',
  'too-large',
  'out-of-order',
  'empty',
  'unknown',
  'inconsistent',
] as const
export type FaultCode = (typeof FAULT_CODES)[number]

/** One refused input: which field, what was given, and which limit it broke. */
export interface Fault {
  readonly field: string
  readonly code: FaultCode
  readonly value?: number | string
  readonly limit?: number | string
  /** The limit itself is refused too. */
  readonly exclusive?: true
  readonly unit?: string
}

/** Every calculation answers with a value or with all that is wrong with its input, never with NaN. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] }

/** Thrown inside a calculation; {@link attempt} turns it into an Outcome at the door. */
export class MortarFault extends Error {
  readonly faults: readonly Fault[]

  constructor(...faults: Fault[]) {
    super(faults.map((fault) => `${fault.field}: ${fault.code}`).join('; '))
    this.name = 'MortarFault'
    this.faults = faults
  }
}

/** Runs a calculation and answers with its Outcome. Faults other than MortarFault pass through. */
export function attempt<T>(calculate: () => T): Outcome<T> {
  try {
    return { ok: true, value: calculate() }
  } catch (error) {
    if (error instanceof MortarFault) return { ok: false, faults: error.faults }
    throw error
  }
}
