import { describe, expect, it } from 'vitest'
import { apart, curvePaths, PLOT, type PlotCurve, plotScales } from '../../app/_ui/plot.ts'
import { countDamp, countKinds, crossDamp, kindOf } from '../../app/evidence/kinds.ts'

const curve = (drops: PlotCurve['drops'], endYears = 10): PlotCurve => ({
  key: 'a',
  label: 'A',
  points: [],
  drops,
  endYears,
})
/** Corners of a path, as years and shares. */
function corners(path: string, endYears = 10): string[] {
  const { x, y } = plotScales(endYears)
  return [...path.matchAll(/[ML]([\d.]+),([\d.]+)/g)].map(
    ([, px, py]) => `${x.invert(Number(px)).toFixed(1)} ${y.invert(Number(py)).toFixed(2)}`,
  )
}

describe('curvePaths(curve, scales)', () => {
  it('runs level where it is known to, and from corner to corner where nobody saw when', () => {
    const { level, drop, end } = curvePaths(
      curve([
        { fromYears: 1, toYears: 2, mass: 0.25 },
        { fromYears: 4, toYears: 8, mass: 0.5 },
      ]),
      plotScales(10),
    )
    expect(corners(level)).toEqual(['0.0 1.00', '1.0 1.00', '2.0 0.75', '4.0 0.75', '8.0 0.25', '10.0 0.25'])
    expect(corners(drop)).toEqual(['1.0 1.00', '2.0 0.75', '4.0 0.75', '8.0 0.25'])
    expect(end).toBeCloseTo(0.25)
  })

  it('stops where nothing more is known', () => {
    const { level, drop } = curvePaths(curve([{ fromYears: 6, toYears: null, mass: 1 }]), plotScales(10))
    expect(corners(level)).toEqual(['0.0 1.00', '6.0 1.00'])
    expect(drop).toBe('')
  })

  it('runs level to the end of the watch where nothing happened', () => {
    expect(corners(curvePaths(curve([]), plotScales(10)).level)).toEqual(['0.0 1.00', '10.0 1.00'])
  })
})

describe('apart(wanted, gap, most)', () => {
  it('keeps labels apart, in order, and above the axis', () => {
    expect(apart([100, 20, 102], 17, 300)).toEqual([100, 20, 117])
    expect(apart([294, 298, 40], 17, PLOT.height - PLOT.bottom)).toEqual([277, 294, 40])
  })
})

describe('the kinds of a wall', () => {
  const seen = { joint: 'sound', unit: 'sound', damp: 'dry', rain: 'week', season: 'summer' } as const
  it('reads joint and stone together', () => {
    expect(kindOf(seen)).toBe('sound')
    expect(kindOf({ ...seen, joint: 'fine-cracks' })).toBe('sound')
    expect(kindOf({ ...seen, joint: 'open' })).toBe('worn')
    expect(kindOf({ ...seen, joint: 'lost' })).toBe('lost')
    expect(kindOf({ ...seen, unit: 'powdering' })).toBe('damaged')
    expect(kindOf({ ...seen, unit: 'broken', joint: 'lost' })).toBe('both')
    expect(kindOf({ ended: 'repointed-failed' })).toBe('failed')
  })

  it('counts each work once a time, and tells those not seen apart', () => {
    const states = [
      { years: 1, seen, works: 3 },
      { years: 1, seen: { ...seen, damp: 'wet', rain: 'two-days' }, works: 2 },
      { years: 1, seen: { ended: 'lost' }, works: 1 },
      { years: 1, seen: null, works: 4 },
      { years: 5, seen: null, works: 7 },
    ] as const
    expect(countKinds(states)).toMatchObject([
      { years: 1, sum: 6, unseen: 4, counts: { sound: 5, gone: 1, lost: 0 } },
    ])
    expect(countDamp(states)).toMatchObject([{ years: 1, sum: 5, unseen: 4, counts: { dry: 3, wet: 2 } }])
    expect(crossDamp(states, 'rain').map(({ row }) => row)).toEqual(['two-days', 'week'])
    expect(crossDamp(states, 'rain')[0]?.counts.find(({ damp }) => damp === 'wet')).toEqual({
      damp: 'wet',
      works: 2,
    })
  })
})
