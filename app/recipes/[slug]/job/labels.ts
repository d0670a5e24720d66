import type { Assumption } from '#lib/mortar/assumptions.ts'
import { inSentence, materialLabel } from '../../../_ui/label.ts'
import { locale, type Messages, words } from '../../../_words/index.ts'
import type { AmountField, SITE_FIELDS } from './fields.ts'

const job = words('job')

type Dimension = keyof Messages['steps']['work']
type SiteLabel = keyof typeof SITE_FIELDS

/** What a field is called on the form: a dimension as the working calls it. */
export function fieldLabel({ path, name }: Pick<AmountField, 'path' | 'name'>): string {
  const [group, field = ''] = ofFurther(path) ? path.split('.').slice(2) : path.split('.')
  if (group === 'work') return capital(words('steps')(`work.${field as Dimension}`))
  if (group === 'materialFigures') return capital(propertyLabel(path.split('.')[2] ?? ''))
  if (group === 'assumed') return words('pages')(`method.assumedOf.${field as Assumption}`)
  if (group === 'packsKg') return job('fields.pack', { material: materialLabel(field) })
  if (group === 'packPrices') return job('fields.price', { material: materialLabel(field) })
  if (group === 'lossPercent') return job('fields.loss')
  return job(`fields.${name as SiteLabel}`)
}

/** The same where it does not stand beneath its material's name. */
export function fullLabel(field: Pick<AmountField, 'path' | 'name'>): string {
  const [group, material = ''] = field.path.split('.')
  const name = fieldLabel(field)
  return group === 'materialFigures'
    ? job('sheet.pair', { name: materialLabel(material), value: inSentence(name) })
    : name
}

const ofFurther = (path: string) => path.startsWith('furtherWorks.')

/** What a property of a material is called, inside a sentence. */
export const propertyLabel = (property: string) =>
  words('terms')(`property.${property as keyof Messages['terms']['property']}`)

/** Which work something belongs to, in front of what it is called; nothing where there is one alone. */
export const ofWork = (work: number, several: boolean, name: string): string =>
  several ? job('works.of', { number: String(work), name }) : name

const capital = (text: string) => text.charAt(0).toLocaleUpperCase(locale()) + text.slice(1)
