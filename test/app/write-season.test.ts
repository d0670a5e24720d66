import { describe, expect, it } from 'vitest'
import { followingDay, seasonOfDay, suggestSeason, withSeason } from '../../app/_write/season.ts'

const place = (country: string) => ({ country, region: 'Invented' })

it.each([
  ['2019-06-12', 'EE', 'summer'],
  ['2019-06-12', 'AU', 'winter'],
  ['2019-02-31', 'EE', undefined],
  ['2019-06', 'EE', undefined],
])('suggestSeason(%s, in %s) is %s', (day, country, season) => {
  expect(suggestSeason(day, place(country))).toBe(season)
})

describe('the season of a visit', () => {
  const read = (typed: Record<string, string>, country = 'EE') =>
    withSeason(typed, seasonOfDay(typed, place(country))).season

  it.each([
    ['2024-07-14', 'EE', 'summer'],
    ['14 July 2024', 'EE', 'summer'],
    ['14.1.2024', 'EE', 'winter'],
    ['14 July 2024', 'AU', 'winter'],
    ['31 February 2024', 'EE', undefined],
    ['14 July 2024', 'EC', undefined],
  ])('follows the day as typed: %s in %s is %s', (on, country, season) => {
    expect(read({ on }, country)).toBe(season)
  })

  it('stays as its writer chose it, whatever the day', () => {
    expect(read({ on: '2024-07-14', season: 'winter' })).toBe('winter')
  })

  it('follows the day again in a further version, unless it was another', () => {
    const again = (season: string) => followingDay({ on: '2024-07-14', season }, place('EE'))
    expect(again('summer')).toEqual({ on: '2024-07-14' })
    expect(read({ ...again('summer'), on: '2024-12-01' })).toBe('winter')
    expect(again('winter')).toEqual({ on: '2024-07-14', season: 'winter' })
  })
})
