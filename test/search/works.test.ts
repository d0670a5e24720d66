import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { WORK_NUMBERS, WORK_SETS, WORK_WORDS, type WorkPiece } from '#lib/db/evidence/works.ts'
import { facetLine } from '#lib/entry/facets.ts'
import { END_POINTS, type EndPoint, LOST_TO_SIGHT_DAYS } from '#lib/evidence/index.ts'
import { Columns } from '#lib/search/columns.ts'
import { fatesOf, reportsOf, type Selected, setAsideOf, sizeOf, traitsOf } from '#lib/search/works.ts'
import { WorkColumns } from '#lib/search/works-columns.ts'
import { selectIn } from '#lib/search/works-scope.ts'

/** Works in columns against the plainest loop over the same works, under random filters and after random changes. */
const ASKED = '2020-01-01'
const ASKED_DAY = Date.parse(ASKED) / 86_400_000
const FATES = ['reached', 'watched', 'competing', 'impossible'] as const
const ENDS = ['repointed-failed', 'replaced-other-reason', 'lost'] as const

const span = fc.tuple(fc.nat(900), fc.nat(900)).map(([from, more]) => ({ from, to: from + more }))
const oneWork = fc.record({
  ...{ use: fc.constantFrom('pointing', 'floor'), recipe: fc.constantFrom(null, 'one', 'two') },
  ...{ family: fc.constantFrom(null, 'air-lime', 'earth'), method: fc.constantFrom(null, 'putty') },
  ...{ rows: fc.subarray(['t#a', 't#b']), materials: fc.subarray(['lime-fat', 'clay', 'sand-pit']) },
  ...{ mixed: fc.constantFrom('as-stated', 'differs'), reporter: fc.constantFrom(null, 'someone-else') },
  ...{ leftOut: fc.constantFrom(null, null, null, 'no-visit'), building: fc.integer({ min: -3, max: 3 }) },
  ...{ lastOn: fc.integer({ min: ASKED_DAY - 4000, max: ASKED_DAY }), lastSeen: fc.boolean() },
  ...{ invented: fc.boolean(), interested: fc.boolean(), contradicted: fc.boolean() },
  ...{ watchedDays: fc.nat(3000), unit: fc.constantFrom(...FATES), joint: fc.constantFrom(...FATES) },
  ...{ loss: fc.constantFrom(...FATES), lossDamaged: fc.boolean(), end: fc.constantFrom(...ENDS) },
  ...{ unitSpan: span, jointSpan: span, lossSpan: span, endSpan: span },
})
type Work = typeof oneWork extends fc.Arbitrary<infer T> ? T : never

const oneCase = fc.record({
  country: fc.constantFrom('EE', 'SI'),
  unit: fc.subarray(['limestone', 'chalk', 'granite'], { minLength: 1 }),
  disputed: fc.constantFrom('no', 'no', 'yes'),
  works: fc.array(oneWork, { maxLength: 3 }),
})
type Case = typeof oneCase extends fc.Arbitrary<infer T> ? T : never

const oneFilter = fc.record(
  {
    country: fc.subarray(['EE', 'SI']),
    unit: fc.subarray(['limestone', 'granite']),
    ...{ use: fc.subarray(['pointing', 'floor']), recipe: fc.subarray(['one', 'two', 'three']) },
    ...{ family: fc.subarray(['air-lime', 'earth']), method: fc.subarray(['putty', 'hot-mixed']) },
    ...{ row: fc.subarray(['t#a', 't#b']), binder: fc.subarray(['lime-fat', 'clay']) },
    disputed: fc.subarray(['yes', 'no']),
  },
  { requiredKeys: [] },
)

/** A work as its row in the database has it. */
function rowOf(work: Work, document: number): Record<string, unknown> {
  const fated = (name: 'unit' | 'joint' | 'loss') => {
    const [fate, { from, to }] = [work[name], work[`${name}Span`]]
    const told = work.leftOut === null && fate !== 'impossible'
    return {
      [`${name}Fate`]: work.leftOut === null ? fate : null,
      [`${name}From`]: told ? from : null,
      [`${name}To`]: told && fate === 'reached' ? to : null,
    }
  }
  const ends = work.leftOut === null && [work.unit, work.joint, work.loss].includes('competing')
  const isLost = work.leftOut === null && work.loss === 'reached'
  return {
    ...work,
    ...{ document, baselineOn: work.leftOut === null ? work.lastOn - work.watchedDays : null },
    ...{
      ...fated('unit'),
      ...fated('joint'),
      ...fated('loss'),
      lossDamaged: isLost ? work.lossDamaged : null,
    },
    ...{
      endHow: ends ? work.end : null,
      endFrom: ends ? work.endSpan.from : null,
      endTo: ends ? work.endSpan.to : null,
    },
    ...{ rows: work.rows.join('\x1f'), materials: work.materials.join('\x1f') },
  }
}

function pieceOf(cases: readonly (readonly [number, Case])[]): WorkPiece {
  const rows = cases.flatMap(([id, one]) => one.works.map((work) => rowOf(work, id)))
  const column = (name: string) => rows.map((row) => row[name] ?? null)
  return {
    rows: rows.length,
    works: rows.map((_, k) => `w${k}`),
    numbers: (name) => column(name) as (number | null)[],
    texts: (name) => column(name) as (string | null)[],
  }
}

const fits = (one: Case, work: Work, filter: CaseFilter): boolean => {
  const some = (chosen: readonly string[] | undefined, own: readonly (string | null)[]) =>
    chosen === undefined ||
    chosen.length === 0 ||
    own.some((value) => value !== null && chosen.includes(value))
  return (
    one.disputed === 'no' &&
    some(filter.country, [one.country]) &&
    some(filter.unit, one.unit.includes('chalk') ? [...one.unit, 'limestone'] : one.unit) &&
    some(filter.use, [work.use]) &&
    some(filter.recipe, [work.recipe]) &&
    some(filter.family, [work.family]) &&
    some(filter.method, [work.method]) &&
    some(filter.row, work.rows) &&
    some(filter.binder, work.materials)
  )
}

/** What became of a work, as the wide row is meant to be read. */
function fateOf(work: Work, endPoint: EndPoint) {
  const other = endPoint === 'joint-lost-unit-sound' ? 'joint-lost-unit-damaged' : 'joint-lost-unit-sound'
  const name = endPoint === 'unit-damaged' ? 'unit' : endPoint === 'joint-worse' ? 'joint' : 'loss'
  const [kind, { from, to }] = [work[name], work[`${name}Span`]]
  if (kind === 'impossible') return null
  if (kind === 'reached' && name === 'loss' && work.lossDamaged !== (endPoint === 'joint-lost-unit-damaged'))
    return { kind: 'competing', from, to: null, cause: other, between: work.lossSpan }
  if (kind === 'reached') return { kind, from, to, cause: endPoint, between: { from, to } }
  if (kind === 'competing') return { kind, from, to: null, cause: work.end, between: work.endSpan }
  return { kind, from, to: null, cause: null, between: { from, to: null } }
}

const isLost = ({ lastSeen, lastOn }: Work) => lastSeen || lastOn < ASKED_DAY - LOST_TO_SIGHT_DAYS
const sorted = (rows: readonly object[]) => rows.map((row) => JSON.stringify(row)).sort()
const each = <Row extends { weight: number }>(rows: readonly Row[]) =>
  rows.flatMap(({ weight, ...row }) => Array.from({ length: weight }, () => row))

function compare(selected: Selected, cases: readonly Case[], filter: CaseFilter): void {
  const chosen = cases.flatMap((one, at) =>
    one.works.flatMap((work) => (fits(one, work, filter) ? [{ work, one, at }] : [])),
  )
  const told = chosen.filter(({ work }) => work.leftOut === null)
  const { works, walls, buildings, watchedDays } = sizeOf(selected)
  expect({ works, walls, buildings, watchedDays }).toEqual({
    works: told.length,
    walls: new Set(told.map(({ at }) => at)).size,
    buildings: new Set(told.map(({ work }) => work.building)).size,
    watchedDays: told.reduce((sum, { work }) => sum + work.watchedDays, 0),
  })
  const { interested, mixed } = reportsOf(selected)
  expect(interested).toBe(told.filter(({ work }) => work.interested).length)
  expect(mixed.differs).toBe(told.filter(({ work }) => work.mixed === 'differs').length)
  expect(setAsideOf(selected).leftOut.reduce((sum, one) => sum + one.works, 0)).toBe(
    chosen.length - told.length,
  )
  for (const { trait, value, works: count } of traitsOf(selected)) {
    if (trait === 'country') expect(count).toBe(told.filter(({ one }) => one.country === value).length)
    if (trait === 'use') expect(count).toBe(told.filter(({ work }) => work.use === value).length)
  }
  for (const endPoint of END_POINTS) {
    const { fates, causes, impossible } = fatesOf(selected, endPoint, { gridDays: 1, buckets: null })
    const expected = told.map(({ work }) => ({ work, fate: fateOf(work, endPoint) }))
    expect(impossible).toBe(expected.filter(({ fate }) => fate === null).length)
    expect(sorted(each(fates.rows))).toEqual(
      sorted(
        expected.flatMap(({ work, fate }) =>
          fate === null
            ? []
            : {
                ...{ kind: fate.kind, from: fate.from, to: fate.to },
                lost: fate.kind === 'watched' && isLost(work),
              },
        ),
      ),
    )
    expect(sorted(each(causes.rows))).toEqual(
      sorted(expected.flatMap(({ fate }) => (fate === null ? [] : { cause: fate.cause, ...fate.between }))),
    )
  }
}

describe('works in columns', () => {
  it('are counted as one by one, under every filter, after cases come, change and go', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(oneCase, { maxLength: 14 }),
        fc.array(fc.tuple(fc.nat(13), fc.option(oneCase)), { maxLength: 6 }),
        oneFilter,
        async (first, changes, filter) => {
          const cases = new Map(first.entries())
          const documents = new Columns()
          const columns = new WorkColumns()
          const place = (id: number, one: Case) =>
            documents.set({
              ...{ id, years: 1, publishedAt: 0, latitude: null, longitude: null },
              facets: facetLine({
                kind: ['case'],
                ...{ unit: one.unit, country: [one.country], disputed: [one.disputed] },
                use: one.works.map(({ use }) => use),
                recipe: one.works.flatMap(({ recipe }) => recipe ?? []),
                family: one.works.flatMap(({ family }) => family ?? []),
                method: one.works.flatMap(({ method }) => method ?? []),
                row: one.works.flatMap(({ rows }) => rows),
                binder: one.works.flatMap(({ materials }) => materials),
              }),
            })
          for (const [id, one] of cases) place(id, one)
          columns.add(pieceOf([...cases]), new Map())
          for (const [id, now] of changes) {
            columns.drop(new Set([id]))
            if (now === null) {
              cases.delete(id)
              documents.drop(id)
            } else {
              cases.set(id, now)
              place(id, now)
              columns.add(pieceOf([[id, now]]), new Map())
            }
          }
          const known = { columns, change: 1, withdrawn: { cases: 0, visits: 0 } }
          const record = {
            columns: documents,
            change: 1,
            look: async () => new Map(),
            inARow: async () => [],
          }
          const selected = await selectIn({ filter, asOf: ASKED }, record, known)
          compare(selected, [...cases.values()], filter)
        },
      ),
      { numRuns: 200, seed: 20261129 },
    )
  })

  it('name every column that is read of a work once', () => {
    const names = [...WORK_NUMBERS, ...WORK_WORDS, ...WORK_SETS]
    expect(new Set(names).size).toBe(names.length)
  })
})
