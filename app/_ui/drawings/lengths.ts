import type { Range } from '#lib/mortar/range.ts'
import { convert, convertRange, shownUnit } from '#lib/mortar/units.ts'
import { quantityText } from '../quantity.tsx'

export type System = 'metric' | 'us'

/** A length as a drawing names it: `25 mm`, or `25 mm (20–40)`. */
export function lengthText(mm: Range | number, system: System): string {
  const unit = shownUnit('mm', system)
  const shown =
    typeof mm === 'number' ? Number(convert(mm, 'mm', unit).toPrecision(3)) : convertRange(mm, 'mm', unit)
  const { main, range } = quantityText(shown, unit)
  return range === null ? main : `${main} ${range}`
}
