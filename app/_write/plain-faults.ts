import type { FieldFault } from '#lib/errors.ts'
import { unitSeen } from '../_http/fault-sentence.ts'
import { withUnit } from '../_ui/quantity.tsx'
import type { Look } from './look.ts'
import { readDate } from './read-date.ts'

/** A fault of the schema as somebody who typed into a form understands it. */
export function plainer(fault: FieldFault, text: string): FieldFault {
  const { code } = fault
  if (code === 'too-long' && text !== '') return { ...fault, code: 'text-too-long' }
  if (code !== 'not-a-date' && code !== 'not-a-day') return fault
  if (/^\d{4}-\d{2}-\d{2}$/.test(readDate(text))) return { ...fault, code: 'no-such-day' }
  return /^\d{1,2}\/ ?\d{1,2}\/ ?\d{4}$/.test(text) ? { ...fault, code: 'two-days' } : fault
}

/** What both ends of a range, or two rules, say of a field is said once. */
export const once = (faults: readonly FieldFault[]): FieldFault[] =>
  faults.filter(
    ({ field, code }, at) => faults.findIndex((one) => one.field === field && one.code === code) === at,
  )

/** What is wrong with a figure, in more words where it has something beside its number. */
export function figureFault(fault: FieldFault, look: Look): FieldFault {
  const text = String(fault.value ?? '')
  if (fault.code === 'out-of-order') return { ...fault, code: 'reversed' }
  if (fault.code !== 'not-a-number' || !/\d/.test(text) || !/[^\d\s.,/½¼¾–—-]/.test(text)) return fault
  const asked = 'unit' in look && look.unit !== undefined ? { unit: look.unit } : {}
  const seen = unitSeen({ ...fault, ...asked })
  if (seen.code !== fault.code) return seen
  return {
    ...fault,
    code: 'number-only',
    ...(asked.unit !== undefined && { limit: withUnit('', asked.unit).trim() }),
  }
}
