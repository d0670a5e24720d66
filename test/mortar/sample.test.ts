import { describe, expect, test } from 'vitest'
import { exactly, type Range } from '#lib/mortar/range.ts'
import { analyseSample, type SampleInput } from '#lib/mortar/sample.ts'
import { rankNearest } from '#lib/mortar/sample-nearest.ts'
import { limeOf } from './analysis-fixtures.ts'
import { value } from './check.ts'
import { expectWorking } from './working.ts'

const none = exactly(0)
const range = (low: number, typical: number, high: number): Range => ({ low, typical, high })
const SAMPLE: SampleInput = {
  sampleG: 20,
  aggregateG: 15.6,
  finesG: 0,
  fines: 'aggregate',
  calcareousShare: none,
  carbonation: exactly(1),
  otherSolubleShare: none,
  lime: limeOf({}),
  aggregate: { bulkDensity: { ...exactly(1600), unit: 'kg/m3', basis: 'read' } },
}
const analyse = (change: Partial<SampleInput> = {}) => value(analyseSample({ ...SAMPLE, ...change }))
const volume = (change: Partial<SampleInput>, state = 'putty') =>
  analyse(change).ratios.find((ratio) => ratio.state === state)?.byVolume ?? exactly(Number.NaN)
const faultsOf = (change: Partial<SampleInput>) => {
  const outcome = analyseSample({ ...SAMPLE, ...change })
  return outcome.ok ? [] : outcome.faults.map(({ field, code }) => `${field} ${code}`)
}

describe('analyseSample(input)', () => {
  test('reads 4.40 g dissolved of 20 g as 1 : 1.44 dry hydrate, 1 : 1.89 putty and 1 : 3.36 lump', () => {
    expect(analyse().hydrateG.typical).toBeCloseTo(3.257, 3)
    expect(analyse().caoG.typical).toBeCloseTo(2.465, 3)
    expect(volume({}, 'dry-hydrate').typical).toBeCloseTo(1.44, 2)
    expect(volume({}, 'putty').typical).toBeCloseTo(1.89, 2)
    expect(volume({}, 'lump-quicklime').typical).toBeCloseTo(3.36, 2)
    expect(analyse().ratios.find(({ state }) => state === 'dry-hydrate')?.byMass.typical).toBeCloseTo(4.79, 2)
  })

  test('prints working that comes to its result, with CO2 from lime and rock alike or without', () => {
    const lime = { calcareousShare: exactly(0.05), otherSolubleShare: exactly(0.01) }
    for (const change of [lime, { ...lime, co2G: exactly(1) }, { ...lime, co2G: exactly(0.1) }])
      for (const step of analyse(change).steps) expectWorking(step)
  })

  test('finds more lime where less of it has carbonated: what dissolves is lighter', () => {
    expect(analyse({ carbonation: exactly(0) }).hydrateG.typical).toBeCloseTo(4.4, 12)
    expect(volume({ carbonation: exactly(0.5) }).typical).toBeLessThan(volume({}).typical)
  })

  test('takes the degree of carbonation from CO2 where that was measured, whatever was assumed', () => {
    const half = 3 * 0.5
    const co2 = half * (44.009 / 74.092)
    const sampleG = 15.6 + (3 - half) + half * (100.086 / 74.092)
    const found = analyse({ sampleG, co2G: exactly(co2), carbonation: exactly(1) })
    expect(found.hydrateG.typical).toBeCloseTo(3, 4)
    expect(found.carbonation.typical).toBeCloseTo(0.5, 4)
    expect(found.doubts).toContain('full-carbonation-hides-limestone')
    expect(found.doubts).not.toContain('carbonation-assumed')
  })

  test('puts soluble aggregate back and takes it from the lime', () => {
    const shelly = analyse({ calcareousShare: exactly(0.1) })
    expect(shelly.aggregateG.typical).toBeCloseTo(15.6 / 0.9, 9)
    expect(shelly.hydrateG.typical).toBeLessThan(analyse().hydrateG.typical)
  })

  test('counts fines as aggregate, as clay or as binder, and says what acid cannot tell of earth', () => {
    const fines = { aggregateG: 14, finesG: 1.6 }
    expect(analyse({ ...fines, fines: 'aggregate' }).clayPercent).toBeNull()
    const earth = analyse({ ...fines, fines: 'clay' })
    expect(earth.clayPercent?.typical).toBeCloseTo((100 * 1.6) / (15.6 + 4.4 * 0.74028), 2)
    expect(earth.aggregateG.typical).toBeCloseTo(14, 9)
    expect(earth.doubts).toEqual(
      expect.arrayContaining([
        'earth-clay-or-brick-dust',
        'earth-chalky-soil-or-lime',
        'earth-lime-bound-by-clay',
      ]),
    )
    expect(volume({ ...fines, fines: 'binder' }).typical).toBeLessThan(
      volume({ ...fines, fines: 'clay' }).typical,
    )
  })

  test('ranges hold the typical value and widen with an assumption', () => {
    const narrow = volume({ carbonation: range(0.9, 0.95, 1) })
    const wide = volume({ carbonation: range(0.5, 0.95, 1) })
    expect(narrow.low).toBeLessThanOrEqual(narrow.typical)
    expect(narrow.high).toBeGreaterThanOrEqual(narrow.typical)
    expect(wide.low).toBeLessThan(narrow.low)
  })

  test('a larger sample of the same mortar reads the same', () => {
    const scaled = volume({ sampleG: 200, aggregateG: 156 })
    expect(scaled.typical).toBeCloseTo(volume({}).typical, 9)
  })

  test('refuses what does not fit into the sample, naming what is too much', () => {
    expect(faultsOf({ aggregateG: 21 })).toEqual(['aggregateG too-large'])
    expect(faultsOf({ aggregateG: 20 })).toEqual(['aggregateG too-large'])
    expect(faultsOf({ calcareousShare: range(0, 0.1, 0.4) })).toEqual(['calcareousShare too-large'])
    expect(faultsOf({ otherSolubleShare: range(0, 0.1, 0.3) })).toEqual(['otherSolubleShare too-large'])
    expect(faultsOf({ co2G: exactly(2.5) })).toEqual(['co2G too-large'])
    expect(faultsOf({ aggregateG: 0 })).toEqual(['aggregateG empty'])
  })

  test('refuses a lime without the properties it needs, all named', () => {
    expect(faultsOf({ lime: {} })).toEqual([
      'lime.freeCaO empty',
      'lime.bulkDensityLump empty',
      'lime.bulkDensityGround empty',
      'lime.bulkDensityHydrate empty',
      'lime.puttyDensity empty',
      'lime.particleDensityHydrate empty',
    ])
    expect(faultsOf({ lime: limeOf({ freeCaO: 0 }) })).toEqual(['lime.freeCaO not-positive'])
  })
})

describe('rankNearest(ratios, rows)', () => {
  const ratios = [{ state: 'putty' as const, byVolume: range(1.7, 2, 2.3) }]
  const row = (
    id: string,
    low: number,
    typical: number,
    high: number,
    state: 'putty' | 'dry-hydrate' = 'putty',
  ) => ({
    id,
    state,
    aggregatePerLime: range(low, typical, high),
  })

  test('puts rows that share a proportion first, then by how many times leaner or richer', () => {
    const found = rankNearest(ratios, [row('far', 4, 4, 4), row('near', 2.4, 2.4, 2.4), row('wide', 1, 3, 5)])
    expect(found.map(({ id }) => id)).toEqual(['wide', 'near', 'far'])
    expect(found[0]?.leanness).toBe(1.5)
  })

  test('leaves out rows of a state that the sample was not read in, and answers nothing to nothing', () => {
    expect(rankNearest(ratios, [row('dry', 1, 1, 1, 'dry-hydrate')])).toEqual([])
    expect(rankNearest([], [row('a', 1, 1, 1)])).toEqual([])
  })

  test('holds half and double equally far, in the order given', () => {
    expect(rankNearest(ratios, [row('lean', 4, 4, 4), row('rich', 1, 1, 1)]).map(({ id }) => id)).toEqual([
      'lean',
      'rich',
    ])
  })
})
