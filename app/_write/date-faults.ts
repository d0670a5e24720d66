import type { WrittenKind } from '#lib/entry/body.ts'
import type { Work } from '#lib/entry/case.ts'
import { caseDateFaults, visitDateFaults } from '#lib/entry/date-faults.ts'
import { todayAnywhere } from '#lib/entry/dates.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { ReadForm } from './read.ts'

/**
 * The faults of a form with those of its dates, under the form's names. What the schema sees of an order of dates is
 * told by the plainer of the two.
 *
 * @param works of the case that was visited
 */
export function faultsWithDates(
  kind: WrittenKind,
  { body, faults, nameOf }: ReadForm,
  works: readonly Work[],
): readonly FieldFault[] {
  const today = todayAnywhere(new Date())
  const found =
    kind === 'case'
      ? caseDateFaults(body as object, today)
      : kind === 'visit'
        ? visitDateFaults(body as object, works, today)
        : []
  const untimely = found.map((fault) => ({ ...fault, field: nameOf(fault.field) }))
  const dated = new Set(untimely.map(({ field }) => field))
  return [...faults.filter(({ field, code }) => code !== 'before-start' || !dated.has(field)), ...untimely]
}
