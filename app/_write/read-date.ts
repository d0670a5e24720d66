import { eachLanguage, locale } from '../_words/index.ts'

const months = eachLanguage((language) =>
  Array.from({ length: 12 }, (_, month) =>
    new Intl.DateTimeFormat(locale(language), { month: 'long', timeZone: 'UTC' })
      .format(Date.UTC(2001, month))
      .toLowerCase(),
  ),
)

const two = (part: string) => part.padStart(2, '0')

/**
 * A date as people write it, as `YYYY`, `YYYY-MM` or `YYYY-MM-DD`: also `06.2019`, `6/2019`, `12.6.2019`,
 * `June 2019`, `12 June 2019` and, in Spanish, `12 de junio de 2019`. With strokes between day and month it is read where
 * one order alone gives a date (`24/3/2019`, `12/31/2019`), or both give the same.
 * What is no date comes back as it was typed, for the schema to refuse.
 */
export function readDate(text: string): string {
  const plain = text.replace(/\s+/g, ' ').trim()
  const [, day, month = '', year = ''] = /^(?:(\d{1,2})\. ?)?(\d{1,2})[./] ?(\d{4})$/.exec(plain) ?? []
  if (year !== '') return [year, two(month), ...(day === undefined ? [] : [two(day)])].join('-')
  const stroked = readStroked(plain)
  if (stroked !== undefined) return stroked
  const [, dayNamed, name = '', yearNamed = ''] =
    /^(?:(\d{1,2}) (?:de )?)?(\p{L}{3,}) (?:del? )?(\d{4})$/u.exec(plain) ?? []
  const index = months().findIndex((month) => name !== '' && month.startsWith(name.toLowerCase()))
  if (index < 0) return plain
  return [yearNamed, two(String(index + 1)), ...(dayNamed === undefined ? [] : [two(dayNamed)])].join('-')
}

/** `24/3/2019`, `12/31/2019`. Undefined where either could be the day. */
function readStroked(plain: string): string | undefined {
  const [, first = '', second = '', year] = /^(\d{1,2})\/ ?(\d{1,2})\/ ?(\d{4})$/.exec(plain) ?? []
  if (year === undefined) return undefined
  if (isMonth(first) && isMonth(second) && Number(first) !== Number(second)) return undefined
  const [day, month] = isMonth(second) ? [first, second] : [second, first]
  return [year, two(month), two(day)].join('-')
}

const isMonth = (part: string) => Number(part) >= 1 && Number(part) <= 12
