import { expect, it } from 'vitest'
import { suggestSeason } from '../../app/_write/season.ts'

const place = (country: string) => ({ country, region: 'Invented' })

it.each([
  ['2019-06-12', 'EE', 'summer'],
  ['2019-06-12', 'AU', 'winter'],
  ['2019-02-31', 'EE', undefined],
  ['2019-06', 'EE', undefined],
])('suggestSeason(%s, in %s) is %s', (day, country, season) => {
  expect(suggestSeason(day, place(country))).toBe(season)
})
