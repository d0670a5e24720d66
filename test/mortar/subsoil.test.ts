import { describe, expect, test } from 'vitest'
import { exactly, type Range } from '#lib/mortar/range.ts'
import { readJar } from '#lib/mortar/subsoil.ts'
import { amendSoil } from '#lib/mortar/subsoil-blend.ts'
import { type HydrometerInput, readHydrometer } from '#lib/mortar/subsoil-hydrometer.ts'
import { limeOnSoil, type SoilLimeInput } from '#lib/mortar/subsoil-lime.ts'
import { readShrinkage } from '#lib/mortar/subsoil-shrinkage.ts'
import { readWetSieve } from '#lib/mortar/subsoil-sieve.ts'
import { limeOf } from './analysis-fixtures.ts'
import { value } from './check.ts'

const range = (low: number, typical: number, high: number): Range => ({ low, typical, high })
const codes = (outcome: { ok: boolean; faults?: readonly { field: string; code: string }[] }) =>
  outcome.faults?.map(({ field, code }) => `${field} ${code}`) ?? []
const percents = (shares: readonly { percent: Range }[] | null) =>
  shares?.map(({ percent }) => percent.typical)

describe('readJar(input)', () => {
  const jar = { sandMm: 60, siltMm: 25, clayMm: 15, markMm: 2 }

  test('gives shares of the settled depth, wider than the marks allow to know', () => {
    const { byVolume, byMass } = value(readJar(jar))
    expect(percents(byVolume)).toEqual([60, 25, 15])
    expect(byVolume[2]?.percent.low).toBeLessThan(14)
    expect(byVolume[2]?.percent.high).toBeGreaterThan(16)
    expect(byMass).toBeNull()
  })

  test('gives less clay by mass than by depth where it settled loose', () => {
    const settled = { sand: exactly(1600), silt: exactly(1300), clay: exactly(700) }
    const byMass = value(readJar({ ...jar, settled })).byMass
    expect(byMass?.[2]?.percent.typical).toBeLessThan(15)
    expect(percents(byMass)?.reduce((sum, percent) => sum + percent, 0)).toBeCloseTo(100, 9)
  })

  test('copes with a layer that is not there and refuses an empty jar', () => {
    expect(percents(value(readJar({ ...jar, clayMm: 0 })).byVolume)?.[2]).toBe(0)
    expect(codes(readJar({ sandMm: 0, siltMm: 0, clayMm: 0, markMm: 0 }))).toEqual(['sandMm empty'])
    expect(codes(readJar({ ...jar, markMm: 50 }))).toEqual(['markMm too-large'])
  })
})

describe('readWetSieve(input)', () => {
  test('calls fines what neither sieve keeps', () => {
    const { shares } = value(readWetSieve({ dryG: 500, gravelG: 50, sandG: 300 }))
    expect(percents(shares)).toEqual([10, 60, 30])
  })

  test('refuses more kept than was there', () => {
    expect(codes(readWetSieve({ dryG: 100, gravelG: 60, sandG: 60 }))).toEqual(['sandG too-large'])
  })
})

describe('readHydrometer(input)', () => {
  const base: HydrometerInput = {
    massG: 50,
    finesPercent: exactly(60),
    finesOnly: true,
    particleDensityKgM3: exactly(2650),
    blankGL: exactly(2),
    meniscusGL: 0,
    readings: [
      { minutes: 1, readingGL: 42, celsius: 20 },
      { minutes: 60, readingGL: 22, celsius: 20 },
      { minutes: 1440, readingGL: 12, celsius: 20 },
    ],
  }

  test('parts fines into silt and clay at 2 µm, which add up to the fines', () => {
    const { points, shares } = value(readHydrometer(base))
    expect(points[0]?.finer.typical).toBeCloseTo(((42 - 2) / 50) * 60, 9)
    expect(points[2]?.sizeMm.typical).toBeLessThan(0.002)
    const [clay = 0, silt = 0] = percents(shares) ?? []
    expect(clay).toBeGreaterThan(12)
    expect(clay).toBeLessThan(24)
    expect(clay + silt).toBeCloseTo(60, 9)
  })

  test('gives no share where the last reading came before 2 µm had settled', () => {
    expect(value(readHydrometer({ ...base, readings: base.readings.slice(0, 2) })).shares).toBeNull()
  })

  test('counts a reading of heavier particles for more than the mark says of them', () => {
    const heavy = value(readHydrometer({ ...base, particleDensityKgM3: exactly(2800) }))
    expect(heavy.points[0]?.finer.typical).toBeLessThan(48)
  })

  test('refuses readings that rise, times that stand still, and a mass too small for them', () => {
    const [first, second] = base.readings
    if (first === undefined || second === undefined) throw new Error('fixture')
    expect(codes(readHydrometer({ ...base, readings: [second, { ...first, minutes: 90 }] }))).toEqual([
      'readings.1.readingGL out-of-order',
    ])
    expect(codes(readHydrometer({ ...base, readings: [first, { ...second, minutes: 1 }] }))).toEqual([
      'readings.1.minutes out-of-order',
    ])
    expect(codes(readHydrometer({ ...base, massG: 10, finesOnly: false }))).toEqual(['massG inconsistent'])
    expect(codes(readHydrometer({ ...base, readings: [first] }))).toEqual(['readings too-small'])
  })
})

describe('amendSoil(input)', () => {
  const base = {
    clayPercent: exactly(30),
    additionClayPercent: exactly(0),
    targetClayPercent: 10,
    soilDensityKgM3: exactly(1250),
    additionDensityKgM3: exactly(1600),
  }

  test('adds two of sand to one of a soil with three times the clay wanted, and less by volume', () => {
    expect(value(amendSoil(base)).perSoilByMass.typical).toBe(2)
    expect(value(amendSoil(base)).perSoilByVolume.typical).toBeCloseTo((2 * 1250) / 1600, 12)
  })

  test('makes what it was asked for', () => {
    const r = value(amendSoil({ ...base, additionClayPercent: exactly(3), targetClayPercent: 12 }))
      .perSoilByMass.typical
    expect((30 + 3 * r) / (1 + r)).toBeCloseTo(12, 12)
  })

  test('adds a fatter soil to a lean one too, and nothing to one that is right', () => {
    expect(
      value(
        amendSoil({
          ...base,
          clayPercent: exactly(5),
          additionClayPercent: exactly(40),
          targetClayPercent: 12,
        }),
      ).perSoilByMass.typical,
    ).toBeCloseTo(7 / 28, 12)
    expect(value(amendSoil({ ...base, targetClayPercent: 30 })).perSoilByMass.typical).toBe(0)
  })

  test('refuses a target that the two do not lie on both sides of', () => {
    expect(codes(amendSoil({ ...base, targetClayPercent: 40 }))).toEqual(['targetClayPercent inconsistent'])
    expect(codes(amendSoil({ ...base, additionClayPercent: range(5, 8, 12) }))).toEqual([
      'targetClayPercent inconsistent',
    ])
  })
})

describe('readShrinkage(input)', () => {
  const bars = [
    { additionPerSoil: 0, gapMm: 30 },
    { additionPerSoil: 1, gapMm: 12 },
    { additionPerSoil: 2, gapMm: 6 },
  ]

  test('gives % of the box and reads the addition that just meets what is allowed', () => {
    const found = value(readShrinkage({ boxMm: 600, bars, markMm: 1, allowedPercent: 3.5 }))
    expect(found.bars.map(({ percent }) => percent.typical)).toEqual([5, 2, 1])
    expect(found.leastAddition).toBeCloseTo(0.5, 12)
  })

  test('answers null where no bar meets it and the first addition where the first does', () => {
    expect(
      value(readShrinkage({ boxMm: 600, bars, markMm: 1, allowedPercent: 0.5 })).leastAddition,
    ).toBeNull()
    expect(value(readShrinkage({ boxMm: 600, bars, markMm: 1, allowedPercent: 6 })).leastAddition).toBe(0)
    expect(value(readShrinkage({ boxMm: 600, bars, markMm: 1 })).leastAddition).toBeNull()
  })

  test('refuses a gap longer than half the box and additions out of order', () => {
    expect(codes(readShrinkage({ boxMm: 50, bars: [{ additionPerSoil: 0, gapMm: 30 }], markMm: 1 }))).toEqual(
      ['bars.0.gapMm too-large'],
    )
    expect(codes(readShrinkage({ boxMm: 600, bars: [...bars].reverse(), markMm: 1 }))).toEqual([
      'bars.1.additionPerSoil out-of-order',
      'bars.2.additionPerSoil out-of-order',
    ])
  })
})

describe('limeOnSoil(input)', () => {
  const base: SoilLimeInput = {
    soilL: exactly(1000),
    soilDensityKgM3: exactly(1250),
    percent: exactly(5),
    by: 'mass',
    state: 'ground-quicklime',
    lime: limeOf({ freeCaO: 0.9 }),
  }
  const found = value(limeOnSoil(base))
  const state = (name: string) => found.states.find((row) => row.state === name)

  test('turns 5 % of quicklime by mass into every state, by mass and volume', () => {
    expect(state('ground-quicklime')?.massKg.typical).toBeCloseTo(62.5, 9)
    expect(state('dry-hydrate')?.massKg.typical).toBeCloseTo(62.5 * (1 + 0.9 * 0.32126), 2)
    expect(state('dry-hydrate')?.volumeL.typical).toBeCloseTo((62.5 * (1 + 0.9 * 0.32126)) / 0.48, 1)
    expect(state('lump-quicklime')?.volumeL.typical).toBeCloseTo(62.5 / 0.85, 9)
  })

  test('comes back to where it started from any state and measure', () => {
    for (const row of found.states)
      for (const by of ['mass', 'volume'] as const) {
        const percent = by === 'mass' ? row.percentByMass : row.percentByVolume
        const back = value(limeOnSoil({ ...base, by, state: row.state, percent: exactly(percent.typical) }))
        expect(back.states[1]?.massKg.typical).toBeCloseTo(62.5, 9)
      }
  })

  test('gives fibre by mass, and by volume where its density is known', () => {
    expect(found.fibreKg).toBeNull()
    const fibre = value(limeOnSoil({ ...base, fibreKgM3: exactly(12) }))
    expect(fibre.fibreKg?.typical).toBeCloseTo(12, 9)
    expect(fibre.fibreL).toBeNull()
    expect(
      value(limeOnSoil({ ...base, fibreKgM3: exactly(12), fibreDensityKgM3: exactly(60) })).fibreL?.typical,
    ).toBeCloseTo(200, 9)
  })

  test('refuses no soil, no dose and a lime without its densities', () => {
    expect(codes(limeOnSoil({ ...base, soilL: exactly(0), percent: exactly(0) }))).toEqual([
      'soilL not-positive',
      'percent not-positive',
    ])
    expect(codes(limeOnSoil({ ...base, lime: {} })).length).toBe(6)
  })
})
