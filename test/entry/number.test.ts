import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseNumber } from '#lib/entry/number.ts'

const value = (n: number) => ({ kind: 'value', value: n })
const ambiguous = (own: number, other: number) => ({ kind: 'ambiguous', readings: [own, other] })
const refused = { kind: 'not-a-number' }

describe('parseNumber(text, locale)', () => {
  it.each([
    ['24', 24],
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['.5', 0.5],
    [',5', 0.5],
    ['12.', 12],
    ['  24  ', 24],
    ['1.500', 1.5],
    ['0,150', 0.15],
    ['1500,5', 1500.5],
    ['1500,500', 1500.5],
    ['1,500.25', 1500.25],
    ['1.500,25', 1500.25],
    ['1,500,000', 1500000],
    ['1.500.000', 1500000],
    ['1 500', 1500],
    ['1\u2009500', 1500],
    ['1\u202f500,5', 1500.5],
    ["1'500", 1500],
    ['1/2', 0.5],
    ['1 1/2', 1.5],
    ['½', 0.5],
    ['1½', 1.5],
    ['1 ½', 1.5],
    ['2⅜', 2.375],
    ['1⁄4', 0.25],
    ['-3', -3],
    ['−3,5', -3.5],
    ['+3', 3],
    ['-0', 0],
  ])('reads %j in English as %d', (text, n) => {
    expect(parseNumber(text, 'en-GB')).toEqual(value(n))
  })

  it.each([
    ['1,500', 'en-GB', 1500, 1.5],
    ['-12,345', 'en-GB', -12345, -12.345],
    ['999,999', 'en-GB', 999999, 999.999],
    ['1.500', 'de', 1500, 1.5],
    ['1.500', 'pt-PT', 1500, 1.5],
  ])('asks which of two is meant by %j in %s', (text, locale, own, other) => {
    expect(parseNumber(text, locale)).toEqual(ambiguous(own, other))
  })

  it("takes the locale's own decimal sign at its word", () => {
    expect(parseNumber('1,500', 'de')).toEqual(value(1.5))
    expect(parseNumber('1.500', 'en-GB')).toEqual(value(1.5))
  })

  it.each([
    '',
    ' ',
    '.',
    ',',
    'twelve',
    '12m',
    '1e3',
    '0x10',
    'NaN',
    'Infinity',
    '1/0',
    '1 2',
    '1 50 0',
    '1,50,000',
    '1,5.5,5',
    '1.5.5',
    '1..5',
    '--1',
    '1/2/3',
    '9'.repeat(41),
  ])('refuses %j', (text) => {
    expect(parseNumber(text, 'en-GB')).toEqual(refused)
  })

  it('reads back what a locale prints, or asks and has it among the readings', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }).map((n) => n / 100),
        fc.constantFrom('en-GB', 'de', 'fr', 'de-CH', 'pt-PT', 'sl', 'et'),
        (n, locale) => {
          const reading = parseNumber(new Intl.NumberFormat(locale).format(n), locale)
          const readings =
            reading.kind === 'ambiguous' ? reading.readings : reading.kind === 'value' ? [reading.value] : []
          expect(readings).toContain(n === 0 ? 0 : n)
        },
      ),
      { seed: 7, numRuns: 500 },
    )
  })

  it('never answers with anything but a finite number', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."0123456789.,/ -½'") }), (text) => {
        const reading = parseNumber(text, 'en-GB')
        if (reading.kind === 'value') expect(Number.isFinite(reading.value)).toBe(true)
      }),
      { seed: 7, numRuns: 2000 },
    )
  })
})
