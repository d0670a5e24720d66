import type { Range } from '#lib/mortar/range.ts'
import { formatNumber, printedRange } from '../_words/format.ts'
import { words } from '../_words/index.ts'

/** So many measures to one of lime: `1 : 3.1 (2.8–3.5)`. */
export function Ratio({ value }: { value: Range }) {
  const t = words('common')
  const { low, typical, high, places } = printedRange(value)
  return (
    <span className="quantity">
      <span className="quantity-main">{t('ratio.one', { parts: formatNumber(typical, places) })}</span>
      {low < high && (
        <span className="quantity-range">
          {' '}
          {t('quantity.range', { low: formatNumber(low, places), high: formatNumber(high, places) })}
        </span>
      )}
    </span>
  )
}
