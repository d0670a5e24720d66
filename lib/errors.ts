/** The few refusals that are thrown on purpose. Anything else that is thrown is a fault of ours. */
export type RefusalCode = 'not-found' | 'forbidden' | 'conflict' | 'invalid' | 'too-many' | 'unavailable'

/** What is wrong with one field, in a form that the words catalogue turns into a sentence. */
export interface FieldFault {
  /** Path of the field as the form or the JSON body names it, for example `works.0.areaM2`. */
  field: string
  code: string
  /** What was given, when it helps to see it again. */
  value?: string | number
  /** The bound that was broken, when there is one. */
  limit?: string | number
  /** The bound itself is refused too. */
  exclusive?: true
  unit?: string
}

/** A refusal that a person may see. `detail` names no table, column or path. */
export class Refusal extends Error {
  readonly code: RefusalCode
  readonly faults: readonly FieldFault[]

  constructor(code: RefusalCode, detail: string, faults: readonly FieldFault[] = []) {
    super(detail)
    this.name = 'Refusal'
    this.code = code
    this.faults = faults
  }
}

/** A stop before or while running that an operator can act on: the message says what was found and what to do. */
export class Halt extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'Halt'
  }
}
