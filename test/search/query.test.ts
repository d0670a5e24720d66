import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { addBit, newBits } from '#lib/search/bits.ts'
import { Columns } from '#lib/search/columns.ts'
import { beginningDistance, editDistance, nearest } from '#lib/search/distance.ts'
import { caseFilterOf, caseFilterQuery, FACET_VOCABULARIES, wallAskedOf } from '#lib/search/index.ts'
import { lexemesIn, MOST_READ, matchText } from '#lib/search/match.ts'
import { readText } from '#lib/search/read-text.ts'

const vocabularies = Object.entries(FACET_VOCABULARIES).map(([facet, vocabulary]) => {
  const ids = [...(content().vocabularies.get(vocabulary)?.keys() ?? [])]
  return [facet, fc.subarray(ids, { minLength: 1, maxLength: 5 })] as const
})
const anyFilter = fc.record(
  {
    ...Object.fromEntries(vocabularies),
    country: fc.subarray(['EE', 'SI', 'FR'], { minLength: 1 }),
    region: fc.subarray(['EE:North & west=1', 'SI:Štajerska'], { minLength: 1 }),
    recipe: fc.subarray(['hot-lime', 'putty-2'], { minLength: 1 }),
    row: fc.subarray(['vitruvius-mortar#pit-sand', 'a-proposed-row'], { minLength: 1 }),
    quality: fc.subarray(['analysis', 'photos'], { minLength: 1 }),
    disputed: fc.constant(['no']),
    binder: fc.constant(['lime-fat']),
    minYears: fc.nat(20),
    maxYears: fc.integer({ min: 20, max: 200 }),
  },
  { requiredKeys: [] },
)

describe('caseFilterOf(params)', () => {
  it('reads what caseFilterQuery writes, whichever filter', () => {
    fc.assert(
      fc.property(anyFilter, (filter) => {
        const query = caseFilterQuery(filter)
        expect(caseFilterOf(query)).toEqual({ filter, faults: [] })
        expect(caseFilterOf(new URLSearchParams(query.toString()))).toEqual({ filter, faults: [] })
      }),
      { seed: 20261125 },
    )
  })

  it('takes an untouched field for no choice and a repeated value once', () => {
    expect(caseFilterOf({ unit: ['', 'chalk', 'chalk'], wall: '', minYears: '' })).toEqual({
      filter: { unit: ['chalk'] },
      faults: [],
    })
  })

  it('names each value that cannot be used and keeps the rest', () => {
    const params = {
      ...{ unit: ['chalk', 'limstone'], wall: 'xx', country: 'Estonia', quality: 'foto' },
      ...{ minYears: 'ten', maxYears: '999', binder: 'sand-pit' },
    }
    expect(caseFilterOf(params)).toEqual({
      filter: { unit: ['chalk'] },
      faults: [
        { field: 'unit', code: 'unknown', value: 'limstone', limit: 'limestone' },
        { field: 'wall', code: 'unknown', value: 'xx' },
        { field: 'binder', code: 'unknown', value: 'sand-pit' },
        { field: 'country', code: 'unknown-country', value: 'Estonia', limit: 'EE' },
        { field: 'quality', code: 'unknown', value: 'foto' },
        { field: 'minYears', code: 'not-whole', value: 'ten' },
        { field: 'maxYears', code: 'too-large', value: '999', limit: 200 },
      ],
    })
  })

  it.each([
    ['ZZ', 'EE'],
    ['si', 'SI'],
    ['EST', 'EE'],
    ['Eslovenia', 'SI'],
    ['portugl', 'PT'],
    ['France', 'FR'],
    ['<b>', 'EE'],
  ])('knows no country %s, in a list or of a wall, and says that %s would do', (value, limit) => {
    const fault = { field: 'country', code: 'unknown-country', value, limit }
    expect(caseFilterOf({ country: value })).toEqual({ filter: {}, faults: [fault] })
    expect(wallAskedOf({ country: value })).toEqual({ wall: {}, faults: [fault] })
    expect(caseFilterOf({ region: `${value}:North` }).filter).toEqual({})
  })

  it('refuses years the wrong way round, and a thousand values', () => {
    expect(caseFilterOf({ minYears: '9', maxYears: '4' })).toEqual({
      filter: { minYears: 9 },
      faults: [{ field: 'maxYears', code: 'too-small', value: 4, limit: 9 }],
    })
    const many = Array.from({ length: 1000 }, (_, i) => `recipe-${i}`)
    const { filter, faults } = caseFilterOf({ recipe: many })
    expect(filter.recipe).toHaveLength(40)
    expect(faults).toEqual([{ field: 'recipe', code: 'too-long', value: 1000, limit: 40 }])
  })
})

describe('editDistance(a, b, most)', () => {
  it.each([
    ['mortar', 'mortar', 0],
    ['limstone', 'limestone', 1],
    ['sandstoen', 'sandstone', 1],
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
  ])('of %s and %s is %i', (a, b, distance) => {
    expect(editDistance(a, b, 9)).toBe(distance)
    expect(editDistance(b, a, 9)).toBe(distance)
    if (distance > 0) expect(editDistance(a, b, distance - 1)).toBe(distance)
  })

  it('is nought only for the same word and never more than the longer one', () => {
    const word = fc.string({ maxLength: 12 })
    fc.assert(
      fc.property(word, word, (a, b) => {
        const distance = editDistance(a, b, 50)
        expect(distance === 0).toBe(a === b)
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length))
        expect(distance).toBe(editDistance(b, a, 50))
      }),
      { seed: 20261125 },
    )
  })

  it('is from a beginning the least of all beginnings', () => {
    const word = fc.string({ maxLength: 10 })
    fc.assert(
      fc.property(word, word, fc.nat(4), (typed, whole, most) => {
        const all = Array.from({ length: whole.length + 1 }, (_, end) =>
          editDistance(typed, whole.slice(0, end), most),
        )
        expect(beginningDistance(typed, whole, most)).toBe(Math.min(...all))
      }),
      { seed: 20261130 },
    )
  })

  it('finds no nearest where all are far', () => {
    expect(nearest('zzzzzzzz', ['limestone', 'granite'])).toBeUndefined()
  })
})

describe('matchText(segment, question) with a phrase kept out', () => {
  /** Pages that all hold every word; every other one holds them in a row. */
  const pagesOf = (count: number) => {
    const columns = new Columns()
    columns.size = count
    columns.live = newBits(count)
    for (let id = 0; id < count; id += 1) addBit(columns.live, id)
    return {
      columns,
      look: async (lexemes: readonly string[]) =>
        new Map(lexemes.map((one) => [one, Uint32Array.from(columns.live)])),
      inARow: async (ids: readonly number[]) => ids.filter((id) => id % 2 === 0),
    }
  }
  const read = readText('sand -"lime putty"')

  it('leaves out the pages that hold it in a row', async () => {
    expect(lexemesIn(read).length).toBeGreaterThan(2)
    const { bits, exact } = await matchText(pagesOf(64), read)
    expect([...bits]).toEqual([0xaaaaaaaa, 0xaaaaaaaa])
    expect(exact).toBe(true)
  })

  it('says that it did not read all where there were too many', async () => {
    expect((await matchText(pagesOf(MOST_READ + 32), read)).exact).toBe(false)
  })
})
