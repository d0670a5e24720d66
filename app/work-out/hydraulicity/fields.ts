import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked } from '../../_ui/workshop/asked.ts'
import { words } from '../../_words/index.ts'

/** What is known: the lime as analysed, or the clay of its stone. */
export const ASKED = ['oxides', 'stone'] as const

const NEEDED = { sio2: 15, al2o3: 3, fe2o3: 1.5, cao: 68, mgo: 1.5 } as const
const OPTIONAL = ['co2', 'so3'] as const

/** What is known, then its figures, in % by mass. */
export function fieldsOf(typed: Typed): FieldAsked[] {
  const t = words('workOut')
  const percent = (name: keyof typeof NEEDED | (typeof OPTIONAL)[number] | 'clay'): AmountAsked => ({
    kind: 'amount',
    name,
    label: t(`hydraulicity.fields.${name}`),
    unit: '%',
    limits: { min: 0, max: 100 },
  })
  const from: FieldAsked = {
    kind: 'choice',
    name: 'from',
    label: t('hydraulicity.from'),
    options: ASKED.map((value) => ({ value, label: t(`hydraulicity.asked.${value}`) })),
    first: 'oxides',
    leads: true,
  }
  const clay = { ...percent('clay'), path: 'clayInStone' }
  if (chosenIn(typed, 'from', ASKED, 'oxides') === 'stone') return [from, { ...clay, example: 12 }]
  return [
    from,
    ...Object.entries(NEEDED).map(([name, example]) => ({
      ...percent(name as keyof typeof NEEDED),
      example,
    })),
    ...OPTIONAL.map((name) => ({ ...percent(name), optional: true })),
    { ...clay, optional: true },
  ]
}
