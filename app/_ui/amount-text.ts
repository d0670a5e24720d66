import type { Range } from '#lib/mortar/range.ts'
import { convert, convertRange } from '#lib/mortar/units.ts'
import { formatNumber, formatTyped } from '../_words/format.ts'
import { quantityText, withUnit } from './quantity.tsx'

/** `24 m²` or `20–30 mm`, as typed and not rounded. */
export function amountText({ low, high }: Range, unit: string): string {
  const figures = low === high ? formatNumber(low) : `${formatNumber(low)}–${formatNumber(high)}`
  return withUnit(figures, unit)
}

/** What is taken where nothing is typed: a usual figure with its range, or one figure. */
export function usualText(range: Range, unit: string, askedUnit: string): string {
  const { low, typical, high } = convertRange(range, unit, askedUnit)
  const { main, range: span } = quantityText(low === high ? typical : { low, typical, high }, askedUnit)
  return span === null ? main : `${main} ${span}`
}

/** What was typed in one unit as somebody would type it in another, to four figures. */
export function retypedText({ low, high }: Range, from: string, to: string): string {
  const ends = low === high ? [low] : [low, high]
  return ends.map((value) => formatTyped(Number(convert(value, from, to).toPrecision(4)))).join('–')
}
