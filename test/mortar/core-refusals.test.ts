import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FAULT_CODES, type Fault, type Outcome } from '#lib/mortar/fault.ts'
import { workJob } from '#lib/mortar/job.ts'
import type { JobInput } from '#lib/mortar/job-types.ts'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { restateRecipe } from '#lib/mortar/restate.ts'
import { bulkingByMoisture, bulkingFromJar } from '#lib/mortar/sand-bulking.ts'
import { correctMoisture } from '#lib/mortar/sand-moisture.ts'
import { leanestProportion, voidsFromDensities, voidsFromWater } from '#lib/mortar/sand-voids.ts'
import { slakeBatch } from '#lib/mortar/slaking.ts'
import { takeOff, WORK_KINDS, type Work, workFields } from '#lib/mortar/takeoff.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { known, lime, part, RANGED_LIME, RANGED_SAND, sand } from './core-fixtures.ts'

const faults = (outcome: Outcome<unknown>): readonly Fault[] => (outcome.ok ? [] : outcome.faults)
const fields = (outcome: Outcome<unknown>) => faults(outcome).map(({ field, code }) => `${field}: ${code}`)

const GOOD: JobInput = {
  ingredients: [lime(1, 'putty'), sand(3)],
  materials: { lime: RANGED_LIME, sand: RANGED_SAND },
  method: 'putty',
  work: { kind: 'pointing', areaM2: 10, unitLengthMm: 215, unitHeightMm: 65, jointMm: 10, depthMm: 25 },
  draws: 20,
}
const job = (over: object) => fields(workJob({ ...GOOD, ...over }))

describe('workJob names every field that it refuses', () => {
  test.each<[string, object, string]>([
    ['no ingredient', { ingredients: [] }, 'ingredients: empty'],
    ['parts of nothing', { ingredients: [lime(0, 'putty'), sand(3)] }, 'ingredients.0.parts: not-positive'],
    ['negative parts', { ingredients: [lime(1, 'putty'), sand(-3)] }, 'ingredients.1.parts: not-positive'],
    [
      'parts that are no number',
      { ingredients: [lime(Number.NaN, 'putty')] },
      'ingredients.0.parts: not-a-number',
    ],
    [
      'parts out of order',
      { ingredients: [{ ...lime(1, 'putty'), parts: { low: 3, high: 1 } }] },
      'ingredients.0.parts: out-of-order',
    ],
    [
      'parts not stated',
      { ingredients: [{ ...lime(1, 'putty'), parts: null }, sand(3)] },
      'ingredients.0.parts: empty',
    ],
    [
      'a material that is not there',
      { ingredients: [part('slag', 'aggregate', 1)] },
      'ingredients.0.material: unknown',
    ],
    [
      'a density that is missing',
      { materials: { ...GOOD.materials, lime: known({ freeCaO: 0.9 }) } },
      'materials.lime.puttyDensity: unknown',
    ],
    [
      'a particle density that is missing',
      { materials: { ...GOOD.materials, sand: known({ bulkDensity: 1500 }) } },
      'materials.sand.particleDensity: unknown',
    ],
    [
      'a share over one',
      { materials: { ...GOOD.materials, lime: { ...RANGED_LIME, ...known({ freeCaO: 1.2 }) } } },
      'materials.lime.freeCaO: too-large',
    ],
    [
      'putty lighter than water',
      { materials: { ...GOOD.materials, lime: { ...RANGED_LIME, ...known({ puttyDensity: 990 }) } } },
      'materials.lime.puttyDensity: too-small',
    ],
    ['a state left open', { ingredients: [lime(1, 'not-stated'), sand(3)] }, 'limeState: empty'],
    [
      'a state that the lime does not come in',
      {
        limeState: 'lump-quicklime',
        materials: { ...GOOD.materials, lime: known({ freeCaO: 0.3, puttyDensity: 1400 }) },
      },
      'limeState: inconsistent',
    ],
    ['an unknown method', { method: 'shaken' }, 'method: unknown'],
    ['moisture over saturation', { sandMoisturePercent: 30 }, 'sandMoisturePercent: too-large'],
    ['loss below nothing', { lossPercent: -1 }, 'lossPercent: negative'],
    ['purity of nothing', { limePurityPercent: 0 }, 'limePurityPercent: not-positive'],
    ['frozen water', { waterC: -5 }, 'waterC: negative'],
    ['a box of nothing', { gaugeBoxL: 0 }, 'gaugeBoxL: not-positive'],
    ['a pack of nothing', { packsKg: { lime: 0 } }, 'packsKg.lime: not-positive'],
    ['a price below nothing', { packPrices: { lime: -1 } }, 'packPrices.lime: negative'],
    ['work without a dimension', { work: { kind: 'pointing', areaM2: 10 } }, 'work.jointMm: empty'],
    [
      'openings larger than the wall',
      { work: { ...GOOD.work, openingsM2: 12 } },
      'work.openingsM2: too-large',
    ],
    ['a dimension that it does not have', { work: { ...GOOD.work, breadthM: 1 } }, 'work.breadthM: unknown'],
    ['an unknown kind', { work: { kind: 'thatching' } }, 'work.kind: unknown'],
    [
      'half a coat',
      { work: { kind: 'limewash', areaM2: 5, coats: 2.5, coverLPerM2: 0.2 } },
      'work.coats: inconsistent',
    ],
    [
      'headers in half a brick',
      {
        work: {
          kind: 'bedding-brick',
          areaM2: 5,
          brickLengthMm: 215,
          brickHeightMm: 65,
          brickWidthMm: 102.5,
          jointMm: 10,
          halfBricks: 1,
          headerShare: 0.5,
        },
      },
      'work.headerShare: too-large',
    ],
    [
      'stones deeper than the wall',
      {
        work: {
          kind: 'bedding-squared',
          areaM2: 5,
          thicknessMm: 300,
          unitLengthMm: 300,
          unitHeightMm: 150,
          unitDepthMm: 400,
          jointMm: 15,
        },
      },
      'work.unitDepthMm: too-large',
    ],
    [
      'pointing deeper than the packing',
      { work: { kind: 'deep-packing', areaM2: 5, jointShare: 0.2, depthMm: 80, pointingDepthMm: 90 } },
      'work.pointingDepthMm: too-large',
    ],
  ])('%s', (_, over, fault) => {
    expect(job(over)).toContain(fault)
  })

  test('all at once', () => {
    expect(job({ lossPercent: -1, gaugeBoxL: 0, ingredients: [] }).sort()).toEqual([
      'gaugeBoxL: not-positive',
      'ingredients: empty',
      'lossPercent: negative',
    ])
  })

  test('nothing where nothing is wrong', () => {
    expect(job({})).toEqual([])
  })
})

describe('the small sums refuse too', () => {
  test.each<[string, Outcome<unknown>, string]>([
    ['flooded higher than damp', bulkingFromJar({ dampMm: 100, floodedMm: 120 }), 'floodedMm: too-large'],
    ['a jar of nothing', bulkingFromJar({ dampMm: 0, floodedMm: 0 }), 'dampMm: not-positive'],
    [
      'wetter than saturated',
      bulkingByMoisture({
        moisturePercent: 25,
        peakPercent: 30,
        peakMoisturePercent: 5,
        saturationPercent: 20,
      }),
      'moisturePercent: too-large',
    ],
    [
      'a peak beyond saturation',
      bulkingByMoisture({
        moisturePercent: 5,
        peakPercent: 30,
        peakMoisturePercent: 20,
        saturationPercent: 20,
      }),
      'peakMoisturePercent: too-large',
    ],
    ['more water than sand', voidsFromWater({ sandMl: 100, waterMl: 100 }), 'waterMl: too-large'],
    [
      'heavier in bulk than in the grain',
      voidsFromDensities({ bulkKgM3: 2700, particleKgM3: 2650 }),
      'bulkKgM3: too-large',
    ],
    ['no voids', leanestProportion({ voidsPercent: 0, pasteL: 1 }), 'voidsPercent: not-positive'],
    ['sand below nothing', correctMoisture({ kg: -1, weighed: 'dry', moisturePercent: 5 }), 'kg: negative'],
    [
      'no quicklime',
      slakeBatch({ quicklimeKg: 0, freeCaO: 1, waterKg: 1, waterC: 15 }),
      'quicklimeKg: not-positive',
    ],
    [
      'more than pure',
      slakeBatch({ quicklimeKg: 1, freeCaO: 1.1, waterKg: 1, waterC: 15 }),
      'freeCaO: too-large',
    ],
    [
      'lime without its density',
      convertLime({ amount: 1, unit: 'L', state: 'putty', properties: known({ freeCaO: 1 }) }),
      'properties.puttyDensity: unknown',
    ],
    [
      'lime below nothing',
      convertLime({ amount: -1, unit: 'kg', state: 'putty', properties: RANGED_LIME }),
      'amount: negative',
    ],
    [
      'sand damper than it can be',
      proportions({
        ingredients: [lime(1, 'putty'), sand(3)],
        materials: { lime: RANGED_LIME, sand: RANGED_SAND },
        sandMoisturePercent: 30,
      }),
      'sandMoisturePercent: too-large',
    ],
    [
      'a state that can’t be',
      restateRecipe({
        ingredients: [lime(1, 'dry-hydrate')],
        materials: { lime: known({ freeCaO: 0.3, bulkDensityHydrate: 650 }) },
        as: { limeState: 'putty', aggregate: 'dry', by: 'volume' },
      }),
      'as.limeState: inconsistent',
    ],
    ['a recipe of nothing', proportions({ ingredients: [], materials: {} }), 'ingredients: empty'],
    [
      'a yield without grains’ density',
      yieldOf({ ingredients: [sand(1)], materials: { sand: known({ bulkDensity: 1500 }) } }),
      'materials.sand.particleDensity: unknown',
    ],
  ])('%s', (_, outcome, fault) => {
    expect(fields(outcome)).toContain(fault)
  })
})

// Hundreds of runs: a busy machine takes its time.
describe('no input makes NaN or Infinity', { timeout: 120_000 }, () => {
  const wild = fc.oneof(
    { weight: 6, arbitrary: fc.double({ min: 0, max: 1000, noNaN: true }) },
    fc.constantFrom(0, -1, 1e-12, 1e12, Number.NaN, Number.POSITIVE_INFINITY, 5e-324, Number.MAX_VALUE),
  )
  const wildAmount = fc.oneof(wild, fc.record({ low: wild, typical: wild, high: wild }))
  const property = fc.record({
    low: wild,
    typical: wild,
    high: wild,
    unit: fc.constant('1'),
    basis: fc.constant('memory' as const),
  })
  const ingredient = fc.record({
    material: fc.constantFrom('lime', 'sand', 'odd', 'none', '__proto__', 'constructor'),
    role: fc.constantFrom('lime', 'aggregate', 'pozzolan', 'earth', 'fibre', 'water', 'additive' as const),
    parts: fc.oneof(
      fc.constant(null),
      fc.record({ low: wild, high: wild }),
      fc.double({ min: 0.1, max: 5, noNaN: true }).map((low) => ({ low, high: low * 2 })),
    ),
    by: fc.constantFrom('volume' as const, 'mass' as const),
    state: fc.constantFrom(
      ...LIME_STATES,
      'slaked-not-stated',
      'quicklime-not-stated',
      'dry',
      'damp',
      'not-stated' as const,
    ),
  })
  const work = fc
    .constantFrom(...WORK_KINDS)
    .chain((kind) =>
      fc
        .record(
          Object.fromEntries(
            Object.keys(workFields(kind)).map((name) => [
              name,
              fc.oneof(wildAmount, fc.constant(20), fc.constant(0.5)),
            ]),
          ),
        )
        .map((dims) => ({ kind, ...dims }) as Work),
    )

  const finite = (given: unknown): boolean =>
    typeof given === 'number'
      ? Number.isFinite(given)
      : given === null || typeof given !== 'object' || Object.values(given).every(finite)

  const sound = (outcome: Outcome<unknown>) => {
    if (outcome.ok) expect(finite(outcome.value)).toBe(true)
    else
      for (const fault of outcome.faults) {
        expect(fault.field).not.toBe('')
        expect(FAULT_CODES).toContain(fault.code)
      }
  }

  test('in a job sheet', () => {
    fc.assert(
      fc.property(
        fc.array(ingredient, { maxLength: 4 }),
        work,
        fc.record(
          {
            lossPercent: wildAmount,
            sandMoisturePercent: wildAmount,
            limePurityPercent: wildAmount,
            gaugeBoxL: wild,
            mixerL: wild,
          },
          { requiredKeys: [] },
        ),
        fc.record(
          { freeCaO: property, bulkDensity: property, puttyDensity: property, voids: property },
          { requiredKeys: [] },
        ),
        fc.constantFrom(...LIME_STATES),
        (ingredients, given, site, odd, limeState) => {
          sound(
            workJob({
              ingredients,
              materials: { lime: RANGED_LIME, sand: RANGED_SAND, odd },
              method: 'not-stated',
              work: given,
              limeState,
              draws: 5,
              ...site,
            }),
          )
        },
      ),
      { numRuns: 300, seed: 7 },
    )
  })

  test('in take-off, proportions and yield', () => {
    fc.assert(
      fc.property(work, fc.array(ingredient, { maxLength: 3 }), (given, ingredients) => {
        const materials = { lime: RANGED_LIME, sand: RANGED_SAND }
        sound(takeOff(given))
        sound(proportions({ ingredients, materials, draws: 5 }))
        sound(yieldOf({ ingredients, materials, draws: 5 }))
      }),
      { numRuns: 150, seed: 8 },
    )
  })

  test('in the sums of sand and slaking', () => {
    fc.assert(
      fc.property(wildAmount, wildAmount, wildAmount, wildAmount, (a, b, c, d) => {
        sound(bulkingFromJar({ dampMm: a, floodedMm: b }))
        sound(
          bulkingByMoisture({
            moisturePercent: a,
            peakPercent: b,
            peakMoisturePercent: c,
            saturationPercent: d,
          }),
        )
        sound(voidsFromWater({ sandMl: a, waterMl: b }))
        sound(leanestProportion({ voidsPercent: a, pasteL: b }))
        sound(correctMoisture({ kg: a, weighed: 'damp', moisturePercent: b, absorptionPercent: c }))
        sound(slakeBatch({ quicklimeKg: a, freeCaO: b, waterKg: c, waterC: d }))
        sound(
          convertLime({ amount: a, unit: 'L', state: 'putty', properties: RANGED_LIME, hydratedMgOShare: b }),
        )
      }),
      { numRuns: 30, seed: 9 },
    )
  })
})
