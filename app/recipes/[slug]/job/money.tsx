import type { Range } from '#lib/mortar/range.ts'
import { formatNumber } from '../../../_words/format.ts'
import { words } from '../../../_words/index.ts'

/** An amount in the reader's own currency, with its range. */
export function Money({ value: { low, typical, high }, currency }: { value: Range; currency: string }) {
  const t = words('job')
  return (
    <span className="quantity">
      {t('sheet.money', { figure: formatNumber(typical, 2), currency })}
      {low < high && (
        <span className="quantity-range">
          {' '}
          {words('common')('quantity.range', { low: formatNumber(low, 2), high: formatNumber(high, 2) })}
        </span>
      )}
    </span>
  )
}
