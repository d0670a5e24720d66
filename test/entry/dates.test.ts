import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lastDayOf, yearsBetween } from '#lib/entry/dates.ts'

describe('lastDayOf(partial)', () => {
  it.each([
    ['2011', '2011-12-31'],
    ['2011-02', '2011-02-28'],
    ['2012-02', '2012-02-29'],
    ['2011-12', '2011-12-31'],
    ['2011-03-04', '2011-03-04'],
    ['0099', '0099-12-31'],
    ['0004-02', '0004-02-29'],
    ['0001-02', '0001-02-28'],
  ])('of %s is %s', (partial, day) => {
    expect(lastDayOf(partial)).toBe(day)
  })
})

describe('yearsBetween(from, to)', () => {
  it.each([
    ['2010-06-20', '2015-06-20', 5],
    ['2010-06-20', '2015-06-19', 4.99],
    ['2010-06-20', '2010-06-20', 0],
    ['2012-02-29', '2013-03-01', 1],
    ['2010-01-01', '2010-07-02', 0.49],
    ['2015-06-20', '2010-06-20', -5],
    ['0090-06-20', '0095-06-20', 5],
    ['0095-06-20', '0105-06-20', 10],
  ])('from %s to %s is %d', (from, to, years) => {
    expect(yearsBetween(from, to)).toBe(years)
  })

  it('never gives less for a later day', () => {
    const day = fc.date({ min: new Date('1900-01-01'), max: new Date('2100-01-01'), noInvalidDate: true })
    fc.assert(
      fc.property(day, day, day, (a, b, c) => {
        const [x, y, z] = [a, b, c].map((date) => date.toISOString().slice(0, 10)).sort() as [
          string,
          string,
          string,
        ]
        expect(yearsBetween(x, z)).toBeGreaterThanOrEqual(yearsBetween(x, y))
      }),
    )
  })
})
