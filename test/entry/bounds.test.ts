import { describe, expect, it } from 'vitest'
import type { BodyOf } from '#lib/entry/body.ts'
import { findingsOf, LAB_BOUNDS, READING_BOUNDS, USUAL } from '#lib/entry/bounds.ts'
import { LAB_UNITS } from '#lib/entry/laboratory.ts'
import { readDemo } from '#lib/workflow/demo-files.ts'
import { makeCase, makeRecipe, makeVisit, makeWork } from '../support/make.ts'

const mixed = (over: object) =>
  makeCase({ works: [makeWork({ mixed: { ingredients: [], ...over } })], mortars: [] })

describe('findingsOf(kind, body)', () => {
  it('finds nothing in figures at their bounds, and the figure with its field beyond them', () => {
    const { low, high } = USUAL.hottest
    expect([low, high].flatMap((hottestC) => findingsOf('case', mixed({ hottestC })))).toEqual([])
    expect(findingsOf('case', mixed({ hottestC: high + 1 }))).toEqual([
      { id: 'unusual', field: 'works.0.mixed.hottestC', value: high + 1, ...USUAL.hottest },
    ])
  })

  it('says with a finding why its author stands by it', () => {
    const body = {
      ...mixed({ sandMoisturePercent: 30 }),
      overrides: [{ field: 'works.0.mixed.sandMoisturePercent', reason: 'It had rained into the heap.' }],
    }
    expect(findingsOf('case', body)).toMatchObject([
      { value: 30, reason: 'It had rained into the heap.', basis: 'practice' },
    ])
  })

  it('of a range names the end that lies outside', () => {
    const item = { material: 'sand-pit', role: 'aggregate', by: 'volume', state: 'dry' } as const
    const wide = makeRecipe({ ingredients: [{ ...item, parts: { low: 3, high: 40 } }] })
    expect(findingsOf('recipe', wide)).toMatchObject([{ field: 'ingredients.0.parts', value: 40 }])
  })

  it('compares a reading only in the unit that its kind is printed in', () => {
    const reading = { kind: 'moisture-carbide', value: 60 } as const
    const found = (unit: '%' | 'relative') =>
      findingsOf('visit', makeVisit({ readings: [{ ...reading, unit }] })).map(({ field }) => field)
    expect([found('%'), found('relative')]).toEqual([['readings.0.value'], []])
  })

  it('calls impossible what no material can be', () => {
    const material = {
      title: 'Lime',
      summary: 'White.',
      role: 'lime',
      region: {},
      standing: 'in-use',
      invented: true,
      properties: [{ property: 'freeCaO', low: 0.8, typical: 0.9, high: 1.2, basis: 'measured' }],
    } as BodyOf<'material'>
    expect(findingsOf('material', material)).toMatchObject([
      { id: 'impossible', field: 'properties.0.high', value: 1.2, low: 0, high: 1 },
    ])
  })

  it('keeps every bound in order, and laboratory bounds in the unit of their property', () => {
    for (const { low, high } of [USUAL, READING_BOUNDS, LAB_BOUNDS].flatMap((list) => Object.values(list)))
      expect(low).toBeLessThan(high)
    for (const [property, { unit }] of Object.entries(LAB_BOUNDS))
      expect(unit).toBe(LAB_UNITS[property as keyof typeof LAB_UNITS])
  })

  it('takes the demo for plausible', () => {
    const found = readDemo().flatMap(({ kind, slug, revisions }) =>
      revisions.flatMap(({ body }) =>
        findingsOf(kind, body as never).map(({ field, value }) => [slug, field, value]),
      ),
    )
    expect(found).toEqual([])
  })
})
