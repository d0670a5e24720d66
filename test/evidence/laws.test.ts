import { compute } from '@fullstax/kaplan-meier-estimator'
import fc from 'fast-check'
import { chiSquaredDistributionTable, cumulativeStdNormalProbability } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { chiSquareTail, normalTails } from '#lib/evidence/distributions.ts'
import {
  type Clustered,
  type Counted,
  clopperPearson,
  differenceOf,
  estimateCurve,
  estimateExactIncidence,
  estimateIncidence,
  estimateIncidenceCurve,
  estimateKaplanMeier,
  estimateTurnbull,
  groupIntervals,
  incidenceAt,
  standingAt,
  testIntervals,
  testLogRank,
  wilson,
} from '#lib/evidence/index.ts'
import { scoreIntervals } from '#lib/evidence/scores.ts'

// Many runs each: a busy machine takes its time, hence the timeouts below.
const RUNS = { numRuns: 60, seed: 20261125 }
const near = (found: number, expected: number, tolerance = 1e-6) =>
  expect(Math.abs(found - expected), `${found} for ${expected}`).toBeLessThanOrEqual(tolerance)

const day = fc.integer({ min: 0, max: 40 })
const interval: fc.Arbitrary<Required<Counted>> = fc
  .record({
    from: day,
    span: fc.option(fc.integer({ min: 0, max: 20 })),
    weight: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ from, span, weight }) => ({ from, to: span === null ? null : from + span, weight }))
const intervals = fc.array(interval, { minLength: 1, maxLength: 40 })
const exact = fc.array(fc.record({ time: fc.integer({ min: 1, max: 30 }), event: fc.boolean() }), {
  minLength: 1,
  maxLength: 40,
})
const days = Array.from({ length: 70 }, (_, k) => k)
const asIntervals = (walls: readonly { time: number; event: boolean }[]) =>
  walls.map(({ time, event }) => ({ from: time, to: event ? time : null }))

describe('Turnbull’s estimate', { timeout: 120_000 }, () => {
  test('is at the maximum by the Kuhn-Tucker check, and its masses add up to 1', () => {
    fc.assert(
      fc.property(intervals, (walls) => {
        const { converged, excess, masses } = estimateTurnbull(walls)
        expect(converged).toBe(true)
        expect(excess).toBeLessThanOrEqual(1e-8)
        near(
          masses.reduce((sum, { mass }) => sum + mass, 0),
          1,
        )
      }),
      RUNS,
    )
  })

  test('is beaten by no other masses on the same stretches', () => {
    fc.assert(
      fc.property(
        intervals,
        fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { minLength: 40, maxLength: 40 }),
        (walls, tilt) => {
          const { masses, logLikelihood } = estimateTurnbull(walls)
          const total = masses.reduce((sum, { mass }, j) => sum + mass * (tilt[j % 40] ?? 1), 0)
          const other = masses.map((mass, j) => ({
            ...mass,
            mass: (mass.mass * (tilt[j % 40] ?? 1)) / total,
          }))
          const likelihood = walls.reduce((sum, { from, to, weight }) => {
            const within = other.filter(
              (m) =>
                (m.from > from || (m.from === from && (m.to !== from || to === from))) &&
                (to === null || (m.to !== null && m.to <= to)),
            )
            return sum + weight * Math.log(within.reduce((s, { mass }) => s + mass, 0))
          }, 0)
          expect(likelihood).toBeLessThanOrEqual(logLikelihood + 1e-6)
        },
      ),
      RUNS,
    )
  })

  test('never rises with the days', () => {
    fc.assert(
      fc.property(intervals, (walls) => {
        const { masses } = estimateTurnbull(walls)
        const curve = days.map((each) => standingAt(masses, each))
        curve.forEach(({ low, high }, k) => {
          expect(low).toBeLessThanOrEqual(high)
          expect(low).toBeLessThanOrEqual((curve[k - 1]?.low ?? 1) + 1e-12)
          expect(high).toBeLessThanOrEqual((curve[k - 1]?.high ?? 1) + 1e-12)
        })
      }),
      RUNS,
    )
  })

  test('takes a count for so many equal walls', () => {
    fc.assert(
      fc.property(intervals, (walls) => {
        const repeated = walls.flatMap(({ weight, ...wall }) => Array.from({ length: weight }, () => wall))
        const [counted, written] = [estimateTurnbull(walls), estimateTurnbull(repeated)]
        near(counted.logLikelihood, written.logLikelihood)
        near(estimateTurnbull(groupIntervals(repeated)).logLikelihood, counted.logLikelihood)
        expect(counted.walls).toBe(written.walls)
      }),
      RUNS,
    )
  })

  test('is Kaplan and Meier’s where days are exact', () => {
    fc.assert(
      fc.property(exact, (walls) => {
        const { masses } = estimateTurnbull(asIntervals(walls))
        for (const { time, survival } of estimateKaplanMeier(walls)) {
          near(standingAt(masses, time).high, survival, 1e-5)
        }
      }),
      RUNS,
    )
  })

  test('loses no wall to a coarser grid, only knowledge of when', () => {
    fc.assert(
      fc.property(intervals, fc.integer({ min: 2, max: 9 }), (walls, grid) => {
        const coarse = groupIntervals(walls, grid)
        near(
          coarse.reduce((sum, { weight }) => sum + weight, 0),
          walls.reduce((sum, { weight }) => sum + weight, 0),
        )
        for (const { from, to } of walls) {
          const one = groupIntervals([{ from, to }], grid)[0]
          expect(one?.from).toBeLessThanOrEqual(from)
          if (to !== null) expect(one?.to ?? 0).toBeGreaterThanOrEqual(to)
        }
      }),
      RUNS,
    )
  })
})

describe('Kaplan and Meier’s estimate', { timeout: 120_000 }, () => {
  test('is that of an independent library, on any data', () => {
    fc.assert(
      fc.property(exact, (walls) => {
        const sorted = [...walls].sort((a, b) => a.time - b.time)
        const theirs = compute(
          sorted.map(({ time }) => time),
          sorted.map(({ event }) => event),
        )
        for (const { time, survival } of estimateKaplanMeier(walls)) {
          near(theirs.findLast((each) => each.time === time)?.rate ?? Number.NaN, survival, 1e-9)
        }
      }),
      RUNS,
    )
  })

  test('halves its variance when each wall counts twice', () => {
    fc.assert(
      fc.property(exact, (walls) => {
        const once = estimateKaplanMeier(walls)
        const twice = estimateKaplanMeier(walls.map((wall) => ({ ...wall, weight: 2 })))
        once.forEach(({ survival, error }, k) => {
          near(twice[k]?.survival ?? Number.NaN, survival, 1e-12)
          if (error !== null) near((twice[k]?.error ?? Number.NaN) ** 2, error ** 2 / 2, 1e-12)
        })
      }),
      RUNS,
    )
  })
})

describe('competing events', { timeout: 120_000 }, () => {
  const ended = fc.array(
    fc.record({ time: fc.integer({ min: 1, max: 30 }), cause: fc.constantFrom('a', 'b', null) }),
    { minLength: 2, maxLength: 30 },
  )

  test('with one cause are 1 less Kaplan and Meier’s curve, error and all', () => {
    fc.assert(
      fc.property(exact, (walls) => {
        const steps = estimateExactIncidence(
          walls.map(({ time, event }) => ({ time, cause: event ? 'a' : null })),
          'a',
        )
        estimateKaplanMeier(walls).forEach(({ survival, error }, k) => {
          near(steps[k]?.share ?? Number.NaN, 1 - survival, 1e-12)
          if (error !== null) near(steps[k]?.error ?? Number.NaN, error, 1e-9)
        })
      }),
      RUNS,
    )
  })

  test('seen at visits are Aalen and Johansen’s where days are exact', () => {
    fc.assert(
      fc.property(ended, (walls) => {
        const rows = walls.map(({ time, cause }) => ({ from: time, to: cause === null ? null : time, cause }))
        const found = estimateIncidence(rows, { tolerance: 1e-10 })
        for (const { cause, masses } of found.causes)
          for (const { time, share } of estimateExactIncidence(walls, cause))
            near(incidenceAt(masses, time).low, share, 2e-5)
      }),
      RUNS,
    )
  })

  test('and what nothing has come to yet add up to all walls', () => {
    const caused = fc.array(
      fc
        .tuple(interval, fc.constantFrom('a', 'b', 'c'))
        .map(([row, cause]) => ({ ...row, cause: row.to === null ? null : cause })),
      { minLength: 1, maxLength: 40 },
    )
    fc.assert(
      fc.property(caused, (rows) => {
        const { causes, notYet, converged } = estimateIncidence(rows)
        expect(converged).toBe(true)
        near(notYet + causes.flatMap(({ masses }) => masses).reduce((sum, { mass }) => sum + mass, 0), 1)
      }),
      RUNS,
    )
  })
})

describe('tests between groups', { timeout: 120_000 }, () => {
  const grouped = fc.array(
    fc
      .tuple(interval, fc.constantFrom('a', 'b', 'c'), fc.integer({ min: 0, max: 8 }))
      .map(([row, group, cluster]) => ({ ...row, group, cluster })),
    { minLength: 4, maxLength: 40 },
  )
  const RENAMED: Record<string, string> = { a: 'z', b: 'y', c: 'x' }

  test('say the same whatever the groups are called, in whatever order', () => {
    fc.assert(
      fc.property(grouped, (rows) => {
        const found = testIntervals(rows, { shuffles: 50 })
        const renamed = testIntervals(
          rows.map((row) => ({ ...row, group: RENAMED[row.group] ?? '' })),
          { shuffles: 50 },
        )
        expect(renamed?.p).toBe(found?.p)
        expect(renamed?.chiSquare).toBe(found?.chiSquare)
        const turned = testIntervals([...rows].reverse(), { shuffles: 0 })
        near(turned?.chiSquare ?? 0, testIntervals(rows, { shuffles: 0 })?.chiSquare ?? 0, 1e-6)
      }),
      RUNS,
    )
  })

  test('rest on scores that add up to nothing', () => {
    fc.assert(
      fc.property(intervals, (walls) => {
        const scores = scoreIntervals(walls)
        near(
          walls.reduce((sum, { weight }, i) => sum + weight * (scores[i] ?? Number.NaN), 0),
          0,
          1e-5 * walls.length,
        )
      }),
      RUNS,
    )
  })

  test('take observed less expected of the log-rank test for scores where days are exact', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            time: fc.integer({ min: 1, max: 20 }),
            event: fc.boolean(),
            group: fc.constantFrom('a', 'b'),
          }),
          { minLength: 4, maxLength: 40 },
        ),
        (walls) => {
          const ranks = testLogRank(walls)
          const found = testIntervals(
            walls.map(({ time, event, group }) => ({ from: time, to: event ? time : null, group })),
            { shuffles: 0 },
          )
          fc.pre(ranks !== null && found !== null)
          for (const { group, observed, expected } of ranks?.groups ?? [])
            near(
              found?.groups.find((each) => each.group === group)?.score ?? Number.NaN,
              observed - expected,
              1e-3,
            )
        },
      ),
      RUNS,
    )
  })
})

describe('bands', { timeout: 120_000 }, () => {
  const clustered: fc.Arbitrary<Clustered[]> = fc.array(
    fc.tuple(interval, fc.integer({ min: 0, max: 9 })).map(([row, cluster]) => ({ ...row, cluster })),
    { minLength: 2, maxLength: 30 },
  )
  const options = { days: [0, 5, 10, 20, 40], resamples: 40 }

  test('hold the estimate, keep between 0 and 1, and come out the same each time', () => {
    fc.assert(
      fc.property(clustered, (rows) => {
        const curve = estimateCurve(rows, options)
        expect(estimateCurve(rows, options)).toEqual(curve)
        for (const { low, high, bandLow, bandHigh, standing, happened } of curve.points) {
          expect(0 <= bandLow && bandLow <= low && low <= high && high <= bandHigh && bandHigh <= 1).toBe(
            true,
          )
          expect(standing + happened).toBeLessThanOrEqual(curve.turnbull.walls)
        }
      }),
      { ...RUNS, numRuns: 30 },
    )
  })

  test('about one cause alone are those of the curve, turned over', () => {
    fc.assert(
      fc.property(clustered, (rows) => {
        const caused = rows.map((row) => ({ ...row, cause: row.to === null ? null : 'a' }))
        const days = options.days.slice(1, 3)
        const { causes } = estimateIncidenceCurve(caused, days, options)
        fc.pre(causes.length === 1)
        const curve = estimateCurve(rows, { ...options, days })
        causes[0]?.points.forEach(({ low, high, bandLow, bandHigh }, k) => {
          const point = curve.points[k]
          near(low, 1 - (point?.high ?? Number.NaN), 1e-4)
          expect(bandLow <= low && low <= high && high <= bandHigh).toBe(true)
        })
      }),
      { ...RUNS, numRuns: 20 },
    )
  })

  test('are never of no width, even where nothing happened', () => {
    const rows = Array.from({ length: 8 }, (_, cluster) => ({ cluster, from: 20, to: null }))
    const point = estimateCurve(rows, { days: [10] }).points[0]
    expect(point).toMatchObject({ low: 1, high: 1, bandHigh: 1, standing: 8, happened: 0 })
    expect(point?.bandLow).toBeCloseTo(wilson(8, 8)?.low ?? Number.NaN, 9)
  })

  test('of a difference hold it, and turn over with the groups', () => {
    fc.assert(
      fc.property(clustered, clustered, (a, b) => {
        const [one, other] = [estimateCurve(a, options), estimateCurve(b, options)]
        const turned = differenceOf(other, one)
        differenceOf(one, other).forEach(({ low, high, bandLow, bandHigh }, k) => {
          expect(-1 <= bandLow && bandLow <= low && low <= high && high <= bandHigh && bandHigh <= 1).toBe(
            true,
          )
          near(turned[k]?.bandLow ?? Number.NaN, -bandHigh, 1e-12)
        })
      }),
      { ...RUNS, numRuns: 20 },
    )
  })
})

describe('shares', { timeout: 120_000 }, () => {
  test('the exact interval holds Wilson’s middle and gives way at the ends', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (n, share) => {
          const x = Math.round(share * n)
          const [w, cp] = [wilson(x, n), clopperPearson(x, n)]
          expect(
            w !== null &&
              cp !== null &&
              w.low <= x / n &&
              x / n <= w.high &&
              cp.low <= x / n &&
              x / n <= cp.high,
          ).toBe(true)
          const other = wilson(n - x, n)
          near(other?.low ?? Number.NaN, 1 - (w?.high ?? Number.NaN), 1e-12)
        },
      ),
      RUNS,
    )
  })

  test('the distributions behind them are those of an independent library’s printed tables', () => {
    for (const z of [0, 0.5, 1.96, 3]) near(normalTails(z), 2 * (1 - cumulativeStdNormalProbability(z)), 2e-4)
    // The table has two decimals: too few for the wide tails.
    for (const [degrees, tails] of Object.entries(chiSquaredDistributionTable))
      for (const [p, x] of Object.entries(tails).filter(([tail]) => Number(tail) <= 0.1))
        near(chiSquareTail(x, Number(degrees)), Number(p), 1e-3)
  })
})
