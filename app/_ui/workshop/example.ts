import { convert } from '#lib/mortar/units.ts'
import { formatTyped } from '../../_words/format.ts'
import type { FieldAsked } from './asked.ts'

/** What stands in a field before anybody typed, in the unit that is asked; undefined where it stays blank. */
export function exampleText(field: FieldAsked, askedUnit: string): string | undefined {
  if (field.kind === 'list')
    return field.example.map((value) => inUnit(value, field.unit, askedUnit)).join('\n')
  if (field.kind !== 'amount' || field.example === undefined) return undefined
  const metric = field.asks ?? field.unit
  return [field.example]
    .flat()
    .map((value) => inUnit(value, metric, askedUnit))
    .join('–')
}

const inUnit = (value: number, from: string, to: string): string =>
  formatTyped(from === to ? value : Number(convert(value, from, to).toPrecision(3)))
