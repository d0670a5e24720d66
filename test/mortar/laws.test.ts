import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { IngredientInput, IngredientState, Materials } from '#lib/mortar/ingredient.ts'
import { workJob } from '#lib/mortar/job.ts'
import type { JobInput } from '#lib/mortar/job-types.ts'
import { hydratePerQuicklime, LIME_STATES } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import type { Properties } from '#lib/mortar/material.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { isRange, type Range } from '#lib/mortar/range.ts'
import { restateRecipe } from '#lib/mortar/restate.ts'
import { correctMoisture } from '#lib/mortar/sand-moisture.ts'
import { spread } from '#lib/mortar/spread.ts'
import { takeOff, WORK_KINDS, type Work, workFields } from '#lib/mortar/takeoff.ts'
import { convert, shownUnit, UNITS, type Unit } from '#lib/mortar/units.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { value } from './check.ts'
import { known, lime, PURE, RANGED_LIME, RANGED_SAND, sand } from './core-fixtures.ts'

// Many runs each: a busy machine takes its time, hence the timeouts below.
const RUNS = { numRuns: 40, seed: 20261125 }
const MATERIALS: Materials = { lime: RANGED_LIME, sand: RANGED_SAND }
const near = (found: number, expected: number, relative = 1e-9) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(expected)))

const positive = fc.double({ min: 0.01, max: 100, noNaN: true })
const share = fc.double({ min: 0.05, max: 1, noNaN: true })
const limeState = fc.constantFrom(...LIME_STATES)
const measure = fc.constantFrom('volume' as const, 'mass' as const)

const recipe = fc
  .record({
    state: limeState,
    limeBy: measure,
    sandBy: measure,
    parts: positive,
    limeParts: positive,
    damp: fc.boolean(),
  })
  .map(({ state, limeBy, sandBy, parts, limeParts, damp }): readonly IngredientInput[] => [
    lime(limeParts, state, limeBy),
    sand(parts, damp ? 'damp' : 'dry', sandBy),
  ])

const job = (ingredients: readonly IngredientInput[], over: Partial<JobInput> = {}): JobInput => ({
  ingredients,
  materials: MATERIALS,
  method: 'not-stated',
  work: { kind: 'volume', volumeL: 100 },
  draws: 50,
  ...over,
})

describe('units', { timeout: 120_000 }, () => {
  const units = Object.keys(UNITS) as Unit[]

  test('convert there and back gives the number back', () => {
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.constantFrom(...units), positive, (from, to, amount) => {
        fc.pre(UNITS[from].dimension === UNITS[to].dimension)
        near(convert(convert(amount, from, to), to, from), amount)
      }),
      RUNS,
    )
  })

  test('convert between kinds is refused and names the field', () => {
    expect(() => convert(1, 'kg', 'L')).toThrow('to: inconsistent')
    expect(() => convert(1, 'cubit', 'm')).toThrow('from: unknown')
  })

  test('shownUnit measures bulk by the cubic foot and only water by the gallon', () => {
    expect(shownUnit('L', 'us')).toBe('ft3')
    expect(shownUnit('L', 'us', true)).toBe('gal')
    expect(shownUnit('kg', 'us', true)).toBe('lb')
    expect(shownUnit('L', 'metric', true)).toBe('L')
    expect(shownUnit('rebound', 'us')).toBe('rebound')
  })
})

describe('slaking', { timeout: 120_000 }, () => {
  test('mass is conserved: hydrate is quicklime and the water it binds', () => {
    fc.assert(
      fc.property(share, positive, limeState, (freeCaO, amount, state) => {
        const found = value(
          convertLime({
            amount,
            unit: 'kg',
            state,
            properties: { ...PURE, ...known({ freeCaO }) },
            draws: 1,
          }),
        )
        const mass = (s: (typeof LIME_STATES)[number]) => found.states[s]?.massKg.typical ?? Number.NaN
        near(mass('dry-hydrate'), mass('lump-quicklime') + found.boundWaterKg.typical)
        near(mass('putty'), mass('dry-hydrate') + (found.puttyWaterKg?.typical ?? Number.NaN))
        near(mass(state), amount)
      }),
      RUNS,
    )
  })

  test('less free lime never grows more', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a]
        expect(hydratePerQuicklime(less)).toBeLessThanOrEqual(hydratePerQuicklime(more))
        const growth = (freeCaO: number) =>
          value(
            convertLime({
              amount: 1,
              unit: 'L',
              state: 'lump-quicklime',
              properties: { ...PURE, ...known({ freeCaO }) },
              draws: 1,
            }),
          ).growth['lump-to-putty']?.typical ?? Number.NaN
        expect(growth(less)).toBeLessThanOrEqual(growth(more))
      }),
      RUNS,
    )
  })

  test('magnesia that hydrates takes up its own water', () => {
    const dolomite = { ...PURE, ...known({ freeCaO: 0.56, freeMgO: 0.4 }) }
    const bound = (hydratedMgOShare: number) =>
      value(
        convertLime({
          amount: 1,
          unit: 'kg',
          state: 'lump-quicklime',
          properties: dolomite,
          hydratedMgOShare,
          draws: 1,
        }),
      ).boundWaterKg.typical
    near(bound(1) - bound(0), (0.4 * 18.015) / 40.304, 1e-6)
  })
})

describe('recipes', { timeout: 120_000 }, () => {
  test('another basis and back gives the recipe back', () => {
    fc.assert(
      fc.property(
        recipe,
        limeState,
        measure,
        fc.constantFrom('dry' as const, 'damp' as const),
        (given, state, by, aggregate) => {
          const there = value(
            restateRecipe({
              ingredients: given,
              materials: MATERIALS,
              as: { limeState: state, aggregate, by },
              draws: 1,
            }),
          )
          const exact = there.map((one) => ({
            ...one,
            parts: { low: one.parts.typical, high: one.parts.typical },
          }))
          const [theLime, theSand] = given as [IngredientInput, IngredientInput]
          const back = value(
            restateRecipe({
              ingredients: exact,
              materials: MATERIALS,
              as: {
                limeState: theLime.state as (typeof LIME_STATES)[number],
                aggregate: theSand.state === 'damp' ? 'damp' : 'dry',
                by: theSand.by,
              },
              draws: 1,
            }),
          )
          fc.pre(theLime.by === theSand.by)
          near(back[1]?.parts.typical ?? Number.NaN, (theSand.parts?.low ?? 0) / (theLime.parts?.low ?? 1))
        },
      ),
      RUNS,
    )
  })

  test('all parts doubled, no proportion moved', () => {
    fc.assert(
      fc.property(recipe, (given) => {
        const twice = given.map((one) => ({
          ...one,
          parts: { low: 2 * (one.parts?.low ?? 0), high: 2 * (one.parts?.high ?? 0) },
        }))
        const ratio = (ingredients: readonly IngredientInput[]) =>
          value(proportions({ ingredients, materials: MATERIALS, draws: 1 })).states.putty?.aggregateDry
            ?.typical ?? 0
        near(ratio(twice), ratio(given))
      }),
      RUNS,
    )
  })

  test('a state that is not stated spans the ranges of all that it may be', () => {
    const found = (state: IngredientState) =>
      value(proportions({ ingredients: [lime(1, state), sand(3)], materials: MATERIALS, draws: 2000 })).states
        .putty?.aggregateDry as Range
    const open = found('not-stated')
    for (const state of LIME_STATES) {
      expect(open.low).toBeLessThanOrEqual(found(state).low)
      expect(open.high).toBeGreaterThanOrEqual(found(state).high)
    }
    const slaked = found('slaked-not-stated')
    expect(slaked.low).toBeLessThanOrEqual(found('putty').low)
    expect(slaked.high).toBeGreaterThanOrEqual(found('dry-hydrate').high)
    expect(isRange(open)).toBe(true)
  })

  test('what a source leaves unsaid is not told: no share of the whole without every quantity', () => {
    const unsaid = { ...sand(1), parts: null }
    const found = value(
      proportions({ ingredients: [lime(1, 'putty'), sand(3), unsaid], materials: MATERIALS, draws: 1 }),
    )
    expect(found.binderPercent).toBeNull()
    expect(found.states.putty?.aggregateDry).toBeNull()
    expect(found.states.putty?.limePercent).toBeNull()
    expect(found.states.putty?.parts[0]?.dry.typical).toBeCloseTo(3, 9)
    const noLime = value(
      proportions({
        ingredients: [lime(1, 'putty'), { ...lime(1, 'putty'), parts: null }, sand(3)],
        materials: MATERIALS,
        draws: 1,
      }),
    )
    expect(noLime.states.putty).toBeNull()
  })

  test('richer lime gives a lower ratio in every state', () => {
    fc.assert(
      fc.property(limeState, positive, (state, parts) => {
        const at = (limeParts: number) =>
          value(
            proportions({
              ingredients: [lime(limeParts, state), sand(parts)],
              materials: MATERIALS,
              draws: 1,
            }),
          )
        for (const other of LIME_STATES)
          expect(at(2).states[other]?.aggregateDry?.typical).toBeLessThan(
            at(1).states[other]?.aggregateDry?.typical ?? 0,
          )
      }),
      { ...RUNS, numRuns: 15 },
    )
  })
})

describe('sand', { timeout: 120_000 }, () => {
  test('dry to damp and back gives the mass back, and damp weighs more', () => {
    fc.assert(
      fc.property(positive, fc.double({ min: 0.1, max: 20, noNaN: true }), (kg, moisturePercent) => {
        const damp = value(correctMoisture({ kg, weighed: 'dry', moisturePercent })).dampKg.typical
        expect(damp).toBeGreaterThan(kg)
        near(value(correctMoisture({ kg: damp, weighed: 'damp', moisturePercent })).dryKg.typical, kg)
      }),
      RUNS,
    )
  })
})

describe('a job', { timeout: 120_000 }, () => {
  test('twice the work, twice of everything', () => {
    fc.assert(
      fc.property(recipe, positive, (given, volumeL) => {
        const sheet = (times: number) =>
          value(
            workJob(
              job(given, {
                work: { kind: 'volume', volumeL: volumeL * times },
                sandMoisturePercent: 4,
                lossPercent: 10,
              }),
            ),
          )
        const [one, two] = [sheet(1), sheet(2)]
        near(two.mortarL.typical, 2 * one.mortarL.typical)
        near(two.water.likelyTotalL.typical, 2 * one.water.likelyTotalL.typical)
        one.ingredients.forEach(({ siteL, siteKg }, i) => {
          near(two.ingredients[i]?.siteL?.typical ?? Number.NaN, 2 * (siteL?.typical ?? 0))
          near(two.ingredients[i]?.siteKg?.high ?? Number.NaN, 2 * (siteKg?.high ?? 0))
        })
      }),
      { ...RUNS, numRuns: 20 },
    )
  })

  test('what goes in comes out: solids, water and air fill the mortar', () => {
    fc.assert(
      fc.property(recipe, (given) => {
        const found = value(yieldOf({ ingredients: given, materials: MATERIALS, draws: 1 }))
        near(found.solidL.typical + found.freeWaterL.typical, found.mortarL.typical * 0.95)
      }),
      RUNS,
    )
  })

  test('water balances: what is put in and brought is bound, free or boiled off', () => {
    fc.assert(
      fc.property(recipe, limeState, (given, state) => {
        const { water } = value(workJob(job(given, { limeState: state, sandMoisturePercent: 3, draws: 1 })))
        const brought = water.fromSandL.typical + water.fromLimeL.typical
        const used = water.boundL.typical + water.freeL.typical + water.boiledL.typical
        fc.pre(used > brought)
        near(water.likelyTotalL.typical + brought, used)
      }),
      RUNS,
    )
  })

  test('the same lime in any state holds the same free lime', () => {
    const held = (state: (typeof LIME_STATES)[number]) => {
      const sheet = value(workJob(job([lime(1, 'putty'), sand(3)], { limeState: state, draws: 1 })))
      const amount = sheet.ingredients[0]?.siteKg?.typical ?? Number.NaN
      return value(convertLime({ amount, unit: 'kg', state, properties: RANGED_LIME, draws: 1 })).states[
        'lump-quicklime'
      ]?.massKg.typical
    }
    for (const state of LIME_STATES) near(held(state) ?? Number.NaN, held('putty') ?? Number.NaN)
  })

  test('purer lime on site, less of it, in proportion', () => {
    const kg = (limePurityPercent: number) =>
      value(workJob(job([lime(1, 'lump-quicklime'), sand(3)], { limePurityPercent, draws: 1 })))
        .ingredients[0]?.siteKg?.typical ?? Number.NaN
    near(kg(45), 2 * kg(90))
  })

  test('every range is in order and holds its typical value', () => {
    fc.assert(
      fc.property(recipe, limeState, (given, state) => {
        const sheet = value(workJob(job(given, { limeState: state, draws: 200 })))
        const ranges = [
          sheet.mortarL,
          ...Object.values(sheet.water),
          ...sheet.ingredients.flatMap(({ siteL, siteKg }) => [siteL, siteKg]),
          ...sheet.steps.map(({ result }) => result),
        ]
        for (const range of ranges) if (range !== null) expect(isRange(range)).toBe(true)
      }),
      { ...RUNS, numRuns: 20 },
    )
  })

  test.each(['freeCaO', 'bulkDensityLump', 'puttyDensity', 'particleDensityHydrate'] as const)(
    'a wider %s gives no narrower answer and moves no typical value',
    (name) => {
      const usual = RANGED_LIME[name]
      if (usual === undefined) throw new Error(name)
      const wide: Properties = {
        ...RANGED_LIME,
        [name]: {
          ...usual,
          low: usual.typical - 1.4 * (usual.typical - usual.low),
          high: usual.typical + 1.4 * (usual.high - usual.typical),
        },
      }
      const range = (properties: Properties) =>
        value(
          workJob(
            job([lime(1, 'lump-quicklime'), sand(3)], {
              materials: { lime: properties, sand: RANGED_SAND },
              draws: 4000,
            }),
          ),
        ).ingredients[1]?.siteL as Range
      const width = ({ low, high }: Range) => high - low
      expect(width(range(wide))).toBeGreaterThan(0.999 * width(range(RANGED_LIME)))
      expect(range(wide).typical).toBe(range(RANGED_LIME).typical)
    },
  )

  test('the same input gives the same sheet', () => {
    const input = job([lime(1, 'not-stated'), sand(3, 'not-stated')], { limeState: 'putty', draws: 500 })
    expect(workJob(input)).toEqual(workJob(structuredClone(input)))
  })
})

describe('take-off', { timeout: 120_000 }, () => {
  const usual = (kind: (typeof WORK_KINDS)[number]): Work => {
    const dims = Object.entries(workFields(kind)).map(([name, field]) => [
      name,
      field.usual?.typical ?? field.fallback?.typical ?? (field.unit === 'mm' ? 200 : 50),
    ])
    return { kind, ...Object.fromEntries(dims) } as Work
  }

  test.each(WORK_KINDS)('%s gives more than nothing, and explains itself', (kind) => {
    const found = value(takeOff(usual(kind)))
    expect(found.netL.typical).toBeGreaterThan(0)
    const last = found.steps.at(-1)
    expect(last?.result).toEqual(found.netL)
    expect(last?.numbers).toMatch(/^[\d\s.()+−·/e-]+$/)
  })

  test.each(WORK_KINDS.filter((kind) => 'areaM2' in workFields(kind)))('%s grows with its area', (kind) => {
    const work = usual(kind)
    const netL = (areaM2: number) => value(takeOff({ ...work, areaM2 } as Work)).netL.typical
    near(netL(80), 2 * netL(40))
  })
})

describe('spread', { timeout: 120_000 }, () => {
  test('keeps a sum exact where nothing is uncertain', () => {
    expect(spread({ a: { low: 2, typical: 2, high: 2 } }, ({ a }) => ({ b: a * 3 })).b).toEqual({
      low: 6,
      typical: 6,
      high: 6,
    })
  })

  test('refuses a result that is no number', () => {
    expect(() =>
      spread({ a: { low: 0, typical: 1, high: 2 } }, ({ a }) => ({ b: Math.sqrt(a - 1.5) })),
    ).toThrow('b: inconsistent')
  })
})
