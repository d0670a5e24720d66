import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { countCarbon } from '#lib/mortar/carbon.ts'
import { classifyLime } from '#lib/mortar/chemistry.ts'
import { carbonate } from '#lib/mortar/cure.ts'
import { dryEarth } from '#lib/mortar/drying.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { assessFrost } from '#lib/mortar/frost.ts'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { exactly, isRange, type Range } from '#lib/mortar/range.ts'
import { analyseSample, FINES_KINDS } from '#lib/mortar/sample.ts'
import { gradeSand } from '#lib/mortar/sieve.ts'
import { blendSands } from '#lib/mortar/sieve-blend.ts'
import { readJar } from '#lib/mortar/subsoil.ts'
import { amendSoil } from '#lib/mortar/subsoil-blend.ts'
import { readHydrometer } from '#lib/mortar/subsoil-hydrometer.ts'
import { limeOnSoil } from '#lib/mortar/subsoil-lime.ts'
import { readShrinkage } from '#lib/mortar/subsoil-shrinkage.ts'
import { curveOf, grade, limeOf, passingOf } from './analysis-fixtures.ts'
import { value } from './check.ts'

const RUNS = { numRuns: 60, seed: 20261125 }
const ASTM = [4.75, 2.36, 1.18, 0.6, 0.3, 0.15]

/** Whatever a form or a program may send: numbers of every kind, the broken ones too. */
const wild = fc.oneof(
  fc.double({ min: -10, max: 200 }),
  fc.constantFrom(
    0,
    -0,
    1,
    100,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    1e308,
    5e-324,
  ),
)
const wildRange: fc.Arbitrary<Range> = fc.oneof(
  wild.map(exactly),
  fc.record({ low: wild, typical: wild, high: wild }),
  fc.tuple(wild, wild, wild).map((three) => {
    const [low = 0, typical = 0, high = 0] = [...three].sort((a, b) => a - b)
    return { low, typical, high }
  }),
)
const positive = fc.double({ min: 0.5, max: 100, noNaN: true })

/** Every number anywhere in a value is finite, and every range in order. */
function expectSound(found: unknown): void {
  if (typeof found === 'number') expect(Number.isFinite(found)).toBe(true)
  if (typeof found !== 'object' || found === null) return
  if ('low' in found && 'typical' in found && 'high' in found) expect(isRange(found as Range)).toBe(true)
  for (const inner of Object.values(found)) expectSound(inner)
}

/** Either a sound value, or faults that each name a field. */
function expectAnswer(outcome: Outcome<unknown>): void {
  if (outcome.ok) {
    expectSound(outcome.value)
    return
  }
  expect(outcome.faults.length).toBeGreaterThan(0)
  for (const fault of outcome.faults) expect(fault.field).not.toBe('')
}

describe('whatever is given, an answer is sound or names what is wrong', () => {
  const one = fc.constantFrom(1 as const, 2 as const)
  const sums: Readonly<Record<string, fc.Arbitrary<() => Outcome<unknown>>>> = {
    gradeSand: fc
      .record({
        openings: fc.array(wild, { maxLength: 5 }),
        masses: fc.array(wild, { maxLength: 6 }),
        balanceG: wild,
      })
      .map(
        ({ openings, masses, balanceG }) =>
          () =>
            gradeSand({ ...grade(openings, masses), balanceG }),
      ),
    blendSands: fc
      .record({
        first: fc.array(wild, { maxLength: 4 }),
        second: fc.array(wild, { maxLength: 4 }),
        target: wild,
      })
      .map(
        ({ first, second, target }) =>
          () =>
            blendSands({
              sands: [
                { curve: curveOf(ASTM.slice(0, 4), first) },
                { curve: curveOf(ASTM.slice(0, 4), second) },
              ],
              target: [{ openingMm: 1.18, passing: target }],
            }),
      ),
    analyseSample: fc
      .record({
        sampleG: wild,
        aggregateG: wild,
        finesG: wild,
        fines: fc.constantFrom(...FINES_KINDS),
        balanceG: wild,
        co2G: fc.option(wildRange, { nil: undefined }),
        calcareousShare: wildRange,
        carbonation: wildRange,
        otherSolubleShare: wildRange,
        freeCaO: wild,
        puttyDensity: fc.oneof(wild, fc.constant(1350)),
      })
      .map(
        ({ freeCaO, puttyDensity, ...sample }) =>
          () =>
            analyseSample({
              ...sample,
              lime: limeOf({ freeCaO, puttyDensity }),
              aggregate: { bulkDensity: { ...exactly(1600), unit: 'kg/m3', basis: 'read' } },
            }),
      ),
    classifyLime: fc
      .record({
        sio2: wildRange,
        al2o3: wildRange,
        fe2o3: wildRange,
        cao: wildRange,
        mgo: wildRange,
        clayInStone: wildRange,
      })
      .map((input) => () => classifyLime(input)),
    carbonate: fc
      .record({
        kMmPerRootDay: wildRange,
        depthMm: wildRange,
        faces: one,
        ages: fc.array(wild, { maxLength: 3 }),
      })
      .map((input) => () => carbonate(input)),
    dryEarth: fc
      .record({
        thicknessMm: wildRange,
        densityKgM3: wildRange,
        moistureAtStart: wildRange,
        moistureAtEnd: wildRange,
        lossKgM2Day: wildRange,
        faces: one,
      })
      .map((input) => () => dryEarth(input)),
    assessFrost: fc
      .record({
        dailyLowsC: fc.array(fc.option(wild), { maxLength: 9 }),
        protectDays: wildRange,
        coldLimitC: wild,
        marginK: wild,
      })
      .map((input) => () => assessFrost(input)),
    countCarbon: fc
      .record({
        mortarL: wildRange,
        massKg: wildRange,
        caoShare: wildRange,
        uptakeShare: wildRange,
        year: wild,
      })
      .map(
        ({ massKg, caoShare, year, ...rest }) =>
          () =>
            countCarbon({
              ...rest,
              limes: [
                {
                  massKg,
                  caoShare,
                  mgoShare: exactly(0),
                  fuelKgPerKg: exactly(0.3),
                  distanceKm: exactly(10),
                },
              ],
              others: [],
              transportKgPerTkm: exactly(0.1),
              kMmPerRootDay: exactly(0.3),
              depthMm: exactly(20),
              years: [year],
            }),
      ),
    readJar: fc
      .record({ sandMm: wild, siltMm: wild, clayMm: wild, markMm: wild })
      .map((input) => () => readJar(input)),
    readHydrometer: fc
      .record({
        massG: wild,
        finesPercent: wildRange,
        density: wildRange,
        blankGL: wildRange,
        minutes: wild,
        reading: wild,
      })
      .map(
        ({ density, minutes, reading, ...rest }) =>
          () =>
            readHydrometer({
              ...rest,
              finesOnly: true,
              particleDensityKgM3: density,
              meniscusGL: 0,
              readings: [
                { minutes: 1, readingGL: 40, celsius: 20 },
                { minutes, readingGL: reading, celsius: 20 },
              ],
            }),
      ),
    amendSoil: fc
      .record({ clayPercent: wildRange, additionClayPercent: wildRange, targetClayPercent: wild })
      .map(
        (input) => () =>
          amendSoil({ ...input, soilDensityKgM3: exactly(1250), additionDensityKgM3: exactly(1600) }),
      ),
    readShrinkage: fc
      .record({ boxMm: wild, markMm: wild, allowedPercent: wild, gapMm: wild, additionPerSoil: wild })
      .map(
        ({ gapMm, additionPerSoil, ...rest }) =>
          () =>
            readShrinkage({
              ...rest,
              bars: [
                { additionPerSoil: 0, gapMm: 5 },
                { additionPerSoil, gapMm },
              ],
            }),
      ),
    limeOnSoil: fc
      .record({
        soilL: wildRange,
        soilDensityKgM3: wildRange,
        percent: wildRange,
        state: fc.constantFrom(...LIME_STATES),
      })
      .map((input) => () => limeOnSoil({ ...input, by: 'volume', lime: limeOf({ freeCaO: 0.9 }) })),
  }

  test.each(Object.entries(sums))('%s(…)', (_, arbitrary) => {
    fc.assert(
      fc.property(arbitrary, (calculate) => expectAnswer(calculate())),
      RUNS,
    )
  })
})

describe('gradeSand(input)', () => {
  const masses = fc.array(fc.double({ min: 0.1, max: 500, noNaN: true }), { minLength: 7, maxLength: 7 })

  test('reads the same from any amount of one sand', () => {
    fc.assert(
      fc.property(masses, positive, (retained, factor) => {
        const once = value(gradeSand(grade(ASTM, retained)))
        const more = value(
          gradeSand(
            grade(
              ASTM,
              retained.map((mass) => mass * factor),
            ),
          ),
        )
        for (let row = 0; row < ASTM.length; row++)
          expect(passingOf(more, row)).toBeCloseTo(passingOf(once, row), 9)
        expect(more.finenessModuli[0]?.value.typical).toBeCloseTo(
          once.finenessModuli[0]?.value.typical ?? 0,
          9,
        )
      }),
      RUNS,
    )
  })

  test('never lets more pass a finer sieve, and D grows with the share', () => {
    fc.assert(
      fc.property(masses, (retained) => {
        const found = value(gradeSand(grade(ASTM, retained)))
        for (let row = 1; row < ASTM.length; row++)
          expect(passingOf(found, row)).toBeLessThanOrEqual(passingOf(found, row - 1))
        const mm = [found.d10, found.d30, found.d50, found.d60].map((size) =>
          size.kind === 'size' ? size.mm.typical : size.mm,
        )
        expect([...mm].sort((a, b) => a - b)).toEqual(mm)
      }),
      RUNS,
    )
  })
})

describe('blendSands(input)', () => {
  const falling = fc
    .array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 6, maxLength: 6 })
    .map((passing) => [...passing].sort((a, b) => b - a))

  test('shares are none below nothing and add up to one, and no single sand comes nearer', () => {
    fc.assert(
      fc.property(fc.array(falling, { minLength: 2, maxLength: 5 }), falling, (sands, wanted) => {
        const target = ASTM.map((openingMm, i) => ({ openingMm, passing: wanted[i] ?? 0 }))
        const blend = value(
          blendSands({ sands: sands.map((passing) => ({ curve: curveOf(ASTM, passing) })), target }),
        )
        for (const share of blend.shares) expect(share.typical).toBeGreaterThanOrEqual(0)
        expect(blend.shares.reduce((sum, share) => sum + share.typical, 0)).toBeCloseTo(1, 9)
        for (const passing of sands) {
          const alone = passing.reduce((sum, share, i) => sum + (share - (wanted[i] ?? 0)) ** 2, 0)
          expect(blend.residual.typical).toBeLessThanOrEqual(Math.sqrt(alone / ASTM.length) + 1e-4)
        }
      }),
      RUNS,
    )
  })
})

describe('analyseSample(input)', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true })

  test('finds again the lime and sand that a sample was made of, with CO2 and without', () => {
    fc.assert(
      fc.property(
        positive,
        positive,
        share,
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (lime, sand, carbonated, freeCaO) => {
          const hydrate = lime
          const gained = hydrate * (1 + ((44.009 - 18.015) / 74.092) * carbonated)
          const sample = {
            sampleG: sand + gained,
            aggregateG: sand,
            finesG: 0,
            fines: 'aggregate' as const,
            calcareousShare: exactly(0),
            otherSolubleShare: exactly(0),
            lime: limeOf({ freeCaO }),
            aggregate: { bulkDensity: { ...exactly(1600), unit: 'kg/m3', basis: 'read' as const } },
          }
          const assumed = value(analyseSample({ ...sample, carbonation: exactly(carbonated) }))
          const co2G = exactly(hydrate * carbonated * (44.009 / 74.092))
          const measured = value(analyseSample({ ...sample, carbonation: exactly(0.5), co2G }))
          expect(assumed.hydrateG.typical / hydrate).toBeCloseTo(1, 6)
          expect(measured.hydrateG.typical / hydrate).toBeCloseTo(1, 6)
          expect(measured.carbonation.typical).toBeCloseTo(carbonated, 5)
        },
      ),
      RUNS,
    )
  })

  test('gives every state the same sand for the lime that makes it', () => {
    fc.assert(
      fc.property(positive, positive, (lime, sand) => {
        const { ratios, caoG } = value(
          analyseSample({
            sampleG: lime + sand,
            aggregateG: sand,
            finesG: 0,
            fines: 'aggregate',
            calcareousShare: exactly(0),
            carbonation: exactly(1),
            otherSolubleShare: exactly(0),
            lime: limeOf({ freeCaO: 0.9 }),
            aggregate: { bulkDensity: { ...exactly(1600), unit: 'kg/m3', basis: 'read' } },
          }),
        )
        const [lump, ground, hydrate] = ratios.map((ratio) => sand / ratio.byMass.typical)
        expect(lump).toBeCloseTo(ground ?? 0, 9)
        expect((lump ?? 0) * 0.9).toBeCloseTo(caoG.typical, 9)
        expect(hydrate).toBeCloseTo((lump ?? 0) * (1 + 0.9 * (18.015 / 56.077)), 6)
      }),
      RUNS,
    )
  })

  test('a wider assumption gives no narrower answer', () => {
    const spreadOf = (low: number, high: number) => {
      const { ratios } = value(
        analyseSample({
          sampleG: 20,
          aggregateG: 15,
          finesG: 0,
          fines: 'aggregate',
          calcareousShare: { low: 0, typical: 0.02, high },
          carbonation: { low, typical: 0.9, high: 1 },
          otherSolubleShare: exactly(0),
          lime: limeOf({ freeCaO: 0.9 }),
          aggregate: { bulkDensity: { ...exactly(1600), unit: 'kg/m3', basis: 'read' } },
        }),
      )
      return (ratios[3]?.byVolume.high ?? 0) - (ratios[3]?.byVolume.low ?? 0)
    }
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 0.02, max: 0.1, noNaN: true }),
        (low, high) => {
          expect(spreadOf(low * 0.9, high * 1.1)).toBeGreaterThanOrEqual(spreadOf(low, high) * (1 - 1e-9))
        },
      ),
      { ...RUNS, numRuns: 10 },
    )
  })
})
