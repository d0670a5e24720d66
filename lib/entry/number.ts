/**
 * What a person's typing can mean as a number. `ambiguous` holds both readings, the locale's own first;
 * whoever asked must let the writer choose.
 */
export type NumberReading =
  | { readonly kind: 'value'; readonly value: number }
  | { readonly kind: 'ambiguous'; readonly readings: readonly [number, number] }
  | { readonly kind: 'not-a-number' }

const NOT_A_NUMBER: NumberReading = { kind: 'not-a-number' }

/** Longer than any number a form needs; keeps the patterns below cheap. */
const MAX_LENGTH = 40

const SPACES = /[\s\u00a0\u2007\u2009\u202f]+/g
/** Signs without width that come along when a figure is pasted from a page or a letter. */
const UNSEEN = /[\u00ad\u200b-\u200f\u2060\ufeff]/g
const VULGAR = /[¼½¾⅐-⅞]/g
const FRACTION = /^(?:(\d+) )?(\d+)\/(\d+)$/
const SPACED_GROUPS = /^\d{1,3}(?: \d{3})+(?=$|[.,])/
const APOSTROPHE_GROUPS = /^\d{1,3}(?:['’]\d{3})+(?=$|[.,])/

/**
 * Reads a number as people write it: decimal point or comma, thousands parted by points, commas, spaces
 * or apostrophes, and fractions such as `1 1/2` or `1½`.
 *
 * @param text as typed
 * @param locale BCP 47 tag; its decimal sign is taken at its word, its grouping sign before exactly three
 *   digits is asked about (`1,500` in English is 1500 or 1.5)
 */
export function parseNumber(text: string, locale: string): NumberReading {
  if (text.length > MAX_LENGTH) return NOT_A_NUMBER
  const plain = text
    .replace(UNSEEN, '')
    .replace(VULGAR, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(SPACES, ' ')
    .trim()
  const sign = /^[-−]/.test(plain) ? -1 : 1
  const reading = readUnsigned(plain.replace(/^[-−+] ?/, ''), decimalSign(locale))
  if (reading.kind === 'value') return { kind: 'value', value: withSign(sign, reading.value) }
  if (reading.kind === 'not-a-number') return reading
  const [own, other] = reading.readings
  return { kind: 'ambiguous', readings: [withSign(sign, own), withSign(sign, other)] }
}

function readUnsigned(text: string, decimal: '.' | ','): NumberReading {
  const fraction = FRACTION.exec(text)
  if (fraction) {
    const [, whole = '0', over = '', under = ''] = fraction
    return Number(under) === 0 ? NOT_A_NUMBER : finite(Number(whole) + Number(over) / Number(under))
  }
  const closed = text
    .replace(SPACED_GROUPS, (groups) => groups.replaceAll(' ', ''))
    .replace(APOSTROPHE_GROUPS, (groups) => groups.replace(/['’]/g, ''))
  if (!/^[\d.,]*\d[\d.,]*$/.test(closed)) return NOT_A_NUMBER

  const points = closed.split('.').length - 1
  const commas = closed.split(',').length - 1
  if (points + commas === 0) return finite(Number(closed))
  if (points > 0 && commas > 0) return readBoth(closed)
  const mark = points > 0 ? '.' : ','
  if (points + commas > 1) return readGroups(closed, mark)
  return readOneMark(closed, mark, decimal)
}

/** `1,500.5` and `1.500,5`: the mark that comes last is the decimal one, the other must part thousands. */
function readBoth(text: string): NumberReading {
  const decimal = text.lastIndexOf('.') > text.lastIndexOf(',') ? '.' : ','
  const [whole = '', part, ...rest] = text.split(decimal)
  if (part === undefined || rest.length > 0 || !/^\d+$/.test(part)) return NOT_A_NUMBER
  const grouped = readGroups(whole, decimal === '.' ? ',' : '.')
  return grouped.kind === 'value' ? finite(Number(`${grouped.value}.${part}`)) : NOT_A_NUMBER
}

/** `1,500,000`. */
function readGroups(text: string, mark: '.' | ','): NumberReading {
  const [first = '', ...rest] = text.split(mark)
  const sound = /^\d{1,3}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group))
  return sound ? finite(Number(first + rest.join(''))) : NOT_A_NUMBER
}

function readOneMark(text: string, mark: '.' | ',', decimal: '.' | ','): NumberReading {
  const asDecimal = Number(text.replace(mark, '.'))
  if (mark === decimal || !/^[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return finite(asDecimal)
  return { kind: 'ambiguous', readings: [Number(text.replace(mark, '')), asDecimal] }
}

const finite = (value: number): NumberReading =>
  Number.isFinite(value) ? { kind: 'value', value } : NOT_A_NUMBER

const withSign = (sign: number, value: number) => (value === 0 ? 0 : sign * value)

function decimalSign(locale: string): '.' | ',' {
  const parts = new Intl.NumberFormat(locale).formatToParts(1234567.5)
  return parts.some(({ type, value }) => type === 'decimal' && value === ',') ? ',' : '.'
}
