import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Filed, type GroupedRow, testBuildings, testIntervals, unfile } from '#lib/evidence/index.ts'
import { scoreIntervals } from '#lib/evidence/scores.ts'

/** One building after another: of each wall its group and when it changed. */
type Walls = readonly (readonly {
  readonly group: number
  readonly from: number
  readonly to: number | null
}[])[]

function file(buildings: Walls): Filed<GroupedRow> {
  const rows = buildings.flat().map((wall) => ({ ...wall, weight: 1 }))
  const start = new Uint32Array(buildings.length + 1)
  buildings.forEach((walls, k) => {
    start[k + 1] = (start[k] as number) + walls.length
  })
  const row = Uint32Array.from(rows.keys())
  return {
    rows,
    clusters: { count: buildings.length, start, row, weight: new Float64Array(rows.length).fill(1) },
  }
}

const wall = fc
  .tuple(fc.nat(2), fc.nat(6), fc.option(fc.integer({ min: 1, max: 4 })))
  .map(([group, from, more]) => ({ group, from: from * 100, to: more === null ? null : (from + more) * 100 }))
const buildings = fc.array(fc.array(wall, { minLength: 1, maxLength: 4 }), { minLength: 3, maxLength: 25 })

describe('testBuildings', { timeout: 120_000 }, () => {
  test('says the same whatever the groups are called, in whatever order', () => {
    fc.assert(
      fc.property(buildings, fc.constantFrom([1, 2, 0], [2, 0, 1], [1, 0, 2]), (some, order) => {
        const one = testBuildings(file(some), ['a', 'b', 'c'])
        const renamed = some.map((walls) =>
          walls.map((each) => ({ ...each, group: order[each.group] as number })),
        )
        const other = testBuildings(file(renamed), ['x', 'y', 'z'])
        expect(other === null).toBe(one === null)
        if (one !== null) expect(other?.chiSquare).toBeCloseTo(one.chiSquare, 6)
      }),
      { numRuns: 100, seed: 20261129 },
    )
  })

  test('is the square of a sum over its own spread where there are two groups, reckoned plainly', () => {
    fc.assert(
      fc.property(buildings, (some) => {
        const two = some.map((walls) => walls.map((each) => ({ ...each, group: each.group % 2 })))
        const found = testBuildings(file(two), ['a', 'b'])
        const all = two.flat()
        const share = all.filter(({ group }) => group === 0).length / all.length
        if (share === 0 || share === 1) {
          expect(found).toBeNull()
          return
        }
        const scores = scoreIntervals(all)
        let at = 0
        const added = two.map((walls) =>
          walls.reduce(
            (sum, { group }) => sum + (scores[at++] as number) * ((group === 0 ? 1 : 0) - share),
            0,
          ),
        )
        const spread = (added.reduce((sum, one) => sum + one * one, 0) * two.length) / (two.length - 1)
        if (found === null) expect(spread).toBeLessThan(1e-9)
        else expect(found.chiSquare).toBeCloseTo(added.reduce((sum, one) => sum + one, 0) ** 2 / spread, 6)
      }),
      { numRuns: 100, seed: 20261129 },
    )
  })

  test('says nearly what shuffling says of many walls that stand alone', () => {
    const many = Array.from({ length: 900 }, (_, k) => [
      {
        group: k % 3 === 0 ? 1 : 0,
        from: (k % 7) * 90,
        to: (k * 11) % 5 < 3 ? ((k % 7) + 1 + (k % 4)) * 90 : null,
      },
    ])
    const byBuilding = testBuildings(file(many), ['a', 'b'])
    const shuffled = testIntervals(
      unfile(file(many)).map(({ group, ...row }) => ({ ...row, group: 'ab'[group] as string })),
      { shuffles: 0 },
    )
    const ratio = (byBuilding?.chiSquare ?? 0) / (shuffled?.chiSquare ?? 1)
    expect(ratio).toBeGreaterThan(0.9)
    expect(ratio).toBeLessThan(1.1)
  })

  test('finds less where walls of a building are counted as one building', () => {
    const four = (group: number, changed: boolean) =>
      Array.from({ length: 4 }, () => ({
        group,
        ...(changed ? { from: 100, to: 200 } : { from: 300, to: null }),
      }))
    const some = Array.from({ length: 12 }, (_, k) => four(k % 2, k % 4 === 0 || k === 3))
    const apart = some.flat().map((each) => [each])
    const chiSquareOf = (one: Walls) => testBuildings(file(one), ['a', 'b'])?.chiSquare ?? Number.NaN
    expect(chiSquareOf(apart)).toBeGreaterThan(3 * chiSquareOf(some))
  })
})
