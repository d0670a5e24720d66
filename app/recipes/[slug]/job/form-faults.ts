import type { FieldFault } from '#lib/errors.ts'
import { MOST_WORKS } from '#lib/mortar/job-works.ts'
import { convert } from '#lib/mortar/units.ts'
import { faultSentence } from '../../../_http/fault-sentence.ts'
import { materialLabel } from '../../../_ui/label.ts'
import { words } from '../../../_words/index.ts'
import { type Choice, choiceOf } from './choices.ts'
import { fieldOfWork } from './fields.ts'
import { fullLabel, ofWork, propertyLabel } from './labels.ts'
import { allFields, type Inputs, type ReadField } from './read-inputs.ts'

/** A fault as the form shows it: at its field, where it has one. */
export interface FormFault {
  readonly name?: string
  readonly sentence: string
}

/** Every fault in words that name the field, in the order of the form. */
export function formFaults(inputs: Inputs, faults: readonly FieldFault[]): FormFault[] {
  const fields = allFields(inputs)
  const names = (of: readonly ReadField[]) => of.map(({ name }) => name)
  const order = [
    ...inputs.works.flatMap((work) => [
      fieldOfWork('use', work.number),
      ...names(work.dimensions),
      work.loss.name,
    ]),
    ...['lime', 'sand'],
    ...names(Object.values(inputs.site)),
    ...names(inputs.packs),
    'in',
    ...names(inputs.prices),
    ...names(inputs.own.flatMap(({ fields }) => fields)),
    ...names(inputs.assumed),
    'reason',
  ]
  const place = ({ name }: FormFault) => (name === undefined ? order.length : order.indexOf(name))
  const several = inputs.works.length > 1
  return faults.map((fault) => formFault(fault, fields, several)).sort((a, b) => place(a) - place(b))
}

const t = words('job')

const CHOICE_LABELS = {
  use: 'form.kind',
  lime: 'fields.lime',
  sand: 'fields.sand',
  units: 'form.units',
  in: 'form.units',
} as const satisfies Record<Choice, string>

function formFault(fault: FieldFault, fields: readonly ReadField[], several: boolean): FormFault {
  const field = fields.find(({ path }) => fault.field === path || fault.field.startsWith(`${path}.`))
  const own = fields.find(({ path }) => path === fault.field.replace(/^materials\./, 'materialFigures.'))
  const work = workOf(fault.field)
  const sentence = (given: FieldFault, label: string) =>
    faultSentence(given, work === undefined ? label : ofWork(work, several, label))
  if (field) return { name: field.name, sentence: sentence(asked(fault, field), fullLabel(field)) }
  // The sums find fault with one's own figure by the name of the material's.
  if (own && own.read.text !== '')
    return { name: own.name, sentence: faultSentence(asked(fault, own), fullLabel(own)) }
  const choice = choiceOf(fault.field)
  if (choice)
    return {
      name: choice === 'units' ? 'in' : fault.field,
      sentence: sentence(fault, t(CHOICE_LABELS[choice])),
    }
  if (fault.field === 'furtherWorks') return { sentence: t('faults.works', { most: MOST_WORKS }) }
  const [group, material = '', property = ''] = fault.field.split('.')
  if (group === 'override') return { name: 'reason', sentence: faultSentence(fault, t('fields.reason')) }
  if (group === 'limeState') return { name: 'lime', sentence: faultSentence(fault, t('fields.lime')) }
  if (group === 'materials')
    return {
      name: own?.name ?? 'lime',
      sentence: t('faults.material', {
        material: materialLabel(material),
        property: propertyLabel(property),
      }),
    }
  return { sentence: t('faults.recipe', { field: fault.field }) }
}

/** The number of the work that a fault is of, by the names of the request and of the form. */
function workOf(field: string): number | undefined {
  const [, further, choice] = /^(?:furtherWorks\.(\d+)\.|use-(\d+)$)/.exec(field) ?? []
  if (further !== undefined) return Number(further) + 2
  if (choice !== undefined) return Number(choice)
  return field === 'use' || field === 'lossPercent' || field.startsWith('work.') ? 1 : undefined
}

/** The fault in the unit that the form asks in, with what was typed. */
function asked(fault: FieldFault, { unit, sumsUnit: given = unit, askedUnit, read }: ReadField): FieldFault {
  const inAsked = (figure: string | number) =>
    typeof figure === 'number' ? Number(convert(figure, given, askedUnit).toPrecision(6)) : figure
  return {
    ...fault,
    unit: askedUnit,
    ...(fault.value !== undefined && { value: read.text === '' ? inAsked(fault.value) : read.text }),
    ...(fault.limit !== undefined && { limit: inAsked(fault.limit) }),
  }
}
