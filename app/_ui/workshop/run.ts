import type { FieldFault } from '#lib/errors.ts'
import { convert } from '#lib/mortar/units.ts'
import { faultSentence } from '../../_http/fault-sentence.ts'
import type { Typed } from '../../_http/form.ts'
import { words } from '../../_words/index.ts'
import type { BenchData } from './brought.ts'
import type { AnyCalculation } from './calculation.ts'
import { type FieldRead, type FormRead, readForm } from './read.ts'
import type { Block, Shown } from './shown.ts'

/** A fault as the form shows it: at its field, where it has one. */
export interface FormFault {
  readonly name?: string
  readonly sentence: string
}

/** A calculation worked from what was typed: what to show, or what is to be mended. */
export interface Worked {
  readonly form: FormRead
  readonly shown: Shown | undefined
  readonly faults: readonly FormFault[]
}

/**
 * Reads the form, works it out and says what to show. Pure: the server and the browser do the same, so a
 * page without a script and one with it show the same figures.
 */
export function workOut(calculation: AnyCalculation, typed: Typed, data: BenchData): Worked {
  const form = readForm(calculation, typed, data)
  if (form.faults.length > 0) return { form, shown: undefined, faults: sentencesOf(form, form.faults) }
  const outcome = calculation.work(form.given, data)
  if (!outcome.ok) return { form, shown: undefined, faults: sentencesOf(form, outcome.faults) }
  return { form, shown: calculation.show(outcome.value, form.given, data), faults: [] }
}

/** Every fault in words that name the field, in the order of the form; one a field. */
function sentencesOf(form: FormRead, faults: readonly FieldFault[]): FormFault[] {
  const order = form.fields.map(({ field }) => field.name)
  const all = faults.map((fault) => sentenceOf(form, fault))
  const first = all.filter(
    ({ name, sentence }, place) =>
      all.findIndex((one) => (name === undefined ? one.sentence === sentence : one.name === name)) === place,
  )
  const place = ({ name }: FormFault) => (name === undefined ? order.length : order.indexOf(name))
  return first.sort((a, b) => place(a) - place(b))
}

function sentenceOf({ fields }: FormRead, fault: FieldFault): FormFault {
  const t = words('workOut')
  if (fault.field === 'units') return { name: 'in', sentence: faultSentence(fault, t('form.units')) }
  const found =
    fields.find(({ field }) => field.name === fault.field) ??
    fields.find(({ field: { path } }) => fault.field === path) ??
    fields.find(({ field: { path } }) => path !== undefined && fault.field.startsWith(`${path}.`))
  if (!found) return { sentence: t('faults.other', { field: fault.field }) }
  return { name: found.field.name, sentence: faultSentence(asked(fault, found), found.field.label) }
}

/** Their bounds count figures; they have no unit. */
const COUNTED = ['too-long', 'too-short']

/** The fault in the unit that the form asks in, with what was typed. */
function asked(fault: FieldFault, { field, askedUnit, text }: FieldRead): FieldFault {
  if (field.kind === 'choice' || field.kind === 'check') return fault
  const inAsked = (figure: string | number) =>
    typeof figure === 'number' && !COUNTED.includes(fault.code)
      ? Number(convert(figure, field.unit, askedUnit).toPrecision(6))
      : figure
  const value = field.kind === 'amount' && text !== '' ? text : fault.value
  return {
    ...fault,
    unit: COUNTED.includes(fault.code) ? '1' : askedUnit,
    ...(value !== undefined && { value: inAsked(value) }),
    ...(fault.limit !== undefined && { limit: inAsked(fault.limit) }),
  }
}

/** The figure that a status line tells, the first of the result. */
export function firstFigure(blocks: readonly Block[]) {
  for (const block of blocks) if (block.kind === 'figures' && block.figures[0]) return block.figures[0]
  return undefined
}
