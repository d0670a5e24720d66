import { expect, test } from 'vitest'
import { readIngredients } from '#lib/content/ingredients.ts'
import type { Role } from '#lib/entry/terms.ts'

const roles: Record<string, Role> = { lime: 'lime', sand: 'aggregate', hair: 'fibre' }
const read = (cell: string) => readIngredients(cell, (material) => roles[material])
const partsOf = (cell: string) => {
  const outcome = read(cell)
  return outcome.ok ? outcome.ingredients.map(({ parts }) => parts) : outcome.faults
}

test.each([
  ['a figure', '3 sand', { low: 3, high: 3 }],
  ['a decimal', '2.5 sand', { low: 2.5, high: 2.5 }],
  ['a fraction', '1/4 sand', { low: 0.25, high: 0.25 }],
  ['a whole and a fraction', '2 1/2 sand', { low: 2.5, high: 2.5 }],
  ['a range', '2-3 sand', { low: 2, high: 3 }],
  ['a range of fractions', '2 1/4-3 sand', { low: 2.25, high: 3 }],
  ['a usual figure with its range', '3 [2-4] sand', { low: 2, typical: 3, high: 4 }],
  ['no figure at all', '? hair', null],
])('readIngredients(cell) reads %s', (_, cell, parts) => {
  expect(partsOf(cell)).toEqual([parts])
})

test('readIngredients(cell) reads mass, state and role', () => {
  expect(read('14 lime (dry-hydrate) by mass : 98 sand (damp) by mass : ? hair')).toEqual({
    ok: true,
    ingredients: [
      { material: 'lime', role: 'lime', parts: { low: 14, high: 14 }, by: 'mass', state: 'dry-hydrate' },
      { material: 'sand', role: 'aggregate', parts: { low: 98, high: 98 }, by: 'mass', state: 'damp' },
      { material: 'hair', role: 'fibre', parts: null, by: 'volume', state: 'not-stated' },
    ],
  })
})

test('readIngredients(cell) tells where in the cell each fault begins', () => {
  const outcome = read('1 lime (dry) : 3 (sand) : 2 gravel : 1/0 sand : 5 [1-3] sand')
  expect(outcome.ok ? [] : outcome.faults).toEqual([
    { at: 0, reason: '"dry" is not a state of lime' },
    { at: 15, reason: '"3 (sand)" is not an ingredient such as "3 sand-pit" or "1 lime-fat (putty)"' },
    { at: 26, reason: 'unknown material "gravel"' },
    { at: 37, reason: 'parts "1/0" must be above zero and rise from low to high' },
    { at: 48, reason: 'parts "5" must be above zero and rise from low to high' },
  ])
})

test('readIngredients(cell) refuses a state of lime on sand', () => {
  const outcome = read('3 sand (putty)')
  expect(outcome.ok ? [] : outcome.faults).toEqual([
    { at: 0, reason: '"putty" is a state of lime, not of sand' },
  ])
})
