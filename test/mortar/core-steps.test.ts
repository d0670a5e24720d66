import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Step } from '#lib/mortar/explain.ts'
import { workJob } from '#lib/mortar/job.ts'
import type { JobInput } from '#lib/mortar/job-types.ts'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import { comparePlausible, PLAUSIBLE } from '#lib/mortar/plausible.ts'
import { comparePractice } from '#lib/mortar/practice.ts'
import { REASON_IDS } from '#lib/mortar/practice-sayings.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { bulkingByMoisture, bulkingFromJar } from '#lib/mortar/sand-bulking.ts'
import { correctMoisture } from '#lib/mortar/sand-moisture.ts'
import { leanestProportion, voidsFromDensities, voidsFromWater } from '#lib/mortar/sand-voids.ts'
import { slakeBatch } from '#lib/mortar/slaking.ts'
import { WORK_KINDS, type Work, workFields } from '#lib/mortar/takeoff.ts'
import { shownUnit } from '#lib/mortar/units.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { AGREES_PERCENT, compareYields, YIELD_REASON_IDS } from '#lib/mortar/yield-tables.ts'
import { isUnit } from '../../app/_ui/units.ts'
import { value } from './check.ts'
import { known, lime, part, RANGED_LIME, RANGED_SAND, sand } from './core-fixtures.ts'
import { expectWorking } from './working.ts'

const catalogue: unknown = JSON.parse(
  readFileSync(new URL('../../app/_words/en/steps.json', import.meta.url), 'utf8'),
)
const wordsOf = (key: string): unknown =>
  key.split('.').reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], catalogue)

const materials = { lime: RANGED_LIME, sand: RANGED_SAND, hair: {}, water: {} }
const everyJob: JobInput[] = LIME_STATES.flatMap((limeState) =>
  (['putty', 'lump-quicklime', 'slaked-not-stated', 'dry-hydrate'] as const).flatMap((state) =>
    (['volume', 'mass'] as const).map((by) => ({
      ingredients: [
        { ...lime(1, state, by), parts: { low: 1, high: 1.5 } },
        sand(3, 'damp', by),
        sand(1, 'not-stated', by),
        part('hair', 'fibre', 0.1, 'dry', 'mass'),
      ],
      materials,
      method: 'not-stated' as const,
      work: { kind: 'volume' as const, volumeL: 10 },
      limeState,
      limePurityPercent: 80,
      sandMoisturePercent: 4,
      draws: 5,
    })),
  ),
)
const wash: JobInput = {
  ingredients: [lime(1, 'putty'), part('water', 'water', 2, 'not-stated')],
  materials,
  method: 'putty',
  work: { kind: 'volume', volumeL: 10 },
  draws: 5,
}

const twoWorks: JobInput = {
  ...wash,
  lossPercent: 10,
  furtherWorks: [{ work: { kind: 'plaster', areaM2: 10, coat1Mm: 12 }, lossPercent: 5 }],
}

const steps: Step[] = [
  ...[...everyJob, wash, twoWorks].flatMap((job) => [
    ...value(workJob(job)).steps,
    ...value(proportions({ ingredients: job.ingredients, materials, draws: 5 })).steps,
    ...value(yieldOf({ ingredients: job.ingredients, materials, draws: 5 })).steps,
  ]),
  ...LIME_STATES.flatMap((state) =>
    (['L', 'kg'] as const).flatMap(
      (unit) => value(convertLime({ amount: 2, unit, state, properties: RANGED_LIME })).steps,
    ),
  ),
  ...[0.5, 1, 2, 4].flatMap(
    (waterKg) => value(slakeBatch({ quicklimeKg: 1, freeCaO: 0.9, waterKg, waterC: 15 })).steps,
  ),
  ...value(bulkingFromJar({ dampMm: 200, floodedMm: 160 })).steps,
  ...value(
    bulkingByMoisture({ moisturePercent: 4, peakPercent: 30, peakMoisturePercent: 5, saturationPercent: 20 }),
  ).steps,
  ...value(voidsFromWater({ sandMl: 225, waterMl: 77 })).steps,
  ...value(voidsFromDensities({ bulkKgM3: 1600, particleKgM3: 2650 })).steps,
  ...value(leanestProportion({ voidsPercent: 38, pasteL: 1 })).steps,
  ...value(correctMoisture({ kg: 1, weighed: 'damp', moisturePercent: 5 })).steps,
]

describe('every line of working', () => {
  test.each([...new Set(steps.map(({ means }) => means))])('%s has its words', (means) => {
    expect(typeof wordsOf(means)).toBe('string')
  })

  test.each(WORK_KINDS)('%s has words for each dimension', (kind) => {
    for (const name of Object.keys(workFields(kind)))
      expect(typeof wordsOf(`work.${name}`), name).toBe('string')
  })

  test('comes in units that the pages can print, metric and US', () => {
    const dimensions = WORK_KINDS.flatMap((kind) => Object.values(workFields(kind)))
    for (const { unit } of [...steps, ...dimensions])
      for (const system of ['metric', 'us'] as const) expect(isUnit(shownUnit(unit, system)), unit).toBe(true)
  })

  test.each(WORK_KINDS)('means one thing by each symbol, in a job of %s', (kind) => {
    const dims = Object.entries(workFields(kind)).map(([name, { usual, fallback, unit, whole }]) => [
      name,
      usual?.typical ?? fallback?.typical ?? (whole === true ? 2 : unit === 'mm' ? 200 : 50),
    ])
    const [job] = everyJob
    if (job === undefined) throw new Error('no job')
    const found = value(workJob({ ...job, work: { kind, ...Object.fromEntries(dims) } as Work })).steps
    expect(new Set(found.map(({ symbol }) => symbol)).size).toBe(found.length)
  })

  test('means one thing by each symbol in each of several works', () => {
    const found = value(workJob(twoWorks)).steps
    expect(new Set(found.map(({ symbol, work }) => `${work ?? ''} ${symbol}`)).size).toBe(found.length)
    expect(found.find(({ means }) => means === 'mortarVolumeOfAll')).toMatchObject({
      formula: 'V_mix,1 + V_mix,2',
      numbers: '11 + 126',
    })
  })

  test('prints numbers, not NaN', () => {
    for (const { numbers, formula, symbol } of steps) {
      expect(numbers).not.toMatch(/NaN|Infinity|undefined/)
      expect(formula === '' || symbol !== '').toBe(true)
    }
  })

  test('agrees with its result where the numbers are plain arithmetic', () => {
    for (const step of steps) expectWorking(step)
  })
})

describe('comparePlausible', () => {
  const earth = { ...RANGED_SAND, ...known({ clayFraction: 0.12 }) }
  const found = (limeParts: number) =>
    value(
      proportions({
        ingredients: [lime(limeParts, 'putty'), part('earth', 'earth', 5)],
        materials: { lime: RANGED_LIME, earth },
      }),
    )

  test('finds 1 putty to 5 earth usual, and 1 to 1 not', () => {
    expect(comparePlausible('earth-lime', found(1)).map(({ touches }) => touches)).toEqual([true, true])
    expect(comparePlausible('earth-lime', found(5)).map(({ touches }) => touches)).toEqual([false, false])
  })

  test('finds 1.6 MPa of an air lime usual where it was mixed hot, and not else', () => {
    const strength = { low: 1.5, typical: 1.6, high: 1.7 }
    const touched = comparePlausible('air-lime', found(1), strength).filter(({ touches }) => touches)
    expect(touched.map(({ id }) => id)).toEqual(['air-lime-hot-strength'])
  })

  test('has nothing to say of other families, nor of a strength that nobody measured', () => {
    expect(comparePlausible('air-lime', found(1))).toEqual([])
    expect(comparePlausible('cement-lime', found(1), { low: 1, typical: 1, high: 1 })).toEqual([])
  })

  test('has words for each bound', () => {
    for (const { id } of PLAUSIBLE) expect(typeof wordsOf(`plausible.${id}`)).toBe('string')
  })
})

describe('practice beside the sums', () => {
  const found = value(comparePractice(RANGED_LIME, { ...RANGED_SAND, ...known({ voids: 0.38 }) }))

  test.each(found.map((one) => [one.id, one] as const))(
    '%s is inside what is said, or says why not',
    (id, one) => {
      expect(typeof wordsOf(`practice.${id}`)).toBe('string')
      expect(one.inside).toBe(one.said.low <= one.ours.typical && one.ours.typical <= one.said.high)
      if (!one.inside) {
        expect(one.reason).not.toBeNull()
        expect(one.reason).not.toBe('other')
      }
    },
  )

  test('every reason has its words', () => {
    for (const reason of REASON_IDS) expect(typeof wordsOf(`practiceReason.${reason}`)).toBe('string')
  })

  test('putty bears the common sayings out', () => {
    const inside = found.filter((one) => one.inside).map(({ id }) => id)
    expect(inside).toEqual(
      expect.arrayContaining([
        'lump-makes-putty',
        'one-to-three-as-putty',
        'one-to-two-as-putty',
        'lump-carries-three',
        'ground-carries-four',
      ]),
    )
  })
})

describe('books beside the sums', () => {
  const cement = known({ bulkDensity: 1440, particleDensity: 3150 })
  const found = value(compareYields({ lime: RANGED_LIME, sand: RANGED_SAND, cement }))

  test('all their figures are there, and each that is off says why', () => {
    expect(found.map(({ book }) => book).filter((book) => book === 'schedule-of-rates')).toHaveLength(6)
    expect(found.map(({ book }) => book).filter((book) => book === 'barrels-per-yard')).toHaveLength(6)
    for (const { differencePercent, reason } of found) {
      expect(reason === null).toBe(Math.abs(differencePercent) <= AGREES_PERCENT)
      expect(reason).not.toBe('other')
    }
  })

  test('every book, binder and reason has its words', () => {
    for (const { book, binder } of found)
      for (const key of [`yields.book.${book}`, `yields.binder.${binder}`])
        expect(typeof wordsOf(key), key).toBe('string')
    for (const reason of YIELD_REASON_IDS) expect(typeof wordsOf(`yields.reasonOf.${reason}`)).toBe('string')
  })
})
