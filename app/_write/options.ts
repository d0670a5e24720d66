import { PROPERTY_UNITS } from '#lib/mortar/material.ts'
import type { Option } from '../_ui/field.tsx'
import { labelOf } from '../_ui/label.ts'
import { withUnit } from '../_ui/quantity.tsx'
import terms from '../_words/en/terms.json'
import write from '../_words/en/write.json'
import { words } from '../_words/index.ts'
import type { ChoiceWords, Look } from './look.ts'

const t = words('write')

/** Readings' units as keys of the catalogue. */
export const READING_UNITS: Readonly<Record<string, keyof typeof write.readingUnit>> = {
  '%': 'percent',
  relative: 'relative',
  'mL/min': 'mLmin',
  mm: 'mm',
  rebound: 'rebound',
  '1': 'one',
}

/** The choices of a closed list with their words. */
export const optionsOf = (look: Extract<Look, { as: 'select' | 'checks' | 'scale' }>): Option[] =>
  look.options.map((value) => ({ value, label: labelIn(look.words, value) }))

/** A choice of a closed list in words; its id where an older body holds one that the list has no more. */
export function labelIn(from: ChoiceWords, value: string): string {
  if ('vocabulary' in from) return labelOf(from.vocabulary, value)
  const unit = READING_UNITS[value]
  switch (from.catalogue) {
    case 'analysis':
      return isIn(terms.analysis, value) ? words('terms')(`analysis.${value}`) : value
    case 'property':
      return isIn(PROPERTY_UNITS, value) ? propertyLabel(value) : value
    case 'laboratory':
      return isIn(write.laboratory, value) ? t(`laboratory.${value}`) : value
    case 'sourceType':
      return isIn(write.sourceType, value) ? t(`sourceType.${value}`) : value
    case 'readingUnit':
      return unit === undefined ? value : t(`readingUnit.${unit}`)
  }
}

const isIn = <T extends object>(list: T, key: string): key is Extract<keyof T, string> =>
  Object.hasOwn(list, key)

function propertyLabel(id: keyof typeof PROPERTY_UNITS): string {
  const property = words('terms')(`property.${id}`)
  const unit = PROPERTY_UNITS[id]
  return unit === '1'
    ? t('propertyShare', { property })
    : t('propertyUnit', { property, unit: withUnit('', unit).trim() })
}
