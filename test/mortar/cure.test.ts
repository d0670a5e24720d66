import { describe, expect, test } from 'vitest'
import { carbonate } from '#lib/mortar/cure.ts'
import { coefficientFrom } from '#lib/mortar/cure-coefficient.ts'
import { dryEarth } from '#lib/mortar/drying.ts'
import { assessFrost, type FrostInput } from '#lib/mortar/frost.ts'
import { exactly } from '#lib/mortar/range.ts'
import { value } from './check.ts'

const codes = (outcome: { ok: boolean; faults?: readonly { field: string; code: string }[] }) =>
  outcome.faults?.map(({ field, code }) => `${field} ${code}`) ?? []

describe('carbonate(input)', () => {
  const base = {
    kMmPerRootDay: exactly(0.5),
    depthMm: exactly(20),
    faces: 1 as const,
    ages: [0, 4, 16, 1600, 9999],
  }
  const found = value(carbonate(base))

  test('goes twice as deep in four times the time and stops at the depth', () => {
    expect(found.depths.map(({ mm }) => mm.typical)).toEqual([0, 1, 2, 20, 20])
    expect(found.depths.map(({ share }) => share.typical)).toEqual([0, 0.05, 0.1, 1, 1])
  })

  test('takes (d / k)² days in all, and a quarter of that from two faces', () => {
    expect(found.fullDays.typical).toBe(1600)
    expect(value(carbonate({ ...base, faces: 2 })).fullDays.typical).toBe(400)
  })

  test('says a wide time for a wide coefficient', () => {
    const { fullDays } = value(carbonate({ ...base, kMmPerRootDay: { low: 0.2, typical: 0.35, high: 0.5 } }))
    expect(fullDays.low).toBeGreaterThan(1600)
    expect(fullDays.high).toBeLessThan(10_000)
    expect(fullDays.high / fullDays.low).toBeGreaterThan(3)
  })

  test('refuses no coefficient, no depth, no age and a third face', () => {
    const bad = { kMmPerRootDay: exactly(0), depthMm: exactly(-1), faces: 3 as 2, ages: [] }
    expect(codes(carbonate(bad))).toEqual([
      'kMmPerRootDay not-positive',
      'depthMm not-positive',
      'faces unknown',
      'ages empty',
    ])
    expect(codes(carbonate({ ...base, ages: [-1] }))).toEqual(['ages.0 negative'])
  })
})

describe('dryEarth(input)', () => {
  const base = {
    thicknessMm: exactly(30),
    densityKgM3: exactly(1700),
    moistureAtStart: exactly(0.22),
    moistureAtEnd: exactly(0.02),
    lossKgM2Day: exactly(0.51),
    faces: 1 as const,
  }

  test('divides the water to lose by the loss of the faces', () => {
    expect(value(dryEarth(base)).waterKgM2.typical).toBeCloseTo(10.2, 9)
    expect(value(dryEarth(base)).days.typical).toBeCloseTo(20, 9)
    expect(value(dryEarth({ ...base, faces: 2 })).days.typical).toBeCloseTo(10, 9)
  })

  test('refuses an end wetter than the start, and no loss', () => {
    expect(codes(dryEarth({ ...base, moistureAtEnd: exactly(0.3) }))).toEqual(['moistureAtEnd too-large'])
    expect(codes(dryEarth({ ...base, lossKgM2Day: exactly(0) }))).toEqual(['lossKgM2Day not-positive'])
  })
})

describe('assessFrost(input)', () => {
  const base: FrostInput = {
    dailyLowsC: [8, 6, 4, 1, -1, null, 7, 8],
    protectDays: { low: 3, typical: 5, high: 8 },
    coldLimitC: 5,
    marginK: 2,
  }

  test('counts nights by kind within the longest protection and finds the first that may freeze', () => {
    const found = value(assessFrost(base))
    expect(found.counts).toEqual({ frost: 1, 'near-frost': 1, cold: 1, none: 4, unknown: 1 })
    expect(found.firstFrostDay).toBe(3)
    expect(found.frostWithin).toBe('typical')
  })

  test('says not known where lows are missing, and none where all are known and mild', () => {
    expect(value(assessFrost({ ...base, dailyLowsC: [8, 8] })).frostWithin).toBe('not-known')
    expect(value(assessFrost({ ...base, dailyLowsC: [8, 8] })).daysNotCovered).toBe(6)
    expect(value(assessFrost({ ...base, dailyLowsC: Array(8).fill(8) })).frostWithin).toBe('no-protection')
  })

  test('takes 0 °C as frost, the margin as near frost, and the limit itself as not cold', () => {
    const risks = value(assessFrost({ ...base, dailyLowsC: [0, 2, 2.1, 5] })).nights.map(({ risk }) => risk)
    expect(risks).toEqual(['frost', 'near-frost', 'cold', 'none'])
  })

  test('refuses no known low and temperatures of no place', () => {
    expect(codes(assessFrost({ ...base, dailyLowsC: [null] }))).toEqual(['dailyLowsC empty'])
    expect(codes(assessFrost({ ...base, dailyLowsC: [-120] }))).toEqual(['dailyLowsC.0 too-small'])
    expect(codes(assessFrost({ ...base, protectDays: exactly(0) }))).toEqual(['protectDays too-small'])
  })
})

describe('coefficientFrom(input)', () => {
  test('is the depth over the root of the age, and gives that depth back at that age', () => {
    const { k, steps } = value(coefficientFrom({ depthMm: exactly(6), days: exactly(144) }))
    expect(k.typical).toBeCloseTo(0.5, 12)
    expect(steps.at(-1)?.result).toEqual(k)
    const again = carbonate({ kMmPerRootDay: k, depthMm: exactly(50), faces: 1, ages: [144] })
    expect(value(again).depths[0]?.mm.typical).toBeCloseTo(6, 12)
  })

  test('is as unsure as what was measured', () => {
    const { k } = value(coefficientFrom({ depthMm: { low: 4, typical: 6, high: 8 }, days: exactly(144) }))
    expect(k.low).toBeGreaterThan(4 / 12)
    expect(k.low).toBeLessThan(0.45)
    expect(k.high).toBeGreaterThan(0.55)
  })

  test('refuses no depth and no age', () => {
    expect(codes(coefficientFrom({ depthMm: exactly(0), days: exactly(0) }))).toEqual([
      'depthMm not-positive',
      'days not-positive',
    ])
  })
})
