import type { Range } from '#lib/mortar/range.ts'
import { convertRange } from '#lib/mortar/units.ts'
import { materialLabel } from '../../../_ui/label.ts'
import { quantityText, withUnit } from '../../../_ui/quantity.tsx'
import { formatNumber } from '../../../_words/format.ts'
import { LOCALE, type Messages, words } from '../../../_words/index.ts'
import type { AmountField, SITE_FIELDS } from './fields.ts'

const job = words('job')

type Dimension = keyof Messages['steps']['work']
type SiteLabel = keyof typeof SITE_FIELDS

/** What a field is called on the form: a dimension as the working calls it. */
export function fieldLabel({ path, name }: Pick<AmountField, 'path' | 'name'>): string {
  const [group, field = ''] = path.split('.')
  if (group === 'work') return capital(words('steps')(`work.${field as Dimension}`))
  if (group === 'packsKg') return job('fields.pack', { material: materialLabel(field) })
  if (group === 'packPrices') return job('fields.price', { material: materialLabel(field) })
  return job(`fields.${name as SiteLabel}`)
}

const capital = (text: string) => text.charAt(0).toLocaleUpperCase(LOCALE) + text.slice(1)

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
