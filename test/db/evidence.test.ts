import { v4 } from 'uuid'
import { beforeAll, describe, expect, it } from 'vitest'
import { evidenceOperation } from '#lib/api/evidence.ts'
import { evidenceAnswer } from '#lib/api/evidence-answer.ts'
import { readEvidence } from '#lib/api/evidence-read.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { db } from '#lib/db/client.ts'
import { HORIZONS, stateAt } from '#lib/db/projection/horizon.ts'
import type { CaseBody, Work } from '#lib/entry/case.ts'
import { firstDayOf, lastDayOf } from '#lib/entry/dates.ts'
import {
  DAMP_STATES,
  FAMILIES,
  JOINT_STATES,
  OBSERVERS,
  UNIT_STATES,
  USES,
  WORK_ENDS,
} from '#lib/entry/terms.ts'
import type { VisitBody } from '#lib/entry/visit.ts'
import {
  COMPETING,
  END_POINTS,
  groupIntervals,
  LOST_TO_SIGHT_DAYS,
  observe,
  timeToDampAgain,
  timeToDry,
  watch,
} from '#lib/evidence/index.ts'
import {
  fatesOf,
  reportsOf,
  type Scope,
  type Selected,
  selectWorks,
  setAsideOf,
  sharedVisitsOf,
  sizeOf,
  statesOf,
  traitsOf,
  watchedRows,
  weatherOf,
} from '#lib/search/works.ts'
import { answerDispute, dispute } from '#lib/workflow/dispute.ts'
import { rebuild } from '#lib/workflow/rebuild.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import {
  makeCase,
  makeRecipe,
  makeVisit,
  makeWork,
  OTHER,
  publish,
  REVIEWER,
  STEWARD,
} from '../support/make.ts'

/**
 * What is added up in memory against the plainest loop over the bodies themselves. Bodies are laid out by number, so
 * that every combination occurs and a failure fails again.
 */
const ASKED = '2024-01-01'
const FINE = { gridDays: 1, buckets: null }
const pick = <T>(list: readonly T[], n: number): T => list[n % list.length] as T
const RECIPES = ['one', 'two', 'three'] as const
/** Worsening states, some of them taken back, at uneven days. */
const YEARS = [1.1, 2.3, 4.8, 9.6, 11]

interface Told {
  readonly slug: string
  readonly body: CaseBody
  readonly visits: readonly VisitBody[]
}

function workOf(n: number, id: string): Work {
  const recipe = n % 5 === 0 ? undefined : `${pick(RECIPES, n)}@1`
  const how = n % 4 === 0 ? pick(WORK_ENDS, n / 4) : undefined
  return makeWork({
    id,
    use: pick(USES, n),
    started: '2005-04',
    finished: '2005-06',
    ...(recipe && { recipe }),
    ...(how && { ended: { how, on: `${2010 + (n % 7)}${n % 3 === 0 ? '' : '-03'}` } }),
    ...(n % 3 === 0 && {
      mixed: {
        ingredients: [
          { material: 'lime-fat', parts: { low: 1, high: 1 }, by: 'volume', state: 'putty' },
          {
            material: 'sand-pit',
            parts: { low: n % 2 === 0 ? 3 : 5, high: n % 2 === 0 ? 3 : 5 },
            by: 'volume',
            state: 'dry',
          },
        ],
      },
    }),
  })
}

function visitsOf(slug: string, n: number, work: string): VisitBody[] {
  if (n % 11 === 10) return []
  const baseline = makeVisit({
    case: slug,
    work,
    on: n % 9 === 8 ? '2009-01-01' : '2005-07-01',
    baseline: n % 7 !== 6,
    observer: { who: pick(OBSERVERS, n % 4), how: 'Walked.' },
  })
  const later = YEARS.slice(0, n % 6).map((years, k) => {
    const worn = (n * (k + 3)) % 7
    return makeVisit({
      case: slug,
      work,
      on: new Date(Date.UTC(2005, 6, 1) + years * 365.25 * 86_400_000).toISOString().slice(0, 10),
      baseline: false,
      joint: pick(JOINT_STATES, Math.max(0, worn + k - 3) % 5),
      unit: pick(UNIT_STATES, Math.max(0, (n % 5) + k - 2) % 5),
      damp: pick(DAMP_STATES, n + k),
      ...(k % 2 === 0 && { daysSinceRain: (n * 3 + k) % 12 }),
      observer: { who: pick(OBSERVERS, n + k), how: 'Walked.' },
      ...(n % 3 === 1 &&
        k === 0 && {
          others: [
            { who: 'surveyor', joint: pick(JOINT_STATES, worn), unit: 'sound', damp: pick(DAMP_STATES, n) },
          ],
        }),
    })
  })
  return [baseline, ...later]
}

const told: Told[] = Array.from({ length: 26 }, (_, n) => {
  const slug = `wall-${n}`
  const works = n % 6 === 5 ? [workOf(n, 'north'), workOf(n + 1, 'south')] : [workOf(n, 'north')]
  const body = makeCase({
    title: `Wall ${n}`,
    works,
    place: {
      country: n % 2 === 0 ? 'EE' : 'PT',
      region: 'r',
      ...(n % 4 < 2 && { locality: `Village ${n % 8}` }),
    },
    interests: n % 3 === 0 ? 'None.' : 'Paid.',
  })
  return { slug, body, visits: works.flatMap((work, k) => visitsOf(slug, n + k, work.id)) }
})

beforeAll(async () => {
  for (const [n, slug] of RECIPES.entries())
    await publish(
      'recipe',
      slug,
      makeRecipe({ family: pick(FAMILIES, n), follows: n === 0 ? [] : ['old-table#first'] }),
    )
  for (const { slug, body, visits } of told) {
    await publish('case', slug, body)
    for (const [k, visit] of visits.entries()) await publish('visit', `${slug}-v${k}`, visit)
  }
  // Some hundred and fifty entries are published one after another; a busy machine takes its time.
}, 300_000)

const day = (iso: string) => Date.parse(iso) / 86_400_000
const range = (date: string) => ({ first: day(firstDayOf(date)), last: day(lastDayOf(date)) })

/** One work as the loop reads it. */
function readWork({ slug, body, visits }: Told, work: Work) {
  const own = visits.filter((visit) => visit.work === work.id)
  const seen = own.map((visit) => ({
    day: day(visit.on),
    baseline: visit.baseline,
    joint: JOINT_STATES.indexOf(visit.joint),
    unit: UNIT_STATES.indexOf(visit.unit),
    damp: DAMP_STATES.indexOf(visit.damp),
    visit,
  }))
  const watched = watch({
    finished: range(work.finished),
    visits: seen,
    ...(work.ended && { ended: { how: work.ended.how, ...range(work.ended.on) } }),
  })
  const last = own.at(-1)?.on ?? ''
  const lost = work.ended?.how === 'last-seen' || (last !== '' && day(last) < day(ASKED) - LOST_TO_SIGHT_DAYS)
  return { slug, body, work, own, seen, watched, lost }
}
const all = told.flatMap((one) => one.body.works.map((work) => readWork(one, work)))
const buildingOf = ({ slug, body: { place } }: Omit<Told, 'visits'>) =>
  place.locality ? `${place.country} ${place.locality}` : slug

const FILTERS: [CaseFilter, (one: (typeof all)[number]) => boolean][] = [
  [{}, () => true],
  [{ country: ['EE'] }, ({ body }) => body.place.country === 'EE'],
  [{ recipe: ['two'] }, ({ work }) => work.recipe === 'two@1'],
  [{ family: [FAMILIES[0], FAMILIES[1]] }, ({ work }) => work.recipe === 'one@1' || work.recipe === 'two@1'],
  [
    { row: ['old-table#first'], country: ['PT'] },
    ({ work, body }) => body.place.country === 'PT' && (work.recipe === 'two@1' || work.recipe === 'three@1'),
  ],
  [{ binder: ['lime-fat'] }, ({ work }) => work.recipe !== undefined || work.mixed !== undefined],
  [{ use: [USES[1], USES[2]] }, ({ work }) => [USES[1], USES[2]].some((use) => use === work.use)],
]
const scopeFor = (filter: CaseFilter): Scope => ({ filter, asOf: ASKED })
const count = <T>(scope: Scope, tell: (selected: Selected) => T): Promise<T> =>
  selectWorks([scope], ([one]) => tell(one as Selected))
/** Each row as often as it was counted. */
const one = <Row extends { weight: number }>({ rows }: { rows: readonly Row[] }) =>
  rows.flatMap(({ weight, ...row }) => Array.from({ length: weight }, () => row))
const sorted = <T>(rows: readonly T[]) => rows.map((row) => JSON.stringify(row)).sort()

describe.each(FILTERS)('figures for %j', (filter, fits) => {
  const chosen = all.filter(fits)
  const watched = chosen.flatMap((one) =>
    typeof one.watched === 'string' ? [] : [{ ...one, watched: one.watched }],
  )
  const scope = scopeFor(filter)

  it.each(END_POINTS)('count every work once for %s, with its interval', async (endPoint) => {
    const { fates, causes, watching } = await count(scope, (own) => fatesOf(own, endPoint, FINE))
    const found = one(fates)
    const expected = watched.flatMap(({ watched: own, lost }) => {
      const seen = observe(endPoint, own)
      if (seen.kind === 'impossible') return []
      return {
        kind: seen.kind,
        from: seen.interval.from,
        to: seen.interval.to,
        lost: seen.kind === 'watched' && lost,
      }
    })
    expect(sorted(found)).toEqual(sorted(expected))
    const { clusters } = fates
    expect(clusters.weight.reduce((sum, n) => sum + n, 0)).toBe(expected.length)
    expect(clusters.count).toBeLessThanOrEqual(expected.length)
    const firsts = watched.flatMap(({ watched: own }) => {
      const seen = observe(endPoint, own)
      return seen.kind === 'competing' ? { how: seen.competing.how, ...seen.competing.interval } : []
    })
    const told = watched.flatMap(({ slug, watched: own }) => {
      const seen = observe(endPoint, own)
      if (seen.kind === 'impossible' || (seen.interval.from === 0 && seen.interval.to === null)) return []
      return { slug, days: seen.interval.to ?? seen.interval.from }
    })
    expect(watching).toEqual({
      works: told.length,
      walls: new Set(told.map(({ slug }) => slug)).size,
      watchedDays: told.reduce((sum, { days }) => sum + days, 0),
    })
    const others = one(causes).filter(({ cause }) => cause !== null && cause !== endPoint)
    expect(sorted(others.map(({ cause: how, from, to }) => ({ how, from, to })))).toEqual(sorted(firsts))
  })

  it('count states by the nearest visit at each time, and ends at times that have come', async () => {
    const found = (await count(scope, statesOf)).map(({ years, seen, works }) => ({
      years,
      seen: seen === null ? null : 'ended' in seen ? seen.ended : `${seen.joint} ${seen.unit} ${seen.damp}`,
      works,
    }))
    const expected = new Map<string, number>()
    for (const { watched: own, seen } of watched)
      for (const horizon of HORIZONS) {
        const start = own.baseline.day
        const dated = seen
          .filter(
            (one) => one.day >= start && one.day - start <= (own.ended?.last ?? Number.POSITIVE_INFINITY),
          )
          .map(({ visit, day: on }) => ({ visit, day: on - start }))
        const at = stateAt(horizon, dated, own.ended)
        const hasCome = start + horizon.years * 365.25 <= day(ASKED)
        if (!hasCome && (at === null || 'ended' in at)) continue
        const name =
          at === null
            ? null
            : 'ended' in at
              ? at.ended
              : `${at.visit.joint} ${at.visit.unit} ${at.visit.damp}`
        const key = JSON.stringify([horizon.years, name])
        expected.set(key, (expected.get(key) ?? 0) + 1)
      }
    const added = new Map<string, number>()
    for (const { years, seen, works } of found) {
      const key = JSON.stringify([years, seen])
      added.set(key, (added.get(key) ?? 0) + works)
    }
    expect([...added].sort()).toEqual([...expected].sort())
  })

  it('count works, walls and what was left out', async () => {
    const { size, reports, aside } = await count(scope, (own) => ({
      ...{ size: sizeOf(own), reports: reportsOf(own), aside: setAsideOf(own) },
    }))
    expect(size.works).toBe(watched.length)
    expect(size.watchedDays).toBe(watched.reduce((n, { watched: own }) => n + own.watchedDays, 0))
    expect(size.longestDays).toBe(Math.max(0, ...watched.map(({ watched: own }) => own.watchedDays)))
    expect(size.walls).toBe(new Set(watched.map(({ slug }) => slug)).size)
    expect(size.buildings).toBe(new Set(watched.map(buildingOf)).size)
    expect(reports.interested).toBe(watched.filter(({ body }) => body.interests === 'Paid.').length)
    expect(reports.reported['did-the-work']).toBe(
      watched.filter(({ own }) => own.every(({ observer }) => observer.who === 'did-the-work')).length,
    )
    expect(reports.mixed['no-recipe']).toBe(watched.filter(({ work }) => work.recipe === undefined).length)
    // The recipe says 2.5 to 3 of sand: three were as stated, five were not.
    expect(reports.mixed.differs).toBe(
      watched.filter(({ work }) => work.recipe && work.mixed?.ingredients[1]?.parts.low === 5).length,
    )
    const reasons = chosen.flatMap(({ watched: own }) => (typeof own === 'string' ? own : []))
    expect(Object.fromEntries(aside.leftOut.map(({ reason, works: n }) => [reason, n]))).toEqual(
      Object.fromEntries([...new Set(reasons)].map((one) => [one, reasons.filter((r) => r === one).length])),
    )
  })

  it('give what several people read of one visit, the writer first', async () => {
    const expected = chosen.flatMap(({ own }) =>
      own.flatMap(({ joint, unit, damp, others = [] }) =>
        others.length === 0
          ? []
          : {
              joint: [joint, ...others.map((one) => one.joint)].map((s) => JOINT_STATES.indexOf(s)),
              unit: [unit, ...others.map((one) => one.unit)].map((s) => UNIT_STATES.indexOf(s)),
              damp: [damp, ...others.map((one) => one.damp)].map((s) => DAMP_STATES.indexOf(s)),
            },
      ),
    )
    const found = await count(scope, sharedVisitsOf)
    expect(sorted(found.map(({ on: _, ...steps }) => steps))).toEqual(sorted(expected))
  })

  it('tell how long drying took as the loop does', async () => {
    const { dry, again } = await count(scope, (own) => weatherOf(own, FINE))
    const looped = (read: typeof timeToDry) =>
      sorted(watched.flatMap(({ watched: own }) => read(own) ?? []).map(({ from, to }) => ({ from, to })))
    expect(sorted(one(dry))).toEqual(looped(timeToDry))
    expect(sorted(one(again))).toEqual(looped(timeToDampAgain))
  })

  it('spread over traits as the bodies do', async () => {
    const traits = await count(scope, traitsOf)
    const of = (trait: string, value: string) =>
      traits.find((one) => one.trait === trait && one.value === value)?.works ?? 0
    for (const country of ['EE', 'PT'])
      expect(of('country', country)).toBe(watched.filter(({ body }) => body.place.country === country).length)
    for (const use of USES) expect(of('use', use)).toBe(watched.filter(({ work }) => work.use === use).length)
    expect(of('unit', 'limestone')).toBe(watched.length)
  })
})

describe('fatesOf(selected, endPoint, grain)', () => {
  const all = (grain: typeof FINE | { gridDays: number; buckets: number }) =>
    count(scopeFor({}), (own) => END_POINTS.map((endPoint) => fatesOf(own, endPoint, grain)))

  it('meets every kind of fate and every way to compete among these bodies', async () => {
    const found = await all(FINE)
    const rows = found.flatMap(({ fates }) => fates.rows)
    expect([...new Set(rows.map(({ kind }) => kind))].sort()).toEqual(['competing', 'reached', 'watched'])
    expect(rows.some(({ lost }) => lost)).toBe(true)
    const causes = new Set(found.flatMap(({ causes }) => causes.rows.map(({ cause }) => cause)))
    for (const how of COMPETING) expect(causes).toContain(how)
  })

  it('widens days outwards to its grid, and deals buildings into buckets', async () => {
    const [fine, coarse] = [await all(FINE), await all({ gridDays: 91, buckets: 4 })]
    END_POINTS.forEach((_, k) => {
      const [a, b] = [fine[k]?.fates, coarse[k]?.fates]
      expect(groupIntervals(b?.rows ?? [])).toEqual(groupIntervals(a?.rows ?? [], 91))
      // Buildings are dealt by their ids, which are new each time: now and then a bucket has none.
      expect(b?.clusters.count).toBeLessThanOrEqual(4)
      expect(b?.clusters.count).toBeLessThan(a?.clusters.count ?? 0)
      expect(b?.clusters.weight.reduce((sum, n) => sum + n, 0)).toBe(
        a?.rows.reduce((sum, { weight }) => sum + weight, 0),
      )
    })
  })
})

describe('the projection', () => {
  it('is the same after a rebuild', async () => {
    const before = await db().outcomeIndex.findMany()
    await rebuild()
    expect(sorted(await db().outcomeIndex.findMany())).toEqual(sorted(before))
    expect(before.length).toBe(all.length)
  })

  it('takes walls of one locality and kind for one building, and no others', async () => {
    const rows = await db().outcomeIndex.findMany({ select: { caseEntryId: true, building: true } })
    expect(new Set(rows.map(({ building }) => building)).size).toBe(new Set(told.map(buildingOf)).size)
  })

  it('names the rows that watched works follow', async () => {
    const works = all.filter(
      ({ watched, work }) =>
        typeof watched !== 'string' && (work.recipe === 'two@1' || work.recipe === 'three@1'),
    )
    expect(await watchedRows(['old-table#first', 'old-table#second'])).toEqual(
      new Map([['old-table#first', works.length]]),
    )
  })

  it('leaves out disputed cases and says how many; forgets withdrawn ones', async () => {
    const now = async () => {
      const { size, setAside } = await readEvidence(scopeFor({}), [])
      return { ...setAside, leftOut: [], works: size.works }
    }
    const before = await now()
    const [one] = all.filter(({ watched }) => typeof watched !== 'string')
    const slug = one?.slug ?? ''
    const own = all.filter((other) => other.slug === slug && typeof other.watched !== 'string').length
    const without = { ...before, works: before.works - own }
    await dispute(OTHER, { key: v4(), slug, words: 'It was never repointed.' })
    expect(await now()).toEqual({ ...without, disputedCases: 1 })
    await answerDispute(REVIEWER, { key: v4(), slug, outcome: 'settle', read: 2, words: 'It was.' })
    expect(await now()).toEqual(before)
    await withdraw(STEWARD, { key: v4(), slug, words: 'The owner asked.' })
    expect(await now()).toEqual({ ...without, withdrawnCases: 1 })
  })
})

describe('POST /api/v1/evidence', () => {
  const run = (body: unknown) =>
    evidenceOperation.run({
      params: undefined,
      query: undefined,
      body: evidenceOperation.body?.parse(body) as never,
    })

  it('answers as its schema says, with a comparison beside it', async () => {
    const answer = await run({ filter: { country: ['EE'] }, compareWith: [{ country: ['PT'] }] })
    expect(evidenceAnswer.strict().parse(answer)).toEqual(answer)
    expect(answer.endPoints.map(({ endPoint }) => endPoint)).toEqual([...END_POINTS])
    expect(answer.comparisons[0]?.groups.map(({ key }) => key)).toEqual(['0', '1'])
    for (const { endPoint, competing } of answer.endPoints)
      expect(competing.map(({ how }) => how)).not.toContain(endPoint)
    const country = answer.comparisons[0]?.traits.find(({ trait }) => trait === 'country')
    expect(country).toMatchObject({ distance: 1, differsMuch: true })
  })

  it('takes no test where groups share works, and says how many they share', async () => {
    const { comparisons } = await run({ compareWith: [{ country: ['PT'] }], endPoints: ['joint-worse'] })
    const [all, some] = comparisons[0]?.groups ?? []
    expect(some?.size.works).toBeGreaterThan(0)
    expect(all?.size.works).toBeGreaterThan(some?.size.works ?? 0)
    const { works, walls } = some?.size ?? {}
    const overlap = { first: '0', second: '1', works, walls, whole: 'second' }
    expect(comparisons[0]).toMatchObject({ overlaps: [overlap], test: null })
    expect(comparisons[0]?.pairs.length).toBeLessThanOrEqual(1)
    const { comparisons: apart } = await run({
      filter: { country: ['EE'] },
      compareWith: [{ country: ['PT'] }],
    })
    expect(apart.map((one) => one.overlaps)).toEqual(END_POINTS.map(() => []))
    // Only where both groups have enough for a curve.
    for (const { groups, test } of apart)
      expect(test?.degrees).toBe(groups.every(({ figures }) => figures.curve !== null) ? 1 : undefined)
    expect(apart.some(({ test }) => test !== null)).toBe(true)
  })

  it('knows a group that is set beside itself, by other choices too, and tells no difference of it', async () => {
    const { comparisons } = await run({
      filter: { country: ['EE'] },
      compareWith: [{ country: ['EE'], disputed: ['no'] }, { country: ['PT'] }],
    })
    for (const { groups, overlaps, pairs, test } of comparisons) {
      const { works, walls } = groups[0]?.size ?? {}
      expect(overlaps).toEqual([{ first: '0', second: '1', works, walls, whole: 'both' }])
      expect(pairs.map(({ first, second }) => `${first} ${second}`)).not.toContain('0 1')
      expect(test).toBeNull()
    }
    expect(comparisons.some(({ pairs }) => pairs.length === 2)).toBe(true)
  })

  it('leads to the cases behind the figures, and says where they were chosen by their outcome', async () => {
    const plain = await run({ filter: { country: ['PT'] }, endPoints: ['joint-worse'] })
    expect(plain.chosenByOutcome).toBe(false)
    expect(plain.cases.list).toBe('/api/v1/find/cases.json?country=PT')
    expect(plain.cases.total).toBeGreaterThanOrEqual(plain.size.walls)
    expect(plain.cases.first.length).toBe(plain.cases.total)
    expect(plain.cases.first.every(({ country }) => country === 'PT')).toBe(true)
    expect(plain.cases.quality['second-observer']).toBeLessThanOrEqual(plain.cases.total)
    const byWords = await run({ text: 'wall', endPoints: ['joint-worse'] })
    expect(byWords).toMatchObject({
      chosenByOutcome: true,
      cases: { list: '/api/v1/find/cases.json?q=wall' },
    })
    expect((await run({ text: 'zyzzyva', endPoints: ['joint-worse'] })).size.works).toBe(0)
    for (const filter of [{ unitState: ['sound'] }, { minYears: 10 }, { quality: ['past-five'] }])
      expect((await run({ filter, endPoints: ['joint-worse'] })).chosenByOutcome).toBe(true)
  })

  it('names the value that no filter knows', async () => {
    await expect(run({ filter: { frost: ['frekwent'] } })).rejects.toMatchObject({
      code: 'invalid',
      faults: [{ field: 'filter.frost', value: 'frekwent', limit: 'frequent' }],
    })
  })

  it('draws no curve below the least number of walls, and says what is missing', async () => {
    const { endPoints, size } = await run({ filter: { use: [USES[1]] } })
    expect(size.walls).toBeLessThan(5)
    expect(endPoints[0]).toMatchObject({ curve: null, lacking: { walls: 5 - size.walls }, horizons: [] })
  })
})
