import type { FieldFault } from '#lib/errors.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Refused } from './calculation.ts'

/**
 * An outcome whose faults stand at fields of the page, where the sums call them by other names: a row of
 * figures is one field here and many there.
 *
 * @param places a pattern of the sums' names, and what to put for the part that it fits; the first that fits counts
 */
export const faultsAt = <T>(
  outcome: Outcome<T> | Refused,
  places: readonly (readonly [name: RegExp, field: string])[],
): Outcome<T> | Refused =>
  outcome.ok
    ? outcome
    : refuse(
        ...outcome.faults.map((fault) => {
          const [name, field] = places.find(([pattern]) => pattern.test(fault.field)) ?? []
          return name === undefined || field === undefined
            ? fault
            : { ...fault, field: fault.field.replace(name, field) }
        }),
      )

/** What a page refuses by itself. */
export const refuse = (...faults: FieldFault[]): Refused => ({ ok: false, faults })
