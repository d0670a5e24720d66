import { convert } from '#lib/mortar/units.ts'
import type { Typed } from '../../_http/form.ts'
import { markName } from '../../_http/form.ts'
import { formatTyped } from '../../_words/format.ts'
import { retypedText } from '../amount-text.ts'
import type { System } from '../systems.ts'
import type { BenchData } from './brought.ts'
import type { AnyCalculation } from './calculation.ts'
import { askedUnitOf, readForm } from './read.ts'

/**
 * What was typed, in the units of another system: figures are converted, never read as if they had been
 * typed in the other unit. Undefined while a figure that would change can't be read: then nothing changes.
 */
export function switchUnits(
  calculation: AnyCalculation,
  typed: Typed,
  data: BenchData,
  to: System,
): Typed | undefined {
  const read = readForm(calculation, typed, data)
  const switched: Record<string, string> = { ...read.typed, units: to }
  delete switched.in
  for (const { field, text, askedUnit, read: figure, list, fault } of read.fields) {
    const unit = askedUnitOf(field, to)
    if (unit === askedUnit || text === '') continue
    if (list && field.kind === 'list')
      switched[field.name] = list
        .map((value) => (value === null ? '–' : rounded(convert(value, field.unit, unit))))
        .join('\n')
    else if (figure?.amount) switched[field.name] = retypedText(figure.amount, askedUnit, unit)
    else if (fault) return undefined
    delete switched[markName(field.name)]
  }
  return switched
}

const rounded = (value: number) => formatTyped(Number(value.toPrecision(4)))
