import { describe, expect, test } from 'vitest'
import { restateRecipe } from '#lib/mortar/restate.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { value } from './check.ts'
import { known, lime, PURE, SAND, sand } from './core-fixtures.ts'

const materials = { lime: PURE, sand: SAND }

describe('yieldOf', () => {
  test('holds a weighed lime against the books as it does the same lime measured', () => {
    const measured = value(yieldOf({ ingredients: [lime(1, 'dry-hydrate'), sand(3)], materials, draws: 1 }))
    const weighed = value(
      yieldOf({ ingredients: [lime(0.48, 'dry-hydrate', 'mass'), sand(3)], materials, draws: 1 }),
    )
    for (const [k, book] of measured.handbooks.entries()) {
      expect(weighed.handbooks[k]?.mortarL).toBeCloseTo(book.mortarL, 9)
      expect(weighed.handbooks[k]?.differencePercent).toBeCloseTo(book.differencePercent, 6)
    }
  })
})

describe('restateRecipe', () => {
  test('weighs a lime in a state whose bulk density nobody knows, but for putty', () => {
    const bare = known({ freeCaO: 1, bulkDensityHydrate: 480 })
    const as = (limeState: 'lump-quicklime' | 'putty') =>
      restateRecipe({
        ingredients: [lime(1, 'dry-hydrate'), sand(3)],
        materials: { lime: bare, sand: SAND },
        as: { limeState, aggregate: 'dry', by: 'mass' },
        draws: 1,
      })
    // 3 L of sand of 1.516 kg/L to the quicklime in 0.48 kg of hydrate, 0.48 / 1.32126 kg.
    expect(value(as('lump-quicklime'))[1]?.parts.typical).toBeCloseTo((3 * 1.516) / (0.48 / 1.32126), 3)
    expect(as('putty').ok).toBe(false)
  })
})
