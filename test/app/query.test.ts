import { beforeAll, describe, expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { termIn } from '../../app/_ui/label.ts'
import { addressWith, first, oneOf, wholeNumber } from '../../app/_ui/query.ts'

// Reading all content takes a while on a busy machine.
beforeAll(() => void content(), 60_000)

describe('first(value)', () => {
  test('takes the first of several and leaves one alone', () => {
    expect(first('granite')).toBe('granite')
    expect(first(['granite', 'chalk'])).toBe('granite')
  })

  test('counts an untouched select as absent', () => {
    expect(first('')).toBeUndefined()
    expect(first(undefined)).toBeUndefined()
    expect(first([])).toBeUndefined()
  })
})

test('oneOf(list, value) answers only with what is in the list', () => {
  expect(oneOf(['dry', 'damp'], 'damp')).toBe('damp')
  expect(oneOf(['dry', 'damp'], 'Damp')).toBeUndefined()
  expect(oneOf(['dry', 'damp'], undefined)).toBeUndefined()
})

test('termIn(vocabulary, value) answers only with a term that exists', () => {
  expect(termIn('units', 'limestone')).toBe('limestone')
  expect(termIn('units', '\u0000')).toBeUndefined()
  expect(termIn('no-such-list', 'limestone')).toBeUndefined()
})

describe('wholeNumber(value)', () => {
  test.each([
    ['1', 1],
    ['20', 20],
    ['999999', 999_999],
  ])('reads %s', (value, number) => {
    expect(wholeNumber(value)).toBe(number)
  })

  test.each(['0', '-1', '1.5', '01', '1000000', 'one', '', '1e3'])('refuses %s', (value) => {
    expect(wholeNumber(value)).toBeUndefined()
  })
})

describe('addressWith(path, choices)', () => {
  test('writes the choices that were made, and escapes them', () => {
    expect(addressWith('/cases', { country: 'EE', unit: undefined, after: '3.5_a&b' })).toBe(
      '/cases?country=EE&after=3.5_a%26b',
    )
  })

  test('is the bare path when nothing was chosen', () => {
    expect(addressWith('/cases', { country: undefined })).toBe('/cases')
  })
})
