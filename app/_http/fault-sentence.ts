import type { FieldFault } from '#lib/errors.ts'
import { withUnit } from '../_ui/quantity.tsx'
import { isUnit } from '../_ui/units.ts'
import { formatNumber } from '../_words/format.ts'
import { type Messages, words } from '../_words/index.ts'

type FaultKey = keyof Messages['faults']['field']

const isKnown = (code: string): code is FaultKey => words('faults').has(`field.${code as FaultKey}`)

/** Codes that have other words where it is known what would do. */
const WITH_LIMIT: Readonly<Record<string, string>> = {
  unknown: 'unknown-near',
  'before-start': 'before-start-of',
  'number-only': 'number-in',
  'with-unit': 'with-unit-in',
}

/** Codes that have other words where the limit itself would not do. */
const EXCLUSIVE: Readonly<Record<string, string>> = {
  'too-small': 'not-above',
  'too-large': 'not-below',
}

/**
 * One fault as a sentence that names the field, the value given and what would do.
 *
 * @param label what the reader knows the field by: its label on a form, its path in JSON
 */
export function faultSentence(fault: FieldFault, label: string): string {
  const { code, value, limit, exclusive, unit } = unitSeen(fault)
  const t = words('faults')
  const key = limit === undefined ? code : ((exclusive ? EXCLUSIVE : WITH_LIMIT)[code] ?? code)
  return t(`field.${isKnown(key) ? key : 'other'}`, {
    field: label,
    value: print(value, unit),
    limit: print(limit, unit),
  })
}

/** A figure with its unit typed behind it: `24 m2`, `20–30 mm`. */
const WITH_UNIT = /^[-−]?\d[\d\s.,/½¼¾–—-]*(?:\p{L}+|m[23²³])$/u

/** What is no number because of the unit behind it says so, and which unit is asked for where that is known. */
export function unitSeen(fault: FieldFault): FieldFault {
  if (fault.code !== 'not-a-number' || !WITH_UNIT.test(String(fault.value ?? '').trim())) return fault
  const unit = isUnit(fault.unit ?? '') ? withUnit('', fault.unit ?? '').trim() : ''
  return { ...fault, code: 'with-unit', ...(unit !== '' && { limit: unit }) }
}

function print(value: string | number | undefined, unit: string | undefined): string {
  if (typeof value !== 'number') return shorten(value ?? '')
  const figure = formatNumber(value)
  return unit !== undefined && isUnit(unit) ? withUnit(figure, unit) : figure
}

/** A pasted page is not repeated whole. */
const shorten = (text: string) => (text.length > 60 ? `${text.slice(0, 59)}…` : text)
