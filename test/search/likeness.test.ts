import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { DRIVING_RAIN, FROST, SALTS, USES, WALL_TYPES } from '#lib/entry/terms.ts'
import {
  everyLike,
  type LikeFound,
  likeCases,
  wallAskedOf,
  wallAskedQuery,
  wallOfCase,
} from '#lib/search/index.ts'
import {
  climateNearness,
  frostNearness,
  rainNearness,
  saltsNearness,
  unitNearness,
  unitsNearness,
  usesNearness,
  WEIGHTS,
  wallNearness,
} from '#lib/search/likeness.ts'
import { makeCase, makeVisit, makeWork, publish } from '#test/support/make.ts'

const UNITS = [...(content().vocabularies.get('units')?.keys() ?? [])]
const place = fc.record(
  {
    country: fc.constantFrom('EE', 'SI'),
    latitude: fc.integer({ min: -90, max: 90 }),
    longitude: fc.integer({ min: -180, max: 180 }),
  },
  { requiredKeys: ['country'] },
)

describe('each part of a likeness', () => {
  it.each([
    ['unit', unitsNearness, fc.subarray(UNITS, { minLength: 1, maxLength: 4 })],
    ['wall', wallNearness, fc.constantFrom(...WALL_TYPES)],
    ['use', usesNearness, fc.subarray([...USES], { minLength: 1 })],
    ['salts', saltsNearness, fc.subarray([...SALTS])],
    ['rain', rainNearness, fc.constantFrom(...DRIVING_RAIN.slice(0, -1))],
    ['frost', frostNearness, fc.constantFrom(...FROST.slice(0, -1))],
    ['climate', climateNearness, place],
  ] as const)('%s is the same both ways, from 0 to 1, and whole for the same', (_, nearness, wall) => {
    const near = nearness as (a: unknown, b: unknown) => number
    fc.assert(
      fc.property(wall as fc.Arbitrary<unknown>, wall as fc.Arbitrary<unknown>, (a, b) => {
        expect(near(a, b)).toBeCloseTo(near(b, a), 12)
        expect(near(a, b)).toBeGreaterThanOrEqual(0)
        expect(near(a, b)).toBeLessThanOrEqual(1)
        expect(near(a, a)).toBeCloseTo(1, 12)
      }),
      { seed: 20261125 },
    )
  })

  it('follows the tree of units: nearer kin are liker', () => {
    expect(unitNearness('chalk', 'limestone')).toBeGreaterThan(unitNearness('chalk', 'sandstone'))
    expect(unitNearness('chalk', 'sandstone')).toBeGreaterThan(unitNearness('chalk', 'granite'))
    expect(unitNearness('chalk', 'brick')).toBe(0)
    // By hand: chalk stands fourth below stone, sandstone third, and both are sedimentary, the second: 2 × 2 / (4 + 3).
    expect(unitNearness('chalk', 'sandstone')).toBeCloseTo(4 / 7, 12)
  })

  it('knows nothing of what was not recorded', () => {
    expect(rainNearness('not-recorded', 'severe')).toBe(0)
    expect(climateNearness({ country: 'EE' }, { country: 'SI' })).toBe(0)
    expect(climateNearness({ latitude: -42, longitude: 147 }, { latitude: 42, longitude: 10 })).toBe(1)
  })
})

describe('likeCases(wall)', () => {
  const walls = [
    { unit: 'limestone', wall: 'rubble-coursed', salts: [] },
    { unit: 'granite', wall: 'ashlar', salts: ['chlorides'] },
    { unit: 'brick', wall: 'brick-solid', salts: ['chlorides', 'nitrates'] },
    { unit: 'limestone', wall: 'ashlar', salts: [] },
  ] as const

  beforeAll(async () => {
    for (const [i, { unit, wall, salts }] of walls.entries()) {
      const works = [makeWork({ use: i % 2 === 0 ? 'pointing' : 'floor' })]
      const exposure = { ...makeCase().exposure, salts: [...salts], drivingRain: DRIVING_RAIN[i] ?? 'severe' }
      const body = makeCase({ works, exposure, fabric: { units: [{ unit }], wall } })
      await publish('case', `wall-${i}`, body)
      await publish('visit', `seen-${i}`, makeVisit({ case: `wall-${i}` }))
    }
  })

  const pointsBetween = async (from: string, to: string): Promise<number | undefined> => {
    const wall = await wallOfCase(from)
    const { results } = await likeCases(wall ?? {})
    return results.find(({ slug }) => slug === to)?.likeness.points
  }

  it('explains itself to the total', async () => {
    const { results } = await likeCases((await wallOfCase('wall-1')) ?? {})
    expect(results).toHaveLength(4)
    for (const { likeness } of results) {
      expect(likeness.parts.reduce((sum, { points }) => sum + points, 0)).toBe(likeness.points)
      expect(likeness.parts.reduce((sum, { of }) => sum + of, 0)).toBe(likeness.of)
      for (const { part, points, of } of likeness.parts) {
        expect(of).toBe(WEIGHTS[part])
        expect(points).toBeLessThanOrEqual(of)
      }
    }
    expect(results[0]).toMatchObject({ slug: 'wall-1', likeness: { points: 100, of: 100 } })
  })

  it('gives two cases the same points from either side', async () => {
    for (let a = 0; a < 4; a += 1)
      for (let b = a + 1; b < 4; b += 1)
        expect(await pointsBetween(`wall-${a}`, `wall-${b}`)).toBe(
          await pointsBetween(`wall-${b}`, `wall-${a}`),
        )
  })

  it('counts only what was answered, and leaves out the case it began from', async () => {
    const { results, total } = await likeCases({ salts: [] }, { except: 'wall-0' })
    expect(results.map(({ slug, likeness }) => [slug, likeness.points, likeness.of])).toEqual([
      ['wall-3', 10, 10],
    ])
    expect(total).toBe(1)
    expect(await likeCases({})).toMatchObject({ results: [], total: 0, next: null })
  })

  it('gives each case once over its pages', async () => {
    const seen: string[] = []
    let next: LikeFound['next'] | undefined
    do {
      const page: LikeFound = await likeCases({ unit: ['stone'] }, { limit: 1, after: next ?? undefined })
      seen.push(...page.results.map(({ slug }) => slug))
      next = page.next
    } while (next !== null)
    expect([...seen].sort()).toEqual(['wall-0', 'wall-1', 'wall-3'])
    const listed = []
    for await (const some of everyLike({ unit: ['stone'] })) listed.push(...some)
    expect(listed.map(({ slug }) => slug)).toEqual(seen)
    expect(listed).toEqual((await likeCases({ unit: ['stone'] })).results)
    await expect(likeCases({ unit: ['stone'] }, { after: 'x' })).rejects.toMatchObject({ code: 'invalid' })
  })
})

describe('wallAskedOf(params)', () => {
  it('reads what wallAskedQuery writes', () => {
    for (const wall of [
      { unit: ['chalk', 'flint'], wall: 'ashlar', use: 'floor', salts: [] },
      { exposure: { rain: 'severe' }, place: { country: 'EE', latitude: 58.4, longitude: 22 } },
      { salts: ['chlorides'], exposure: { frost: 'none' } },
      {},
    ] as const)
      expect(wallAskedOf(wallAskedQuery(wall))).toEqual({ wall, faults: [] })
  })

  it('names what cannot be used, and what would do', () => {
    const { wall, faults } = wallAskedOf({ unit: 'limstone', wall: '', latitude: '91', country: 'Estonia' })
    expect(wall).toEqual({})
    expect(faults).toEqual([
      { field: 'unit', code: 'unknown', value: 'limstone', limit: 'limestone' },
      { field: 'country', code: 'unknown-country', value: 'Estonia', limit: 'EE' },
      { field: 'latitude', code: 'too-large', value: '91', limit: 90 },
    ])
  })
})
