import { parseNumber } from '#lib/entry/number.ts'
import type { FieldFault } from '#lib/errors.ts'
import { exactly } from '#lib/mortar/range.ts'
import { convert } from '#lib/mortar/units.ts'
import { locale } from '../../_words/index.ts'
import type { ListAsked } from './asked.ts'
import { limitFault } from './read.ts'

const GAP = /^[-–—?]$/

interface ListRead {
  /** In the sums' unit; null for one that is missing. */
  readonly list?: readonly (number | null)[]
  readonly fault?: FieldFault
}

/**
 * Reads figures parted by spaces, semicolons or new lines.
 *
 * A figure that can be read in two ways is refused: a row of figures has no room to ask.
 */
export function readList(field: ListAsked, text: string, askedUnit: string): ListRead {
  const fault = (code: string, value: string | number, limit?: number): ListRead => ({
    fault: { field: field.name, code, value, ...(limit !== undefined && { limit }) },
  })
  const pieces = text.split(/[\s;]+/).filter((piece) => piece !== '')
  if (pieces.length === 0) return { fault: { field: field.name, code: 'required' } }
  if (pieces.length > field.most) return fault('too-long', pieces.length, field.most)
  const list: (number | null)[] = []
  for (const piece of pieces) {
    if (field.gaps && GAP.test(piece)) {
      list.push(null)
      continue
    }
    const reading = parseNumber(piece, locale())
    if (reading.kind === 'not-a-number') return fault('not-a-number', piece)
    if (reading.kind === 'ambiguous') return fault('ambiguous-in-list', piece)
    const value = convert(reading.value, askedUnit, field.unit)
    const broken = limitFault(field, exactly(value))
    if (broken) return { fault: broken }
    list.push(value)
  }
  return { list }
}
