import { describe, expect, test } from 'vitest'
import type { VisitBody } from '#lib/entry/visit.ts'
import { disagreements, gaps } from '../../app/cases/[slug]/watch.ts'

const visit = (on: string, states: Partial<VisitBody> = {}): VisitBody => ({
  case: 'a-case',
  work: 'a-work',
  on,
  baseline: false,
  season: 'summer',
  joint: 'sound',
  unit: 'sound',
  damp: 'dry',
  salts: [],
  readings: [],
  observer: { who: 'did-the-work', how: 'by eye' },
  invented: true,
  ...states,
})

describe('disagreements(visits)', () => {
  test('names what differs between two looks within sixty days', () => {
    const [first, second] = [visit('2020-05-01'), visit('2020-06-20', { joint: 'worn' })]
    expect(disagreements([first, second])).toEqual([{ first, second, about: ['joint'] }])
  })

  test('is silent when the two agree, or when there are none', () => {
    expect(disagreements([visit('2020-05-01'), visit('2020-05-20')])).toEqual([])
    expect(disagreements([])).toEqual([])
  })

  test('counts sixty days in and sixty-one out', () => {
    const first = visit('2020-01-01')
    expect(disagreements([first, visit('2020-03-01', { unit: 'broken' })])).toHaveLength(1)
    expect(disagreements([first, visit('2020-03-02', { unit: 'broken' })])).toEqual([])
  })

  test('leaves damp to the weather and a baseline to the repair', () => {
    expect(disagreements([visit('2020-05-01'), visit('2020-05-02', { damp: 'wet' })])).toEqual([])
    expect(
      disagreements([visit('2020-05-01', { joint: 'lost' }), visit('2020-05-20', { baseline: true })]),
    ).toEqual([])
  })
})

describe('gaps(visits)', () => {
  test('names stretches of more than three years', () => {
    expect(gaps([visit('2010-01-01'), visit('2015-07-01'), visit('2016-07-01')])).toEqual([
      { from: '2010-01-01', to: '2015-07-01', years: 5 },
    ])
  })

  test('finds none between yearly visits or from a single one', () => {
    expect(gaps([visit('2010-01-01'), visit('2013-01-01')])).toEqual([])
    expect(gaps([visit('2010-01-01')])).toEqual([])
  })
})
