import type { FieldFault } from '#lib/errors.ts'
import { convert } from '#lib/mortar/units.ts'
import { faultSentence } from '../../../_http/fault-sentence.ts'
import { materialLabel } from '../../../_ui/label.ts'
import { type Messages, words } from '../../../_words/index.ts'
import { fieldLabel } from './labels.ts'
import { type Choice, type Inputs, isChoice, type ReadField } from './read-inputs.ts'

/** A fault as the form shows it: at its field, where it has one. */
export interface FormFault {
  readonly name?: string
  readonly sentence: string
}

/** Every fault in words that name the field, in the order of the form. */
export function formFaults(inputs: Inputs, faults: readonly FieldFault[]): FormFault[] {
  const fields = [...inputs.dimensions, ...Object.values(inputs.site), ...inputs.packs, ...inputs.prices]
  const order = fields.map(({ name }) => name)
  const place = ({ name }: FormFault) => (name === undefined ? order.length : order.indexOf(name))
  return faults.map((fault) => formFault(fault, fields)).sort((a, b) => place(a) - place(b))
}

const CHOICE_LABELS = {
  use: 'form.kind',
  lime: 'fields.lime',
  sand: 'fields.sand',
  units: 'form.units',
} as const satisfies Record<Choice, string>

function formFault(fault: FieldFault, fields: readonly ReadField[]): FormFault {
  const t = words('job')
  const field = fields.find(({ path }) => fault.field === path || fault.field.startsWith(`${path}.`))
  if (field) return { name: field.name, sentence: faultSentence(asked(fault, field), fieldLabel(field)) }
  if (isChoice(fault.field))
    return { name: fault.field, sentence: faultSentence(fault, t(CHOICE_LABELS[fault.field])) }
  const [group, material = '', property = ''] = fault.field.split('.')
  if (group === 'override') return { name: 'reason', sentence: faultSentence(fault, t('fields.reason')) }
  if (group === 'limeState') return { name: 'lime', sentence: faultSentence(fault, t('fields.lime')) }
  if (group === 'materials')
    return {
      name: 'lime',
      sentence: t('faults.material', {
        material: materialLabel(material),
        property: words('terms')(`property.${property as keyof Messages['terms']['property']}`),
      }),
    }
  return { sentence: t('faults.recipe', { field: fault.field }) }
}

/** The fault in the unit that the form asks in, with what was typed. */
function asked(fault: FieldFault, { unit, askedUnit, path, read }: ReadField): FieldFault {
  const given = unit === '%' && path.startsWith('work.') ? '1' : unit
  const inAsked = (figure: string | number) =>
    typeof figure === 'number' ? Number(convert(figure, given, askedUnit).toPrecision(6)) : figure
  return {
    ...fault,
    unit: askedUnit,
    ...(fault.value !== undefined && { value: read.text === '' ? inAsked(fault.value) : read.text }),
    ...(fault.limit !== undefined && { limit: inAsked(fault.limit) }),
  }
}
