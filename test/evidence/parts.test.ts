import { describe, expect, test } from 'vitest'
import {
  boundLost,
  type Clustered,
  clopperPearson,
  cohenKappa,
  estimateCurve,
  estimateIncidence,
  estimateKaplanMeier,
  estimateTurnbull,
  exactQuantileOf,
  fleissKappa,
  groupIntervals,
  incidenceAt,
  lacking,
  quantileOf,
  type Seen,
  shareDifference,
  standingAt,
  testIntervals,
  testLogRank,
  timeToDampAgain,
  timeToDry,
  type Watched,
  wilson,
} from '#lib/evidence/index.ts'
import { intervals, timed } from './data.ts'

const walls = (words: string): Clustered[] => intervals(words).map((row, cluster) => ({ ...row, cluster }))

describe('standingAt', () => {
  test('gives two bounds inside a stretch, one number outside, and nothing beyond what was watched', () => {
    const { masses } = estimateTurnbull(intervals('2-5 8- 8- 8-'))
    expect(standingAt(masses, 2)).toEqual({ low: 1, high: 1 })
    expect(standingAt(masses, 4)).toEqual({ low: 0.75, high: 1 })
    expect(standingAt(masses, 5)).toEqual({ low: 0.75, high: 0.75 })
    expect(standingAt(masses, 8)).toEqual({ low: 0.75, high: 0.75 })
    expect(standingAt(masses, 9)).toEqual({ low: 0, high: 0.75 })
  })

  test('knows nothing where all were last seen standing', () => {
    const { masses } = estimateTurnbull(intervals('1- 2- 3-'))
    expect(standingAt(masses, 3)).toEqual({ low: 1, high: 1 })
    expect(quantileOf(estimateCurve(walls('1- 2- 3-')), 0.5)).toMatchObject({
      from: null,
      to: null,
      high: null,
    })
  })
})

describe('quantileOf', () => {
  test('gives the stretch in which half had changed, within its limits', () => {
    const curve = estimateCurve(walls('0-2 0-2 2-4 2-4 4-6 4-6 6-8 6-8 8- 8- 8-'))
    const { from, to, low, high } = quantileOf(curve, 0.5)
    expect([from, to]).toEqual([4, 6])
    expect(low ?? Number.NaN).toBeLessThanOrEqual(4)
    expect(high === null || high >= 6).toBe(true)
  })

  test('takes the start of a level at just that share', () => {
    expect(exactQuantileOf(estimateKaplanMeier(timed('1 2 3 4')), 0.5).to).toBe(2)
  })
})

describe('groupIntervals', () => {
  test('adds equal intervals up and widens to a grid outwards', () => {
    expect(groupIntervals(intervals('3-9 3-9 10-20 7-7 31-'), 10)).toEqual([
      { from: 0, to: 10, weight: 3 },
      { from: 10, to: 20, weight: 1 },
      { from: 30, to: null, weight: 1 },
    ])
    expect(groupIntervals([{ from: 10, to: 10 }], 10)).toEqual([{ from: 0, to: 10, weight: 1 }])
  })
})

describe('boundLost', () => {
  test('lets walls lost to sight change at once, or outlast all others', () => {
    const rows = [
      { from: 3, to: null, cluster: 'a', lost: true, weight: 2 },
      { from: 4, to: null, cluster: 'b', lost: false },
      { from: 2, to: 9, cluster: 'c', lost: false },
    ]
    const { lost, allChanged, noneChanged } = boundLost(rows)
    expect(lost).toBe(2)
    expect(allChanged.map(({ from, to }) => [from, to])).toEqual([
      [3, 4],
      [4, null],
      [2, 9],
    ])
    expect(noneChanged.map(({ from, to }) => [from, to])).toEqual([
      [9, null],
      [4, null],
      [2, 9],
    ])
  })

  test('puts the estimate between the two', () => {
    const rows = walls('1-3 2- 2- 5-8 9- 9- 4-').map((row, i) => ({ ...row, lost: i % 2 === 1 }))
    const { allChanged, noneChanged } = boundLost(rows)
    const at = (sample: readonly Clustered[]) => standingAt(estimateTurnbull(sample).masses, 8)
    expect(at(allChanged).high).toBeLessThanOrEqual(at(rows).high)
    expect(at(noneChanged).high).toBeGreaterThanOrEqual(at(rows).high)
  })
})

describe('lacking', () => {
  test('says how many walls and years are missing below five and ten', () => {
    expect(lacking({ walls: 5, watchedDays: 3652.5 })).toBeNull()
    expect(lacking({ walls: 3, watchedDays: 9 * 365.25 })).toEqual({ walls: 2, wallYears: 1 })
    expect(lacking({ walls: 9, watchedDays: 0 })).toEqual({ walls: 0, wallYears: 10 })
  })
})

describe('competing events seen at visits', () => {
  test('share out the walls, with bounds inside a stretch', () => {
    const rows = [
      { from: 0, to: 2, cause: 'a' },
      { from: 2, to: 4, cause: 'b' },
      { from: 4, to: null, cause: null },
      { from: 4, to: null, cause: null },
    ]
    const { causes, notYet } = estimateIncidence(rows)
    expect(causes.map(({ cause }) => cause)).toEqual(['a', 'b'])
    expect(notYet).toBeCloseTo(0.5, 6)
    expect(incidenceAt(causes[1]?.masses ?? [], 3).low).toBe(0)
    expect(incidenceAt(causes[1]?.masses ?? [], 3).high).toBeCloseTo(0.25, 6)
    expect(incidenceAt(causes[0]?.masses ?? [], 3).low).toBeCloseTo(0.25, 6)
  })
})

describe('where there is nothing to say', () => {
  test.each([
    ['a share of none', () => wilson(0, 0)],
    ['an exact share of none', () => clopperPearson(0, 0)],
    ['a difference from none', () => shareDifference({ x: 1, n: 2 }, { x: 0, n: 0 })],
    ['one group', () => testLogRank(timed('1 2 3').map((wall) => ({ ...wall, group: 'a' })))],
    [
      'an arm with nobody at risk when it starts to happen',
      () =>
        testLogRank([
          ...timed('1+ 2+ 3+ 4+').map((wall) => ({ ...wall, group: 'a' })),
          ...timed('5 6 7+ 8').map((wall) => ({ ...wall, group: 'b' })),
        ]),
    ],
    ['one group seen at visits', () => testIntervals(walls('1-2 3-').map((row) => ({ ...row, group: 'a' })))],
    [
      'walls that nothing tells apart',
      () =>
        testIntervals([
          { from: 1, to: null, group: 'a', cluster: 1 },
          { from: 1, to: null, group: 'b', cluster: 2 },
        ]),
    ],
    [
      'raters who used one step',
      () =>
        cohenKappa([
          [20, 0],
          [0, 0],
        ]),
    ],
    [
      'nobody scored',
      () =>
        cohenKappa([
          [0, 0],
          [0, 0],
        ]),
    ],
    [
      'people who used one step',
      () =>
        fleissKappa([
          [3, 0],
          [2, 0],
          [4, 0],
        ]),
    ],
    ['one thing scored', () => fleissKappa([[2, 1]])],
  ])('%s gives null, not a number', (_, run) => {
    expect(run()).toBeNull()
  })

  test('agreement of all on few things is no certainty: the lower limit is that of a share', () => {
    const [few, many] = [2, 200].map((n) =>
      cohenKappa([
        [n, 0],
        [0, n],
      ]),
    )
    expect(few).toMatchObject({ kappa: 1, high: 1 })
    expect(few?.low).toBeCloseTo(((wilson(4, 4)?.low ?? 0) - 0.5) / 0.5, 9)
    expect(many?.low ?? 0).toBeGreaterThan(0.97)
    expect(
      fleissKappa([
        [2, 0],
        [0, 2],
        [2, 0],
        [0, 2],
      ])?.low,
    ).toBeLessThan(0.5)
  })

  test('a curve that came to nothing has no error and no limits', () => {
    expect(estimateKaplanMeier(timed('1 2')).at(-1)).toEqual({
      time: 2,
      atRisk: 1,
      events: 1,
      survival: 0,
      error: null,
      low: null,
      high: null,
    })
  })

  test('limits at none and at all are exactly 0 and 1', () => {
    expect([
      wilson(0, 7)?.low,
      wilson(7, 7)?.high,
      clopperPearson(0, 7)?.low,
      clopperPearson(7, 7)?.high,
    ]).toEqual([0, 1, 0, 1])
  })
})

describe('a test by building', () => {
  test('moves whole buildings where they are of one group, and walls within those of several', () => {
    const rows = walls('0-2 0-2 0-2 9- 9- 9-').map((row, i) => ({ ...row, group: i < 3 ? 'a' : 'b' }))
    const byWall = testIntervals(rows, { shuffles: 0 })
    const byBuilding = testIntervals(
      rows.map((row, i) => ({ ...row, cluster: i < 3 ? 'one' : `other ${i}` })),
      { shuffles: 0 },
    )
    expect(byBuilding?.groups).toEqual(byWall?.groups)
    expect(byBuilding?.chiSquare ?? 9).toBeLessThan(byWall?.chiSquare ?? 0)
    const mixed = testIntervals(
      rows.map((row) => ({ ...row, cluster: 'one' })),
      { shuffles: 0 },
    )
    expect(mixed?.chiSquare).toBeCloseTo(byWall?.chiSquare ?? 0, 9)
  })
})

describe('what is refused, by name', () => {
  test.each([
    [() => estimateTurnbull([{ from: -1, to: 2 }]), 'intervals[0].from is -1'],
    [() => estimateTurnbull([{ from: 3, to: 2 }]), 'intervals[0].to is 2'],
    [() => estimateTurnbull([{ from: 3, to: Number.NaN }]), 'intervals[0].to is NaN'],
    [() => estimateTurnbull([{ from: 3, to: 4, weight: -1 }]), 'intervals[0].weight is -1'],
    [() => estimateTurnbull([]), 'intervals count no wall'],
    [() => estimateCurve([{ from: 1, to: 2, cluster: 'a' }], { level: 1 }), 'level is 1'],
    [() => estimateCurve([{ from: 1, to: 2, cluster: 'a' }], { resamples: 0 }), 'resamples is 0'],
    [() => estimateIncidence([{ from: 1, to: 2, cause: null }]), 'cause is null and to is 2'],
    [() => estimateKaplanMeier([{ time: -1, event: true }]), 'walls[0].time is -1'],
    [() => groupIntervals([], 0), 'gridDays is 0'],
    [() => wilson(3, 2), 'x is 3'],
    [() => wilson(0, -1), 'n is -1'],
    [() => exactQuantileOf([], 1), 'share is 1'],
    [() => cohenKappa([[1, 2]]), 'counts[0] has 2 cells'],
  ])('%s', (run, words) => {
    expect(run).toThrow(RangeError)
    expect(run).toThrow(words)
  })
})

describe('damp', () => {
  const seen = (day: number, damp: number): Seen => ({
    day,
    baseline: day === 0,
    joint: 0,
    unit: 0,
    damp,
    season: 'winter',
  })
  const work = (...[baseline = seen(0, 0), ...visits]: Seen[]): Watched => ({
    baseline,
    visits,
    watchedDays: visits.at(-1)?.day ?? 0,
  })

  test('tells how long a damp wall took to dry, and a dry one to be damp again', () => {
    const wall = work(seen(0, 3), seen(100, 1), seen(200, 0), seen(300, 1), seen(450, 2))
    expect(timeToDry(wall)).toEqual({ from: 100, to: 200 })
    expect(timeToDampAgain(wall)).toEqual({ from: 100, to: 250 })
    expect(timeToDry(work(seen(0, 1), seen(100, 0)))).toBeNull()
    expect(timeToDry(work(seen(0, 3), seen(100, 2)))).toEqual({ from: 100, to: null })
    expect(timeToDampAgain(work(seen(0, 3), seen(100, 0)))).toBeNull()
  })
})
