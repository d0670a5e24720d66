import type { Range } from '#lib/mortar/range.ts'
import { formatNumber } from '../_words/format.ts'
import { words } from '../_words/index.ts'

/** An amount of money to the hundredth, and what it may lie between. */
export function moneyText(value: Range | number): { main: string; range: string | null } {
  if (typeof value === 'number') return { main: formatNumber(value, 2), range: null }
  const [low, typical, high] = [value.low, value.typical, value.high].map((one) => formatNumber(one, 2))
  const range =
    value.low < value.high ? words('common')('quantity.range', { low: `${low}`, high: `${high}` }) : null
  return { main: `${typical}`, range }
}
