import type { z } from 'zod'
import { faultsOf } from '#lib/entry/faults.ts'
import { Refusal } from '#lib/errors.ts'

/**
 * What was given, in the form it must have.
 *
 * @throws Refusal `invalid` with a fault for every field that cannot be read
 */
export function parse<T extends z.ZodType>(schema: T, given: unknown): z.infer<T> {
  const outcome = schema.safeParse(given, { reportInput: true })
  if (outcome.success) return outcome.data
  throw new Refusal('invalid', 'Some fields cannot be read.', faultsOf(outcome.error))
}
