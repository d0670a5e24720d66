import type { FieldFault } from '#lib/errors.ts'
import { attempt } from '#lib/mortar/fault.ts'
import { inspect } from '#lib/mortar/inspect.ts'
import type { Range } from '#lib/mortar/range.ts'
import { convertRange, shownUnit } from '#lib/mortar/units.ts'
import { type AmountRead, markName, readAmount, type Typed } from '../../_http/form.ts'
import { SYSTEMS, type System } from '../systems.ts'
import type { AmountAsked, FieldAsked, ListAsked } from './asked.ts'
import type { BenchData } from './brought.ts'
import { type AnyCalculation, FRAME_NAMES, type Given } from './calculation.ts'
import { exampleText } from './example.ts'
import { readList } from './read-list.ts'

/** A field with what was read in it. */
export interface FieldRead<F extends FieldAsked = FieldAsked> {
  readonly field: F
  /** As it stands in the form. */
  readonly text: string
  /** Unit that it is asked in, in the reader's system; `1` for a choice. */
  readonly askedUnit: string
  readonly read?: AmountRead
  readonly list?: readonly (number | null)[]
  /** In the sums' unit, as typed or as usual. */
  readonly amount?: Range
  readonly fault?: FieldFault
}

/** The form as it stands: every field as read, and what is wrong with any of them. */
export interface FormRead {
  /** Nothing was sent yet: examples are typed in advance. */
  readonly fresh: boolean
  readonly system: System
  readonly label: string
  /** Every field's text, examples too. */
  readonly typed: Typed
  readonly fields: readonly FieldRead[]
  readonly faults: readonly FieldFault[]
  readonly given: Given
}

/** Reads a calculation's form from what was typed. Pure: the server and the browser read alike. */
export function readForm(calculation: AnyCalculation, sent: Typed, data: BenchData): FormRead {
  const frame: readonly string[] = FRAME_NAMES
  const fresh = Object.keys(sent).every((name) => frame.includes(name))
  const system = SYSTEMS.find((one) => one === sent.units) ?? 'metric'
  const asked = calculation.fields(sent, data)
  const typed = fresh || sent.show !== undefined ? withExamples(asked, sent, system) : sent
  const fields = asked.map((field) => readField(field, typed, system))
  const units: FieldFault[] =
    sent.units === undefined || sent.units === system
      ? []
      : [{ field: 'units', code: 'unknown', value: sent.units }]
  return {
    fresh,
    system,
    label: typed.label ?? '',
    typed,
    fields,
    faults: [...units, ...fields.flatMap(({ fault }) => fault ?? [])],
    given: givenOf(fields, system),
  }
}

/** Unit that a figure is asked in. */
export const askedUnitOf = (field: FieldAsked, system: System): string => {
  if (field.kind === 'list') return field.bench ? field.unit : shownUnit(field.unit, system)
  if (field.kind !== 'amount') return '1'
  const metric = field.asks ?? field.unit
  return field.bench ? metric : shownUnit(metric, system, field.liquid)
}

/** Fills what is blank with examples. */
export function withExamples(asked: readonly FieldAsked[], typed: Typed, system: System): Typed {
  const examples = asked.flatMap((field) => {
    const text = typed[field.name] === undefined ? exampleText(field, askedUnitOf(field, system)) : undefined
    return text === undefined ? [] : [[field.name, text] as const]
  })
  return { ...typed, ...Object.fromEntries(examples) }
}

function readField(field: FieldAsked, typed: Typed, system: System): FieldRead {
  const text = typed[field.name] ?? ''
  const askedUnit = askedUnitOf(field, system)
  if (field.kind === 'amount') return readFigure(field, typed, askedUnit)
  if (field.kind === 'list') return { field, text, askedUnit, ...readList(field, text, askedUnit) }
  if (field.kind === 'check') return { field, text, askedUnit }
  const known = text === '' || field.options.some(({ value }) => value === text)
  return {
    field,
    text,
    askedUnit,
    ...(!known && { fault: { field: field.name, code: 'unknown', value: text } }),
  }
}

function readFigure(field: AmountAsked, typed: Typed, askedUnit: string): FieldRead<AmountAsked> {
  const read = readAmount(typed, field.name)
  const { text } = read
  const plain = { field, text, askedUnit, read }
  if (read.fault) return { ...plain, fault: read.fault }
  if (!read.amount) {
    if (field.usual) return { ...plain, amount: field.usual }
    return field.optional ? plain : { ...plain, fault: { field: field.name, code: 'required' } }
  }
  if (field.single && read.amount.low < read.amount.high)
    return { ...plain, fault: { field: field.name, code: 'one-number', value: text } }
  const amount = convertRange(read.amount, askedUnit, field.unit)
  const fault = limitFault(field, amount)
  return fault ? { ...plain, fault } : { ...plain, amount }
}

/** The first bound that a figure breaks, as the form asks and prints it. */
export function limitFault(field: AmountAsked | ListAsked, amount: Range): FieldFault | undefined {
  if (!field.limits) return undefined
  const check = inspect()
  check.range(field.name, amount, { ...field.limits, unit: field.unit })
  const outcome = attempt(() => check.finish())
  return outcome.ok ? undefined : outcome.faults[0]
}

function givenOf(fields: readonly FieldRead[], system: System): Given {
  const find = (name: string) => {
    const found = fields.find(({ field }) => field.name === name)
    if (!found) throw new RangeError(`no field ${name} was declared`)
    return found
  }
  const chosen = (name: string) => {
    const { field, text } = find(name)
    return text === '' && field.kind === 'choice' ? field.first : text
  }
  return {
    system,
    has: (name) => fields.some(({ field }) => field.name === name),
    chosen,
    choice(name, list) {
      const value = chosen(name)
      const item = list.find((one) => one === value)
      if (item === undefined) throw new RangeError(`${value} is no choice of ${name}`)
      return item
    },
    checked: (name) => find(name).text !== '',
    amount: (name) => find(name).amount,
    need(name) {
      const { amount } = find(name)
      if (!amount) throw new RangeError(`${name} may be blank: ask for it with amount()`)
      return amount
    },
    typed: (name) => find(name).text !== '',
    list: (name) => find(name).list ?? [],
  }
}

/** The names that the form itself sends, with those that settle two-way figures. */
export const formNames = (fields: readonly FieldAsked[]): string[] => [
  ...fields.flatMap(({ name }) => [name, markName(name)]),
  'units',
  'label',
]
