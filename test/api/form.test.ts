import { describe, expect, it } from 'vitest'
import { readAmount, typedFrom } from '../../app/_http/form.ts'

const read = (depth: string, mark?: string) =>
  readAmount({ depth, ...(mark !== undefined && { 'depth-mark': mark }) }, 'depth')
const range = (low: number, high = low) => ({ low, typical: (low + high) / 2, high })

describe('readAmount(typed, name)', () => {
  it.each([
    ['25', range(25)],
    ['2,5', range(2.5)],
    ['1 1/2', range(1.5)],
    ['-5', range(-5)],
    ['20–30', range(20, 30)],
    ['20-30', range(20, 30)],
    ['20 - 30', range(20, 30)],
    ['\u200b20\ufeff', range(20)],
    ['20 to 30', range(20, 30)],
    ['0,5 – 0,75', range(0.5, 0.75)],
    ['½-¾', range(0.5, 0.75)],
    ['20..30', range(20, 30)],
  ])('reads %j', (text, amount) => {
    expect(read(text).amount).toEqual(amount)
  })

  it('finds nothing wrong with nothing typed', () => {
    expect(readAmount({}, 'depth')).toEqual({ text: '' })
  })

  it.each([
    ['deep', 'not-a-number'],
    ['20–', 'not-a-number'],
    ['20–30–40', 'not-a-number'],
    ['30–20', 'out-of-order'],
  ])('refuses %j and keeps it as typed', (text, code) => {
    expect(read(text)).toEqual({ text, fault: { field: 'depth', code, value: text } })
  })

  it('asks how the mark in an ambiguous figure was meant', () => {
    expect(read('1,500')).toEqual({
      text: '1,500',
      readings: { thousands: range(1500), decimal: range(1.5) },
      fault: { field: 'depth', code: 'ambiguous-number', value: '1,500' },
    })
  })

  it('takes the answer, for both ends of a range alike', () => {
    expect(read('1,500', 'thousands').amount).toEqual(range(1500))
    expect(read('1,500–2,250', 'decimal').amount).toEqual(range(1.5, 2.25))
    expect(read('1,500', 'perhaps').fault?.code).toBe('ambiguous-number')
  })
})

describe('typedFrom(search)', () => {
  it('keeps the first of each field, trimmed, without the blank ones', () => {
    expect(typedFrom({ area: ' 24 ', joint: ['10', '12'], depth: '  ', loss: undefined })).toEqual({
      area: '24',
      joint: '10',
    })
  })

  it('cuts what is far too long', () => {
    expect(typedFrom({ reason: 'x'.repeat(9000) }).reason).toHaveLength(500)
  })
})
