import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { exactly } from '#lib/mortar/range.ts'
import { CHART, type Compared, inOrder, placeBands, ratioScale } from '../../app/compare/columns.ts'

const all: Compared[] = [...content().rows.values()].map((row) => ({ row, ratio: exactly(2) }))

describe('placeBands(compared)', () => {
  it('gives every row one column, in order of date, inside the drawing', () => {
    const columns = placeBands(all).flatMap((band) => band.columns)
    expect(columns.map(({ row }) => row.ref)).toEqual(inOrder(all).map(({ row }) => row.ref))
    const places = columns.map(({ x }) => x)
    expect(places).toEqual([...places].sort((a, b) => a - b))
    expect(new Set(places).size).toBe(places.length)
    expect(Math.min(...places)).toBeGreaterThan(CHART.left)
    expect(Math.max(...places)).toBeLessThan(CHART.right)
  })

  it('breaks the ground between antiquity and the Middle Ages, and where a period holds no row', () => {
    expect(placeBands(all).flatMap(({ id, isAfterGap }) => (isAfterGap ? [id] : []))).toEqual(['1300'])
    const few = all.filter(({ row }) => row.to < 1600 || row.from > 1800)
    expect(placeBands(few).flatMap(({ id, isAfterGap }) => (isAfterGap ? [id] : []))).toEqual([
      '1300',
      '1800',
    ])
  })

  it('gives no band for no row', () => {
    expect(placeBands([])).toEqual([])
  })
})

describe('ratioScale(compared, bottom)', () => {
  const [first] = all
  const over = (low: number, high: number) =>
    first ? [{ ...first, ratio: { low, typical: low, high } }] : []

  it('sets richer mixes lower, and steps of double and half equally far apart', () => {
    const { y } = ratioScale(over(0.5, 8), 400)
    expect(y(1)).toBeGreaterThan(y(2))
    expect(y(1) - y(2)).toBeCloseTo(y(2) - y(4), 9)
  })

  it('marks only parts that the drawing holds', () => {
    expect(ratioScale(over(0.5, 5), 400).ticks).toEqual([0.5, 1, 2, 3, 5])
  })
})
