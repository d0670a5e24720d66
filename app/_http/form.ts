import { parseNumber } from '#lib/entry/number.ts'
import type { FieldFault } from '#lib/errors.ts'
import { LOCALE } from '../_words/index.ts'

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

/** What one number field holds. */
export interface NumberRead {
  readonly text: string
  readonly value?: number
  /** Both meanings of an ambiguous number, whether or not one was chosen yet. */
  readonly readings?: readonly [number, number]
  readonly fault?: FieldFault
}

/** The field that says which meaning of an ambiguous number is the right one. */
export const choiceName = (name: string) => `${name}-as`

/**
 * Reads a number field. Nothing typed is no fault here: whoever needs the number says so.
 *
 * An ambiguous number (`1,500`) is settled by the field {@link choiceName}, and is a fault until it is.
 */
export function readNumber(typed: Typed, name: string): NumberRead {
  const text = typed[name] ?? ''
  if (text === '') return { text }
  const reading = parseNumber(text, LOCALE)
  if (reading.kind === 'value') return { text, value: reading.value }
  if (reading.kind === 'not-a-number')
    return { text, fault: { field: name, code: 'not-a-number', value: text } }
  const { readings } = reading
  const chosen = readings.find((one) => String(one) === typed[choiceName(name)])
  return chosen === undefined
    ? { text, readings, fault: { field: name, code: 'ambiguous-number', value: text } }
    : { text, readings, value: chosen }
}

/** The address of a page with these fields, in the order given. */
export function addressOf(path: string, fields: Iterable<readonly [string, string]>): string {
  const query = new URLSearchParams([...fields].map(([name, value]) => [name, value]))
  return query.size > 0 ? `${path}?${query}` : path
}
