import { describe, expect, it } from 'vitest'
import { caseDateFaults, visitDateFaults } from '#lib/entry/date-faults.ts'
import { todayAnywhere } from '#lib/entry/dates.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import { makeCase, makeVisit, makeWork } from '../support/make.ts'

const TODAY = '2024-06-15'
const inCase = (over: Parameters<typeof makeWork>[0], rest: Parameters<typeof makeCase>[0] = {}) =>
  caseDateFaults(makeCase({ works: [makeWork(over)], recordedOn: TODAY, ...rest }), TODAY)

describe('caseDateFaults(body, today)', () => {
  it.each([
    ['a month within the year it began in', { started: '2010', finished: '2010-03' }],
    ['the same month', { started: '2010-05', finished: '2010-05' }],
    ['today', { started: TODAY, finished: TODAY }],
    ['this month, this year', { started: '2024', finished: '2024-06' }],
    ['an end in the year it was finished', { ended: { how: 'lost', on: '2010' } }],
  ] as const)('lets pass %s', (_, over) => {
    expect(inCase(over)).toEqual([])
  })

  it.each([
    [
      'an end before its beginning in one year',
      { started: '2010-06', finished: '2010-05' },
      { field: 'works.0.finished', code: 'before-begun', value: '2010-05', limit: '2010-06' },
    ],
    [
      'what is still to come',
      { started: '2010', finished: '2024-07' },
      { field: 'works.0.finished', code: 'in-the-future', value: '2024-07' },
    ],
    [
      'what ended before it was finished',
      { ended: { how: 'lost', on: '2010-05' } },
      { field: 'works.0.ended.on', code: 'before-finished', value: '2010-05', limit: '2010-06' },
    ],
  ] as const)('refuses %s', (_, over, fault) => {
    expect(inCase(over)).toEqual([fault])
  })

  it('refuses what was done before there was a building', () => {
    const rest = {
      structure: { type: 'farm-building' as const, century: 20 },
      earlier: [{ what: 'Limewash', when: '1899' }],
    } satisfies Parameters<typeof makeCase>[0]
    expect(
      inCase({ started: '1899', finished: '1900' }, rest).map(({ field, code }) => [field, code]),
    ).toEqual([
      ['works.0.finished', 'before-building'],
      ['earlier.0.when', 'before-building'],
    ])
  })

  it('reads what is still being written, and leaves what is no date to others', () => {
    expect(caseDateFaults({}, TODAY)).toEqual([])
    const works = [{ started: '2030', finished: 'last summer' }, { finished: '2010-02-31' }, {}]
    expect(caseDateFaults({ works, recordedOn: 'today' }, TODAY)).toEqual([
      { field: 'works.0.started', code: 'in-the-future', value: '2030' },
    ])
  })
})

describe('visitDateFaults(body, works, today)', () => {
  const works = [makeWork({ started: '2010-05', finished: '2010-06' })]

  it('refuses a visit before the work and one to come, and pictures of days to come', () => {
    expect(visitDateFaults(makeVisit({ on: '2010-04-30' }), works, TODAY)).toEqual([
      { field: 'on', code: 'before-start', value: '2010-04-30', limit: '2010-05' },
    ])
    const photos = [{ sha256: 'a'.repeat(64), alt: 'A joint', takenOn: '2024-06-17' }]
    expect(visitDateFaults(makeVisit({ on: '2024-06-16', photos }), works, TODAY)).toEqual([
      { field: 'on', code: 'in-the-future', value: '2024-06-16' },
      { field: 'photos.0.takenOn', code: 'in-the-future', value: '2024-06-17' },
    ])
  })

  it('lets pass a visit on the first day, and says nothing of a work that nobody chose yet', () => {
    expect(visitDateFaults(makeVisit({ on: '2010-05-01' }), works, TODAY)).toEqual([])
    expect(visitDateFaults({ on: '1990-01-01' }, works, TODAY)).toEqual([])
  })
})

it('todayAnywhere(now) is the day of whoever is furthest ahead', () => {
  expect(todayAnywhere(new Date('2024-06-15T09:59:00Z'))).toBe('2024-06-15')
  expect(todayAnywhere(new Date('2024-06-15T10:00:00Z'))).toBe('2024-06-16')
})

it('the demo has no date that cannot be right', () => {
  for (const { kind, slug, revisions } of readDemo())
    for (const { body } of revisions)
      if (kind === 'case') expect([slug, caseDateFaults(body as never, '2026-11-30')]).toEqual([slug, []])
})
