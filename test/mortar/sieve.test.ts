import { describe, expect, test } from 'vitest'
import { exactly } from '#lib/mortar/range.ts'
import { gradeSand } from '#lib/mortar/sieve.ts'
import { blendSands } from '#lib/mortar/sieve-blend.ts'
import { passingAt, sizeAtPassing } from '#lib/mortar/sieve-curve.ts'
import type { GradingLimits } from '#lib/mortar/sieve-gradings.ts'
import { checkGrading } from '#lib/mortar/sieve-limits.ts'
import { blendToModulus } from '#lib/mortar/sieve-modulus.ts'
import { curveOf, grade } from './analysis-fixtures.ts'
import { value } from './check.ts'

const ASTM = [4.75, 2.36, 1.18, 0.6, 0.3, 0.15]
const MASSES = [0, 2, 13, 25, 38, 14, 8]
const faultsOf = (input: Parameters<typeof gradeSand>[0]) => {
  const outcome = gradeSand(input)
  return outcome.ok ? [] : outcome.faults.map(({ field, code }) => `${field} ${code}`)
}

describe('gradeSand(input)', () => {
  const grading = value(gradeSand(grade(ASTM, MASSES)))

  test('reads D10, D30, D50 and D60 on the logarithm of size', () => {
    const mm = [grading.d10, grading.d30, grading.d50, grading.d60].map((size) =>
      size.kind === 'size' ? size.mm.typical : Number.NaN,
    )
    const expected = [0.16561, 0.34713, 0.49996, 0.6]
    mm.forEach((found, i) => {
      expect(found).toBeCloseTo(expected[i] ?? Number.NaN, 5)
    })
    expect(grading.uniformity?.typical).toBeCloseTo(3.6229, 4)
    expect(grading.curvature?.typical).toBeCloseTo(1.2127, 4)
  })

  test('says finer than the last sieve, and no coefficient, where the curve never falls to 10 %', () => {
    const fine = value(gradeSand(grade(ASTM, [0, 2, 13, 25, 28, 18, 14])))
    expect(fine.d10).toEqual({ kind: 'finer-than', mm: 0.15 })
    expect(fine.uniformity).toBeNull()
    expect(fine.curvature).toBeNull()
  })

  test('says coarser than the first sieve where less than the share passes it', () => {
    expect(value(gradeSand(grade([1, 0.5], [50, 30, 20]))).d60).toEqual({ kind: 'coarser-than', mm: 1 })
  })

  test('gives no modulus for a stack with a gap or of one’s own, and both where both fit', () => {
    expect(value(gradeSand(grade([4.75, 2.36, 0.6, 0.3, 0.15], [0, 1, 2, 3, 4, 5]))).finenessModuli).toEqual(
      [],
    )
    expect(value(gradeSand(grade([3, 1.5], [1, 2, 3]))).finenessModuli).toEqual([])
    const both = [4.75, 4, 2.36, 2, 1.18, 1, 0.6, 0.5, 0.3, 0.25, 0.15, 0.125]
    const sets = value(gradeSand(grade(both, [...both.map(() => 1), 1]))).finenessModuli
    expect(sets.map(({ set }) => set)).toEqual(['astm-c136', 'en-12620'])
  })

  test('counts what was washed out as passing every sieve', () => {
    const washed = value(gradeSand({ ...grade([0.063], [90, 0]), washedOutG: 10 }))
    expect(washed.rows[0]?.passing.typical).toBeCloseTo(10, 12)
  })

  test('shows what was lost between the weighings, and null where the first was not made', () => {
    expect(value(gradeSand({ ...grade(ASTM, MASSES), startG: 101 })).lossPercent).toBeCloseTo(0.990099, 6)
    expect(grading.lossPercent).toBeNull()
    expect(grading.lossChecks).toEqual([])
  })

  test('judges the loss by the limit that was quoted, either way, and not by the remembered one', () => {
    const outcomes = (startG: number) =>
      value(gradeSand({ ...grade(ASTM, MASSES), startG })).lossChecks.map(({ outcome }) => outcome)
    expect(outcomes(100.2)).toEqual(['within', 'not-verified'])
    expect(outcomes(101)).toEqual(['over', 'not-verified'])
    expect(outcomes(99)).toEqual(['over', 'not-verified'])
  })

  test('widens with the balance and holds the typical value', () => {
    const rough = value(gradeSand({ ...grade(ASTM, MASSES), balanceG: 1 })).rows[3]?.passing
    expect(rough?.typical).toBeCloseTo(60, 12)
    expect(rough?.low).toBeLessThan(60)
    expect(rough?.high).toBeGreaterThan(60)
    expect(grading.rows[3]?.passing).toEqual(exactly(60))
  })

  test('refuses a sieve as coarse as the one above it, and names it', () => {
    expect(faultsOf(grade([1, 1], [1, 1, 1]))).toEqual(['sieves.1.openingMm out-of-order'])
  })

  test('refuses nothing, nothing weighed, negative and broken masses, all at once', () => {
    expect(faultsOf({ sieves: [], panG: 1 })).toEqual(['sieves empty'])
    expect(faultsOf(grade([1], [0, 0]))).toEqual(['sieves empty'])
    expect(faultsOf({ sieves: [{ openingMm: 1, retainedG: -1 }], panG: Number.NaN })).toEqual([
      'sieves.0.retainedG negative',
      'panG not-a-number',
    ])
  })

  test('refuses a balance too rough for the sample', () => {
    expect(faultsOf({ ...grade([1], [5, 5]), balanceG: 2 })).toEqual(['balanceG too-large'])
  })
})

describe('sizeAtPassing(curve, share) and passingAt(curve, opening)', () => {
  const curve = ASTM.map((openingMm, i) => ({ openingMm, passing: [100, 98, 85, 60, 22, 8][i] ?? 0 }))

  test('undo one another between the sieves', () => {
    for (const share of [8.5, 22, 40, 77, 99]) {
      const { mm } = sizeAtPassing(curve, share)
      expect(passingAt(curve, mm)).toBeCloseTo(share, 9)
    }
  })

  test('take the smallest size on a flat stretch', () => {
    const flat = [2, 1, 0.5].map((openingMm, i) => ({ openingMm, passing: [50, 50, 10][i] ?? 0 }))
    expect(sizeAtPassing(flat, 50).mm).toBe(1)
  })

  test('say nothing beyond the stack unless all or nothing passed its end', () => {
    expect(passingAt(curve, 9.5)).toBe(100)
    expect(passingAt(curve, 0.075)).toBeNull()
    expect(passingAt([{ openingMm: 1, passing: 90 }], 2)).toBeNull()
    expect(passingAt([], 1)).toBeNull()
  })
})

describe('checkGrading(curve, limits)', () => {
  const limits: GradingLimits = {
    id: 'a',
    source: 'a',
    basis: 'read',
    passing: [
      { openingMm: 2, low: 80, high: 100 },
      { openingMm: 0.063, low: 0, high: 5 },
    ],
    gaps: [{ fromMm: 2, toMm: 1, high: 50 }],
  }
  const rows = (typical: number, half: number) =>
    value(
      checkGrading(
        [
          { openingMm: 2, passing: { low: typical - half, typical, high: typical + half } },
          { openingMm: 1, passing: exactly(20) },
        ],
        limits,
      ),
    ).rows.map(({ outcome }) => outcome)

  test('says within, outside or borderline by the whole range, and no data where the stack ends', () => {
    expect(rows(90, 2)).toEqual(['within', 'no-data', 'outside'])
    expect(rows(79, 2)).toEqual(['borderline', 'no-data', 'outside'])
    expect(rows(70, 2)).toEqual(['outside', 'no-data', 'borderline'])
    expect(rows(80, 0)).toEqual(['within', 'no-data', 'outside'])
  })

  test('says where it read between two sieves', () => {
    const found = value(checkGrading(curveOf([4, 1], [100, 20]), limits)).rows
    expect(found.map(({ interpolated }) => interpolated)).toEqual([true, false, true])
  })

  test('refuses no curve and shares over 100', () => {
    expect(checkGrading([], limits).ok).toBe(false)
    expect(checkGrading(curveOf([1], [101]), limits).ok).toBe(false)
  })
})

describe('blendSands(input)', () => {
  const fine = curveOf(ASTM, [100, 100, 95, 80, 40, 10])
  const coarse = curveOf(ASTM, [100, 85, 55, 30, 10, 2])
  const mix = (share: number) =>
    ASTM.map((openingMm, i) => ({
      openingMm,
      passing: share * (fine[i]?.passing.typical ?? 0) + (1 - share) * (coarse[i]?.passing.typical ?? 0),
    }))

  test('finds the shares of a target that is a mixture, with no residual', () => {
    const blend = value(blendSands({ sands: [{ curve: fine }, { curve: coarse }], target: mix(0.3) }))
    expect(blend.shares[0]?.typical).toBeCloseTo(0.3, 9)
    expect(blend.shares[1]?.typical).toBeCloseTo(0.7, 9)
    expect(blend.residual.typical).toBeCloseTo(0, 9)
    expect(blend.volumeShares).toBeNull()
  })

  test('holds a share at 1 and the other at 0 for a target outside their span', () => {
    const target = mix(1.2).map((point) => ({ ...point, passing: Math.min(100, point.passing) }))
    const blend = value(blendSands({ sands: [{ curve: fine }, { curve: coarse }], target }))
    expect(blend.shares.map((share) => share.typical)).toEqual([1, 0])
    expect(blend.residual.typical).toBeGreaterThan(0)
  })

  test('is no worse than any other pair of shares', () => {
    const target = ASTM.map((openingMm, i) => ({ openingMm, passing: [100, 95, 80, 60, 28, 8][i] ?? 0 }))
    const blend = value(blendSands({ sands: [{ curve: fine }, { curve: coarse }], target }))
    for (let share = 0; share <= 1; share += 0.01) {
      const squares = mix(share).reduce(
        (sum, point, i) => sum + (point.passing - (target[i]?.passing ?? 0)) ** 2,
        0,
      )
      expect(Math.sqrt(squares / target.length)).toBeGreaterThanOrEqual(blend.residual.typical - 1e-9)
    }
  })

  test('copes with two sands that are one', () => {
    const blend = value(blendSands({ sands: [{ curve: fine }, { curve: fine }], target: mix(1) }))
    expect((blend.shares[0]?.typical ?? 0) + (blend.shares[1]?.typical ?? 0)).toBeCloseTo(1, 9)
    expect(blend.residual.typical).toBeCloseTo(0, 9)
  })

  test('is not held up by sands that leave no single answer', () => {
    const one = (passing: number) => curveOf(ASTM, [passing, 0, 0, 0, 0, 0])
    const sands = [49.82616797965232, 99.99999999999977, 0, 4.213518423057395e-12].map((passing) => ({
      curve: one(passing),
    }))
    const target = ASTM.map((openingMm, i) => ({ openingMm, passing: i === 0 ? 99.99999999999977 : 0 }))
    expect(value(blendSands({ sands, target })).residual.typical).toBeCloseTo(0, 6)
  })

  test('gives parts by volume where every density is known: the lighter sand takes more room', () => {
    const sands = [
      { curve: fine, bulkDensityKgM3: exactly(1400) },
      { curve: coarse, bulkDensityKgM3: exactly(1600) },
    ]
    const { volumeShares } = value(blendSands({ sands, target: mix(0.5) }))
    expect(volumeShares?.[0]?.typical).toBeCloseTo(0.5 / 1400 / (0.5 / 1400 + 0.5 / 1600), 9)
  })

  test('carries the uncertainty of the gradings into the shares', () => {
    const blurred = fine.map(({ openingMm, passing }) => ({
      openingMm,
      passing: {
        low: Math.max(0, passing.typical - 3),
        typical: passing.typical,
        high: Math.min(100, passing.typical + 3),
      },
    }))
    const share = value(blendSands({ sands: [{ curve: blurred }, { curve: coarse }], target: mix(0.5) }))
      .shares[0]
    expect(share?.low).toBeLessThan(0.5)
    expect(share?.high).toBeGreaterThan(0.5)
  })

  test('refuses one sand alone, no target, and a target that a stack does not reach', () => {
    const fields = (input: Parameters<typeof blendSands>[0]) => {
      const outcome = blendSands(input)
      return outcome.ok ? [] : outcome.faults.map(({ field }) => field)
    }
    expect(fields({ sands: [{ curve: fine }], target: mix(1) })).toEqual(['sands'])
    expect(fields({ sands: [{ curve: fine }, { curve: coarse }], target: [] })).toEqual(['target'])
    expect(
      fields({ sands: [{ curve: fine }, { curve: coarse }], target: [{ openingMm: 0.063, passing: 5 }] }),
    ).toEqual(['sands.0.curve'])
  })
})

describe('blendToModulus(fine, coarse, wanted)', () => {
  test('follows the lever and stays between none and all', () => {
    expect(value(blendToModulus(2, 3, 2.25))).toBe(0.75)
    expect(value(blendToModulus(2, 3, 1))).toBe(1)
    expect(value(blendToModulus(2, 3, 4))).toBe(0)
  })

  test('refuses sands that it cannot tell apart', () => {
    expect(blendToModulus(2, 2, 2).ok).toBe(false)
  })
})
