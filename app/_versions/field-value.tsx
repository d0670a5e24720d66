import type { ReactNode } from 'react'
import type { WrittenKind } from '#lib/entry/body.ts'
import { isList, isObject, isRange, type Json, type Path } from '#lib/entry/json.ts'
import { bodyTree } from '#lib/entry/tree.ts'
import { PROPERTY_UNITS } from '#lib/mortar/material.ts'
import { labelOf } from '../_ui/label.ts'
import { Photo } from '../_ui/photo.tsx'
import { withUnit } from '../_ui/quantity.tsx'
import { isUnit } from '../_ui/units.ts'
import { InLanguage, Written } from '../_ui/written.tsx'
import { formatCentury, formatDate, formatList, formatNumber, formatParts } from '../_words/format.ts'
import { words } from '../_words/index.ts'
import { lookOf } from '../_write/look.ts'
import { labelIn } from '../_write/options.ts'
import { fieldLabel, formName } from './field-name.ts'
import { isUnread, sheetValue } from './sheet-value.tsx'
import type { Shown } from './shown.ts'

interface Valued {
  readonly kind: WrittenKind
  readonly path: Path
  readonly value: Json
  readonly shown: Shown
}

/** A field's value as people write it: labels for terms, numbers with their unit, items one a line, the picture itself. */
export function FieldValue({ kind, path, value, shown }: Valued): ReactNode {
  const sheet = sheetValue(path, value)
  if (sheet !== undefined) return sheet
  if (isList(value) && value.some(isObject))
    return (
      <ul className="plain-list">
        {value.map((item) => (
          <li key={JSON.stringify(item)}>{itemText(kind, [...path, '[]'], item, shown)}</li>
        ))}
      </ul>
    )
  const said = valueText(kind, path, value, shown)
  // Only a text is asked how its form asks it: an object, or a list without items, is no field of a form.
  if (typeof value !== 'string') return said
  const look = lookOf(bodyTree(kind), formName(path))
  if (look.as === 'picture')
    return <Photo photo={{ sha256: value, alt: '' }} facts={shown.pictures.get(value)} />
  const named = shown.nameOf(path, value)
  if (named !== undefined) return <InLanguage {...named}>{named.words}</InLanguage>
  return OURS.has(look.as) ? said : <Written>{said}</Written>
}

/** Looks whose values we put into words; any other text stands as it was written. */
const OURS: ReadonlySet<string> = new Set(['day', 'date', 'country', 'select', 'checks', 'scale'])

/** A value in one line of text. */
export function valueText(kind: WrittenKind, path: Path, value: Json, shown: Shown): string {
  const t = words('review')
  if (isList(value))
    return value.length === 0
      ? t('value.none')
      : formatList(
          value.map((one) =>
            isObject(one) ? itemText(kind, [...path, '[]'], one, shown) : oneText(kind, path, one, shown),
          ),
        )
  if (isObject(value) && !isRange(value))
    return Object.keys(value).length === 0 ? t('value.none') : itemText(kind, path, value, shown)
  return oneText(kind, path, value, shown)
}

const itemText = (kind: WrittenKind, path: Path, item: Json, shown: Shown): string =>
  isObject(item)
    ? Object.entries(item)
        .filter(([key]) => !isUnread([...path, key]))
        .map(([key, value]) =>
          words('review')('value.part', {
            name: fieldLabel([...path, key]),
            value: valueText(kind, [...path, key], value, shown),
          }),
        )
        .join('; ')
    : oneText(kind, path, item, shown)

function oneText(kind: WrittenKind, path: Path, value: Json, shown: Shown): string {
  const t = words('review')
  if (typeof value === 'boolean') return t(value ? 'value.yes' : 'value.no')
  if (isRange(value)) return rangeText(value as unknown as Spread)
  const look = lookOf(bodyTree(kind), formName(path))
  if (typeof value === 'number') return figureText(path, value, look.as === 'figure' ? look.unit : undefined)
  const text = String(value)
  const named = shown.nameOf(path, text)
  if (named !== undefined) return named.say?.(named.words) ?? named.words
  switch (look.as) {
    case 'day':
    case 'date':
      return formatDate(text)
    case 'country':
      return labelOf('countries', text)
    case 'select':
    case 'checks':
    case 'scale':
      return labelIn(look.words, text)
    default:
      return text
  }
}

interface Spread {
  readonly low: number
  readonly typical?: number
  readonly high: number
}

function rangeText({ low, typical, high }: Spread): string {
  const t = words('common')
  if (low === high) return formatParts(low)
  const span = t('parts.span', { low: formatParts(low), high: formatParts(high) })
  return typical === undefined ? span : t('parts.usually', { span, typical: formatParts(typical) })
}

function figureText(path: Path, value: number, unit: string | undefined): string {
  const name = path.at(-1)
  if (name === 'century') return formatCentury(value)
  // A year is no quantity.
  if (name === 'year' || name === 'from' || name === 'to') return String(value)
  const property = path[0] === 'properties' ? path[1]?.slice(1, -1) : undefined
  const known = property === undefined ? unit : Reflect.get(PROPERTY_UNITS, property)
  return isUnit(String(known)) ? withUnit(formatNumber(value), String(known)) : formatNumber(value)
}
