import type { Range } from '#lib/mortar/range.ts'
import { formatNumber, printedRange } from '../_words/format.ts'
import { words } from '../_words/index.ts'

/** So many measures to one of lime, as text: `1 : 3.1`, and what they may lie between: `(2.8–3.5)`. */
export function ratioWords(value: Range): { main: string; range: string | null } {
  const t = words('common')
  const { low, typical, high, places } = printedRange(value)
  return {
    main: t('ratio.one', { parts: formatNumber(typical, places) }),
    range:
      low < high
        ? t('quantity.range', { low: formatNumber(low, places), high: formatNumber(high, places) })
        : null,
  }
}

/** A ratio for where only text can stand: `1 : 3.1 (2.8–3.5)`. */
export function ratioText(value: Range): string {
  const { main, range } = ratioWords(value)
  return range === null ? main : `${main} ${range}`
}
