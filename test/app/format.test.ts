import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { speaking } from '#app/asked.ts'
import {
  compareTitles,
  formatCentury,
  formatDate,
  formatList,
  formatNumber,
  formatYear,
  printedRange,
} from '../../app/_words/format.ts'

describe('printedRange(range)', () => {
  test('rounds to about a fifth of the width', () => {
    expect(printedRange({ low: 2.613, typical: 3.004, high: 3.418 })).toEqual({
      low: 2.6,
      typical: 3,
      high: 3.4,
      places: 1,
    })
    expect(printedRange({ low: 142.7, typical: 163.2, high: 187.9 })).toEqual({
      low: 143,
      typical: 163,
      high: 188,
      places: 0,
    })
  })

  test('rounds to hundreds when the range is wide', () => {
    expect(printedRange({ low: 1012, typical: 1234, high: 1587 })).toEqual({
      low: 1000,
      typical: 1200,
      high: 1600,
      places: 0,
    })
  })

  test('keeps two significant digits of the typical value, however wide the range', () => {
    expect(printedRange({ low: 604, typical: 748, high: 1107 })).toEqual({
      low: 600,
      typical: 750,
      high: 1110,
      places: 0,
    })
    expect(printedRange({ low: 38.4, typical: 62.7, high: 118.2 })).toEqual({
      low: 38,
      typical: 63,
      high: 118,
      places: 0,
    })
    expect(printedRange({ low: 4, typical: 8, high: 24 })).toEqual({
      low: 4,
      typical: 8,
      high: 24,
      places: 0,
    })
    expect(printedRange({ low: 0, typical: 0, high: 1480 })).toEqual({
      low: 0,
      typical: 0,
      high: 1500,
      places: 0,
    })
  })

  test('keeps three significant digits of an exact value', () => {
    expect(printedRange({ low: 12.3456, typical: 12.3456, high: 12.3456 })).toEqual({
      low: 12.3,
      typical: 12.3,
      high: 12.3,
      places: 1,
    })
  })

  test('leaves nought alone', () => {
    expect(printedRange({ low: 0, typical: 0, high: 0 })).toEqual({ low: 0, typical: 0, high: 0, places: 0 })
  })

  test('keeps low ≤ typical ≤ high and moves no figure by more than a fifth of the width, or half of its third digit, and the typical one by no more than a twentieth of itself', () => {
    const figure = fc.double({ min: 1e-3, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(fc.tuple(figure, figure, figure), (figures) => {
        const [low = 0, typical = 0, high = 0] = [...figures].sort((a, b) => a - b)
        const printed = printedRange({ low, typical, high })
        expect(printed.low).toBeLessThanOrEqual(printed.typical)
        expect(printed.typical).toBeLessThanOrEqual(printed.high)
        const step = Math.max((high - low) / 5, high / 100)
        for (const [before, after] of [
          [low, printed.low],
          [typical, printed.typical],
          [high, printed.high],
        ] as const)
          expect(Math.abs(before - after)).toBeLessThanOrEqual(step / 2 + 1e-9)
        if (high < 10 * typical)
          expect(Math.abs(typical - printed.typical)).toBeLessThanOrEqual(typical / 20 + 1e-9)
      }),
    )
  })
})

describe('formatDate(value)', () => {
  test.each([
    ['2019', '2019'],
    ['2019-05', 'May 2019'],
    ['2019-05-07', '7 May 2019'],
  ])('prints %s as far as it is known', (value, printed) => {
    expect(formatDate(value)).toBe(printed)
  })

  test('prints a Date by its day in UTC, whatever the server’s zone', () => {
    expect(formatDate(new Date('2024-12-31T23:59:59Z'))).toBe('31 December 2024')
  })
})

test('formatNumber(value, places) keeps the places asked for and groups from five digits on', () => {
  expect(formatNumber(2, 1)).toBe('2.0')
  expect(formatNumber(1500)).toBe('1500')
  expect(formatNumber(12500)).toBe('12,500')
})

test('formatNumber(value, places) has a true minus sign, and none before a nought', () => {
  expect(formatNumber(-4.2, 1)).toBe('−4.2')
  expect(formatNumber(-0.3, 0)).toBe('0')
})

test('formatYear(year) writes years before our era as such', () => {
  expect(formatYear(-25)).toBe('25 BC')
  expect(formatYear(1729)).toBe('1729')
})

test('formatCentury(century) counts in English and writes Roman numerals in Spanish', () => {
  expect([19, 21, 2, -3].map(formatCentury)).toEqual([
    '19th century',
    '21st century',
    '2nd century',
    '3rd century BC',
  ])
  expect(speaking('es', () => [19, 21, 14, 4, -8, 0].map(formatCentury))).toEqual([
    'siglo XIX',
    'siglo XXI',
    'siglo XIV',
    'siglo IV',
    'siglo VIII a. C.',
    'siglo 0',
  ])
})

test('formatList(items) joins with and', () => {
  expect(formatList(['lime', 'sand', 'hair'])).toBe('lime, sand and hair')
  expect(formatList([])).toBe('')
})

test('compareTitles(a, b) leaves articles out of the order', () => {
  expect(['The useful arts', 'A treatise', 'Lime', 'Another'].sort(compareTitles)).toEqual([
    'Another',
    'Lime',
    'A treatise',
    'The useful arts',
  ])
})
