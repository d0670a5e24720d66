import { amountText, usualText } from '../../../_ui/amount-text.ts'
import { labelOf } from '../../../_ui/label.ts'
import { words } from '../../../_words/index.ts'
import { fullLabel, ofWork } from './labels.ts'
import type { Inputs, ReadField } from './read-inputs.ts'

const t = words('job')

/** Every input that the sheet was worked from, in one paragraph: on paper the form is not there. */
export const WorkedFrom = ({ inputs }: { inputs: Inputs }) => (
  <p className="job-inputs note">
    <strong>{t('sheet.inputs')}</strong> {workedFrom(inputs).join('; ')}.
  </p>
)

/** The same, each as one phrase. */
export function workedFrom(inputs: Inputs): string[] {
  const { works, limeState, sand, site } = inputs
  const measured = sand === 'measured' ? [site.moisture, site.bulking] : []
  const own = [...inputs.own.flatMap(({ fields }) => fields), ...inputs.assumed]
  const figures = [site.purity, ...measured, site.water, site.heap, ...own]
  return [
    ...works.map(({ number, kind, dimensions, loss }) => {
      const asked = [...dimensions, loss].flatMap((field) => valueText(field) ?? [])
      return ofWork(number, works.length > 1, [t(`kinds.${kind}`), ...asked].join('; '))
    }),
    ...figures.flatMap((field) => valueText(field) ?? []),
    ...(limeState
      ? [t('sheet.pair', { name: t('fields.lime'), value: labelOf('measured-states', limeState) })]
      : []),
    t('sheet.pair', { name: t('fields.sand'), value: t(`sands.${sand}`) }),
  ]
}

function valueText(field: ReadField): string | undefined {
  const { read, usual, fallback, unit, askedUnit } = field
  const taken = usual ?? fallback
  const name = fullLabel(field)
  if (read.amount) return t('sheet.pair', { name, value: amountText(read.amount, askedUnit) })
  if (!taken || taken.high === 0) return undefined
  return t('sheet.pair', { name, value: usualText(taken, unit, askedUnit) })
}
