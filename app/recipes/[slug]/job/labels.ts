import { materialLabel } from '../../../_ui/label.ts'
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
