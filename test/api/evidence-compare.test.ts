import { expect, test } from 'vitest'
import { distanceBetween } from '#lib/api/evidence-traits.ts'

const spread = (rows: readonly (readonly [string, number, number])[]) =>
  rows.map(([value, a, b]) => ({ value, shares: { a, b } }))

test('distanceBetween(values, first, second, many) is the part that would have to be of another kind', () => {
  const rows = [
    ['ashlar', 0.5, 0.1],
    ['rubble', 0.5, 0.4],
    ['brick', 0, 0.5],
  ] as const
  expect(distanceBetween(spread(rows), 'a', 'b', false)).toBeCloseTo(0.5)
  expect(distanceBetween(spread(rows), 'b', 'a', false)).toBeCloseTo(0.5)
  expect(distanceBetween(spread([['ashlar', 1, 1]]), 'a', 'b', false)).toBe(0)
})

test('distanceBetween(…) of kinds that go together is the greatest difference of one', () => {
  const rows = [
    ['chlorides', 0.9, 0.6],
    ['sulfates', 0.8, 0.7],
  ] as const
  expect(distanceBetween(spread(rows), 'a', 'b', true)).toBeCloseTo(0.3)
})
