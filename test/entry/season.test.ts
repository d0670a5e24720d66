import { expect, it } from 'vitest'
import { seasonOf } from '#lib/entry/season.ts'

it.each([
  ['2024-01-15', 58, 'winter'],
  ['2024-02-29', 58, 'winter'],
  ['2024-03-01', 58, 'spring'],
  ['2024-08-31', 38.7, 'summer'],
  ['2024-11-30', 46, 'autumn'],
  ['2024-12-01', 46, 'winter'],
  ['2024-01-15', -42, 'summer'],
  ['2024-04-10', -42, 'autumn'],
  ['2024-07-01', -42, 'winter'],
  ['2024-10-01', -42, 'spring'],
  ['2024-01-15', 10, undefined],
  ['2024-01-15', -23.5, undefined],
])('%s at %s degrees is %s', (day, latitude, season) => {
  expect(seasonOf(day, latitude)).toBe(season)
})
