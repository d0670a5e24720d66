import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  END_POINTS,
  type Ending,
  type EndPoint,
  type History,
  observe,
  type Seen,
  type Watched,
  watch,
} from '#lib/evidence/index.ts'

const seen = (day: number, joint = 0, unit = 0, over: Partial<Seen> = {}): Seen => ({
  day,
  baseline: false,
  joint,
  unit,
  damp: 0,
  ...over,
})
const marked = (day: number, joint = 0, unit = 0) => seen(day, joint, unit, { baseline: true })
const on = (day: number) => ({ first: day, last: day })
const ended = (how: Ending, first: number, last = first) => ({ how, first, last })
const history = (visits: readonly Seen[], end?: History['ended'], finished = on(100)): History => ({
  finished,
  visits,
  ...(end === undefined ? {} : { ended: end }),
})
const watched = (visits: readonly Seen[], end?: History['ended']): Watched => {
  const found = watch(history(visits, end))
  if (typeof found === 'string') throw new Error(found)
  return found
}
const found = (endPoint: EndPoint, visits: readonly Seen[], end?: History['ended']) =>
  observe(endPoint, watched(visits, end))

describe('watch', () => {
  test('counts days from the visit marked as baseline', () => {
    const { baseline, visits, watchedDays } = watched([seen(900), marked(130), seen(110)])
    expect([baseline.day, visits.map(({ day }) => day), watchedDays]).toEqual([130, [770], 770])
  })

  test('takes a first visit soon after the end for the baseline though nobody marked it', () => {
    expect(watched([seen(192), seen(500)]).baseline.day).toBe(192)
    expect(watch(history([seen(193), seen(500)]))).toBe('no-baseline')
    // Finished some day in a month: the last of them counts.
    expect(watch(history([seen(222), seen(500)], undefined, { first: 100, last: 130 }))).toMatchObject({
      watchedDays: 278,
    })
  })

  test.each([
    ['no visit', [], undefined, 'no-visit'],
    ['a first visit years later', [seen(2000), seen(3000)], undefined, 'no-baseline'],
    ['a baseline more than a year late', [marked(467), seen(3000)], undefined, 'baseline-late'],
    ['nothing after the baseline', [marked(100)], undefined, 'not-revisited'],
    ['a baseline from before the work and nothing else', [marked(20)], undefined, 'no-baseline'],
    ['visits only after the work had ended', [marked(100), seen(900)], ended('lost', 100), 'not-revisited'],
  ] as const)('leaves out a work with %s', (_, visits, end, reason) => {
    expect(watch(history(visits, end))).toBe(reason)
  })

  test('passes over visits to whatever came after the work', () => {
    const { visits, ended: end } = watched(
      [marked(100), seen(400), seen(900, 4)],
      ended('replaced-other-reason', 500, 530),
    )
    expect(visits.map(({ day }) => day)).toEqual([300])
    expect(end).toEqual({ how: 'replaced-other-reason', first: 400, last: 430 })
  })

  test('does not take "last seen" for an end', () => {
    expect(watched([marked(100), seen(400)], ended('last-seen', 400)).ended).toBeUndefined()
  })
})

describe('observe', () => {
  test('puts unit damage between the last visit without and the first with it', () => {
    expect(found('unit-damaged', [marked(100), seen(300), seen(700, 0, 1), seen(900, 0, 2)])).toEqual({
      kind: 'reached',
      interval: { from: 200, to: 600 },
      contradicted: false,
    })
  })

  test('counts worsening since the baseline, not the state itself', () => {
    expect(found('unit-damaged', [marked(100, 0, 2), seen(700, 0, 2)])).toMatchObject({
      kind: 'watched',
      interval: { from: 600, to: null },
    })
    expect(found('unit-damaged', [marked(100, 0, 4), seen(700, 0, 4)])).toEqual({ kind: 'impossible' })
    expect(found('joint-lost-unit-sound', [marked(100, 4), seen(700, 4)])).toEqual({ kind: 'impossible' })
    expect(found('joint-worse', [marked(100, 1), seen(700, 2)])).toMatchObject({ kind: 'reached' })
  })

  test('tells a joint lost beside a sound unit from one lost with it, each ending the watch for the other', () => {
    const sound = [marked(100), seen(300, 3), seen(700, 4)]
    expect(found('joint-lost-unit-sound', sound)).toMatchObject({
      kind: 'reached',
      interval: { from: 200, to: 600 },
    })
    expect(found('joint-lost-unit-damaged', sound)).toMatchObject({
      kind: 'competing',
      interval: { from: 200, to: null },
      competing: { how: 'joint-lost-unit-sound', interval: { from: 200, to: 600 } },
    })
    const damaged = [marked(100), seen(300, 3, 1), seen(700, 4, 1)]
    expect(found('joint-lost-unit-damaged', damaged)).toMatchObject({ kind: 'reached' })
    // Damage first seen after the joint had gone belongs to the lost joint, not to the mortar.
    expect(found('joint-lost-unit-sound', [...sound, seen(900, 4, 2)])).toMatchObject({ kind: 'reached' })
  })

  test('takes a mortar repointed because it failed for a lost joint, some time since the last visit', () => {
    const visits = [marked(100), seen(300, 2)]
    const end = ended('repointed-failed', 465, 829)
    expect(found('joint-lost-unit-sound', visits, end)).toMatchObject({
      kind: 'reached',
      interval: { from: 200, to: 729 },
    })
    expect(found('unit-damaged', visits, end)).toMatchObject({
      kind: 'competing',
      interval: { from: 200, to: null },
      competing: { how: 'repointed-failed', interval: { from: 364, to: 729 } },
    })
  })

  test.each(['replaced-other-reason', 'lost'] as const)('lets %s end the watch of every end point', (how) => {
    for (const endPoint of END_POINTS)
      expect(found(endPoint, [marked(100), seen(300)], ended(how, 500))).toMatchObject({
        kind: 'competing',
        interval: { from: 200, to: null },
        competing: { how, interval: { from: 399, to: 400 } },
      })
  })

  test('makes the stretch longer where a later visit takes it back, and says so', () => {
    const visits = [marked(100), seen(200, 0, 1), seen(300), seen(500, 0, 1)]
    expect(found('unit-damaged', visits)).toEqual({
      kind: 'reached',
      interval: { from: 0, to: 400 },
      contradicted: true,
    })
    expect(found('unit-damaged', visits.slice(0, 3))).toEqual({
      kind: 'watched',
      interval: { from: 0, to: null },
      contradicted: true,
    })
  })

  test('decides nothing on a day on which two people disagree', () => {
    const visits = [marked(100), seen(300), seen(500), seen(500, 0, 1), seen(800, 0, 1)]
    expect(found('unit-damaged', visits)).toMatchObject({
      interval: { from: 200, to: 700 },
      contradicted: true,
    })
  })

  test('more visits never widen the interval of a wall that only wears', { timeout: 120_000 }, () => {
    const day = fc.integer({ min: 1, max: 5000 })
    fc.assert(
      fc.property(
        fc.array(day, { minLength: 1, maxLength: 12 }),
        fc.array(day, { maxLength: 12 }),
        fc.record({ joint: day, unit: day }),
        fc.constantFrom(...END_POINTS),
        (some, more, worn, endPoint) => {
          const visit = (d: number) => seen(100 + d, d >= worn.joint ? 4 : 0, d >= worn.unit ? 1 : 0)
          const bracket = (days: readonly number[]) => {
            const result = observe(endPoint, watched([marked(100), ...days.map(visit)]))
            if (result.kind === 'impossible') throw new Error('nothing to worsen')
            return result.kind === 'competing' ? result.competing : result
          }
          const [before, after] = [bracket(some).interval, bracket([...some, ...more]).interval]
          expect(after.from).toBeGreaterThanOrEqual(before.from)
          if (before.to !== null) expect(after.to ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(before.to)
        },
      ),
      { numRuns: 200, seed: 20261125 },
    )
  })
})
