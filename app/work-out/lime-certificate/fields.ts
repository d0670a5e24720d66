import {
  CERTIFICATE_ITEMS,
  type CertificateItem,
  DECLARED_LIMITS,
  LIME_CLASSES,
  type LimeClass,
  SINGLE_RESULT_LIMITS,
} from '#lib/mortar/certificate-limits.ts'
import {
  REACTIVITY_LIMITS,
  type ReactivityClass,
  SIZE_LIMITS,
  type SizeClass,
} from '#lib/mortar/certificate-quicklime.ts'
import type { Typed } from '../../_http/form.ts'
import { chosenIn, type FieldAsked } from '../../_ui/workshop/asked.ts'
import { words } from '../../_words/index.ts'

export const REACTIVITIES = Object.keys(REACTIVITY_LIMITS) as ReactivityClass[]
export const SIZES = Object.keys(SIZE_LIMITS) as SizeClass[]

/** Results that a certificate might print, to begin with: not those of any lime. */
const EXAMPLES: Partial<Record<CertificateItem, number>> = {
  caoMgo: 92,
  mgo: 1.5,
  co2: 3.5,
  so3: 0.4,
  availableLime: 82,
  strength28d: 5,
}

/** The items that a class has limits for, with the fields that ask for them. */
export function itemsAsked(lime: LimeClass, reactivity: ReactivityClass | '', size: SizeClass | '') {
  const limited = {
    ...SINGLE_RESULT_LIMITS[lime],
    ...DECLARED_LIMITS[lime],
    ...(reactivity !== '' && { reactivity: true }),
    ...(size !== '' && SIZE_LIMITS[size]),
  }
  return (Object.keys(CERTIFICATE_ITEMS) as CertificateItem[])
    .filter((item) => Object.hasOwn(limited, item))
    .map((item) => ({ item, name: nameOf(item) }))
}

/** `caoMgo` → `cao-mgo`. */
const nameOf = (item: CertificateItem) => item.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** The class, what a quicklime states besides, and the results that the class has limits for. */
export function fieldsOf(typed: Typed): FieldAsked[] {
  const t = words('workOut')
  const lime = chosenIn<LimeClass>(typed, 'class', LIME_CLASSES, 'CL 90')
  const listed = REACTIVITIES.filter((one) =>
    (REACTIVITY_LIMITS[one].classes as readonly string[]).includes(lime),
  )
  const reactivity = chosenIn<ReactivityClass | ''>(typed, 'reactivity-class', listed, '')
  const quicklime = listed.length > 0
  const size = quicklime ? chosenIn<SizeClass | ''>(typed, 'size-class', SIZES, '') : ''
  const choice = (
    name: 'class' | 'reactivity-class' | 'size-class',
    values: readonly string[],
    blank: boolean,
  ) =>
    ({
      kind: 'choice',
      name,
      label: t(`limeCertificate.fields.${name}`),
      ...(blank && { hint: t('limeCertificate.quicklimeHint') }),
      options: [
        ...(blank ? [{ value: '', label: t('limeCertificate.notStated') }] : []),
        ...values.map((value) => ({ value, label: value })),
      ],
      first: blank ? '' : 'CL 90',
      leads: true,
    }) satisfies FieldAsked
  return [
    choice('class', LIME_CLASSES, false),
    ...(quicklime ? [choice('reactivity-class', listed, true), choice('size-class', SIZES, true)] : []),
    ...itemsAsked(lime, reactivity, size).map(({ item, name }): FieldAsked => {
      const example = EXAMPLES[item]
      return {
        kind: 'amount',
        name,
        path: `results.${item}`,
        label: t(`limeCertificate.items.${item}`),
        group: t('limeCertificate.group'),
        unit: CERTIFICATE_ITEMS[item],
        bench: true,
        single: true,
        optional: true,
        limits: CERTIFICATE_ITEMS[item] === '%' ? { min: 0, max: 100 } : { min: 0 },
        ...(example !== undefined && { example }),
      }
    }),
  ]
}
