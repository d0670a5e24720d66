import type { Range } from '#lib/mortar/range.ts'
import { eachLanguage, locale, TIME_ZONE, words } from './index.ts'

/**
 * A range as it is printed: its three figures rounded to one place, the place that its width can bear
 * (about a fifth of it), or a finer one where that place would lose one of the typical value's first two
 * significant digits; never finer than three significant digits of the largest figure.
 */
export function printedRange({ low, typical, high }: Range): Range & { places: number } {
  const size = Math.max(Math.abs(low), Math.abs(typical), Math.abs(high))
  if (size === 0) return { low, typical, high, places: 0 }
  const finest = Math.floor(Math.log10(size)) - 2
  const borne = high > low ? Math.floor(Math.log10((high - low) / 5)) : finest
  const twoDigits = typical === 0 ? borne : Math.floor(Math.log10(Math.abs(typical))) - 1
  const loses = roundTo(typical, borne) !== roundTo(typical, Math.min(borne, twoDigits))
  const place = Math.max(finest, loses ? twoDigits : borne)
  return {
    low: roundTo(low, place),
    typical: roundTo(typical, place),
    high: roundTo(high, place),
    places: Math.max(0, -place),
  }
}

const roundTo = (value: number, place: number) =>
  Number((Math.round(value / 10 ** place) * 10 ** place).toPrecision(12))

/** Making a formatter costs a hundred times more than using it. */
const numberFormats = eachLanguage(() => new Map<number | undefined, Intl.NumberFormat>())

/** A number with a fixed count of decimal places; a negative one has a true minus sign. */
export function formatNumber(value: number, places?: number): string {
  const known =
    numberFormats().get(places) ??
    new Intl.NumberFormat(locale(), {
      minimumFractionDigits: places ?? 0,
      maximumFractionDigits: places ?? 3,
      useGrouping: 'min2',
      signDisplay: 'negative',
    })
  numberFormats().set(places, known)
  return known.format(value).replace('-', '\u2212')
}

const decimalSign = eachLanguage(
  (language) =>
    new Intl.NumberFormat(locale(language)).formatToParts(1.5).find(({ type }) => type === 'decimal')
      ?.value ?? '.',
)

/** A line of working, in which the sums write numbers with a point, in the way of the language. */
export const formatWorking = (text: string): string => text.replaceAll(/(?<=\d)\.(?=\d)/g, decimalSign())

/** A number as a form can take it back: without grouping, which could be read in two ways. */
export const formatTyped = (value: number): string =>
  new Intl.NumberFormat(locale(), { maximumSignificantDigits: 6, useGrouping: false }).format(value)

/** Parts of a proportion: whole numbers whole, others to at most two decimals. */
export const formatParts = (value: number): string =>
  new Intl.NumberFormat(locale(), { maximumFractionDigits: 2 }).format(value)

/** `YYYY`, `YYYY-MM` or `YYYY-MM-DD` as a date is written, as much of it as is known. */
export function formatDate(value: string | Date): string {
  const text = typeof value === 'string' ? value : value.toISOString().slice(0, 10)
  const options: Intl.DateTimeFormatOptions =
    text.length === 4
      ? { year: 'numeric' }
      : text.length === 7
        ? { month: 'long', year: 'numeric' }
        : { day: 'numeric', month: 'long', year: 'numeric' }
  const date = new Date(`${text}${'-01-01'.slice(0, 10 - text.length)}T00:00:00Z`)
  return new Intl.DateTimeFormat(locale(), { ...options, timeZone: TIME_ZONE }).format(date)
}

/** A year of our era or before it (negative), as sources and tables count them. */
export const formatYear = (year: number): string =>
  words('common')(year < 0 ? 'year.before' : 'year.plain', { year: String(Math.abs(year)) })

/** A century of our era or before it (negative): `19th century`, `siglo XIX`. */
export function formatCentury(century: number): string {
  const t = words('common')
  const plain = t('century.plain', { number: Math.abs(century) })
  return century < 0 ? t('century.before', { century: plain }) : plain
}

/** Words in a row: `a, b and c`. */
export const formatList = (items: readonly string[], type: 'conjunction' | 'disjunction' = 'conjunction') =>
  new Intl.ListFormat(locale(), { type }).format(items)

/** The order of two titles in a list. Articles do not count. */
export const compareTitles = (a: string, b: string): number =>
  withoutArticle(a).localeCompare(withoutArticle(b), locale())

const withoutArticle = (title: string) => title.replace(/^(?:A|An|The|El|La|Los|Las|Un|Una) /, '')
