import { type NumberReading, parseNumber } from '#lib/entry/number.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { Range } from '#lib/mortar/range.ts'
import { locale } from '../_words/index.ts'
import { LANGUAGES } from '../_words/languages.ts'

/** What was typed into a form, by field name. A field left blank is not there. */
export type Typed = Readonly<Record<string, string>>

/** Longest text kept of one field. */
const MAX_TEXT = 500

/** What was typed, from the address of a GET form; of a field that comes twice the first counts. */
export function typedFrom(search: Readonly<Record<string, string | readonly string[] | undefined>>): Typed {
  const typed: Record<string, string> = {}
  for (const [name, value] of Object.entries(search)) {
    const text = (typeof value === 'string' ? value : (value?.[0] ?? '')).trim().slice(0, MAX_TEXT)
    if (text !== '') typed[name] = text
  }
  return typed
}

/** How an ambiguous figure (`1,500`) was meant: its mark parts thousands, or it is the decimal sign. */
export const MARKS = ['thousands', 'decimal'] as const
export type Mark = (typeof MARKS)[number]

/** The field that says how the mark in an ambiguous figure was meant. */
export const markName = (name: string) => `${name}-mark`

/** What one field holds: a figure, or a range such as `20–30`. */
export interface AmountRead {
  readonly text: string
  readonly amount?: Range
  /** Both meanings of an ambiguous figure, whether or not one was chosen yet. */
  readonly readings?: Readonly<Record<Mark, Range>>
  readonly fault?: FieldFault
}

const RANGE_MARK = /\s*(?:–|—|\.\.|\b(?:to|a)\b|(?<=[\d½¼¾.]\s*)-(?=\s*[\d½¼¾.,]))\s*/

/**
 * Reads a field of a figure or a range. Nothing typed is no fault here: whoever needs it says so.
 *
 * An ambiguous figure is settled by the field {@link markName}, and is a fault until it is.
 */
export function readAmount(typed: Typed, name: string): AmountRead {
  const text = typed[name] ?? ''
  if (text === '') return { text }
  const fault = (code: string) => ({ text, fault: { field: name, code, value: text } })
  const mark = MARKS.find((one) => one === typed[markName(name)])
  const ends = text.split(RANGE_MARK).map((end) => readEnd(end, mark))
  if (ends.length > 2 || ends.some(({ kind }) => kind === 'not-a-number')) return fault('not-a-number')
  const amounts = { thousands: rangeOf(ends, 'thousands'), decimal: rangeOf(ends, 'decimal') }
  if (ends.every(({ kind }) => kind === 'value'))
    return amounts.decimal ? { text, amount: amounts.decimal } : fault('out-of-order')
  const { thousands, decimal } = amounts
  if (!thousands || !decimal) return fault('not-a-number')
  const readings = { thousands, decimal }
  return mark ? { text, readings, amount: readings[mark] } : { ...fault('ambiguous-number'), readings }
}

/**
 * A figure that somebody was asked about keeps its answer in every language: a draft may be opened in another than it
 * was typed in, where its mark would be taken at its word.
 */
function readEnd(text: string, mark: Mark | undefined): NumberReading {
  const own = parseNumber(text, locale())
  if (mark === undefined || own.kind !== 'value') return own
  const asked = LANGUAGES.map((one) => parseNumber(text, one)).find(({ kind }) => kind === 'ambiguous')
  return asked ?? own
}

/** One figure, or a low and a high one with the middle between them; undefined when out of order. */
function rangeOf(ends: readonly NumberReading[], mark: Mark): Range | undefined {
  const values = ends.map((end) =>
    end.kind === 'value'
      ? end.value
      : end.kind === 'ambiguous'
        ? end.readings[mark === 'thousands' ? 0 : 1]
        : NaN,
  )
  const [low = NaN, high = low] = values
  return low <= high ? { low, typical: (low + high) / 2, high } : undefined
}
