import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { termLine, termsWithin } from '#lib/content/term-tree.ts'
import { DOCUMENT_FACETS, type DocumentFacet, facetLine } from '#lib/entry/facets.ts'
import { idsOf } from '#lib/search/bits.ts'
import { Columns } from '#lib/search/columns.ts'
import { type CountedFacet, type DocumentFilter, narrow, YEAR_STEPS } from '#lib/search/count.ts'

/** Facets against the plainest way of counting the same documents one by one. */
const VALUES: Partial<Record<DocumentFacet, readonly string[]>> = {
  kind: ['case', 'recipe'],
  unit: ['limestone', 'chalk', 'oolite', 'granite', 'sandstone', 'brick', 'brick-handmade'],
  wall: ['ashlar', 'rubble-random', 'brick-solid'],
  use: ['pointing', 'floor', 'grout'],
  country: ['EE', 'SI'],
  salt: ['chlorides', 'nitrates'],
  disputed: ['yes', 'no'],
}
const FACETS = Object.keys(VALUES) as DocumentFacet[]

const oneDocument = fc.record({
  values: fc.record(
    Object.fromEntries(FACETS.map((facet) => [facet, fc.subarray([...(VALUES[facet] ?? [])])])) as Record<
      DocumentFacet,
      fc.Arbitrary<string[]>
    >,
  ),
  years: fc.oneof(fc.constant(-1), fc.float({ min: 0, max: 30, noNaN: true })),
})
const oneFilter = fc.record(
  {
    unit: fc.subarray(['stone', 'limestone', 'sedimentary-rock', 'chalk', 'fired-clay', 'granite']),
    wall: fc.subarray([...(VALUES.wall ?? [])]),
    use: fc.subarray([...(VALUES.use ?? [])]),
    country: fc.subarray(['EE', 'SI', 'FI']),
    salt: fc.subarray([...(VALUES.salt ?? [])]),
    disputed: fc.subarray(['yes', 'no']),
    minYears: fc.nat(12),
    maxYears: fc.integer({ min: 12, max: 30 }),
  },
  { requiredKeys: [] },
)

interface Plain {
  readonly values: Readonly<Record<string, readonly string[]>>
  readonly years: number
}

const fits = ({ values, years }: Plain, { minYears, maxYears, ...facets }: DocumentFilter): boolean =>
  (minYears === undefined || Math.floor(years) >= minYears) &&
  (maxYears === undefined || Math.floor(years) <= maxYears) &&
  Object.entries(facets).every(([facet, chosen]) => {
    const wanted = facet === 'unit' ? chosen.flatMap((unit) => termsWithin('units', unit)) : chosen
    return chosen.length === 0 || (values[facet] ?? []).some((value) => wanted.includes(value))
  })

const has = ({ values, years }: Plain, facet: CountedFacet, id: string): boolean => {
  if (facet === 'years') return years >= Number(id)
  const own = values[facet] ?? []
  return facet === 'unit' ? own.some((unit) => termLine('units', unit).includes(id)) : own.includes(id)
}

const without = (filter: DocumentFilter, facet: CountedFacet): DocumentFilter => {
  const dropped: readonly string[] = facet === 'years' ? ['minYears', 'maxYears'] : [facet]
  return Object.fromEntries(Object.entries(filter).filter(([name]) => !dropped.includes(name)))
}

const columnsOf = (documents: readonly Plain[]): Columns => {
  const columns = new Columns()
  documents.forEach(({ values, years }, id) => {
    columns.set({ id, facets: facetLine(values), years, publishedAt: id, latitude: null, longitude: null })
  })
  return columns
}

describe('narrow(columns, candidates, filter)', () => {
  it('finds and counts as one by one, under every combination', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(oneDocument, { maxLength: 60 }), oneFilter, async (documents, filter) => {
        const columns = columnsOf(documents)
        const isCase = ({ values }: Plain) => values.kind?.includes('case') === true
        for (const [candidates, among] of [
          [idsOf(columns.live), documents],
          [columns.caseIds(), documents.filter(isCase)],
        ] as const) {
          const { ids, count } = await narrow(columns, candidates, filter)
          expect([...ids]).toEqual(
            among.filter((one) => fits(one, filter)).map((one) => documents.indexOf(one)),
          )
          const counts = await count([...DOCUMENT_FACETS, 'years'])
          for (const facet of [...FACETS, 'years'] as const) {
            const under = among.filter((one) => fits(one, without(filter, facet)))
            const known =
              facet === 'years'
                ? YEAR_STEPS.map(String)
                : facet === 'unit'
                  ? [...new Set((VALUES.unit ?? []).flatMap((unit) => termLine('units', unit)))]
                  : (VALUES[facet] ?? [])
            const expected = known
              .map((id) => ({ id, count: under.filter((one) => has(one, facet, id)).length }))
              .filter((one) => one.count > 0)
            expect(new Set(counts[facet].map((one) => `${one.id} ${one.count}`))).toEqual(
              new Set(expected.map((one) => `${one.id} ${one.count}`)),
            )
          }
        }
      }),
      { numRuns: 150, seed: 20261125 },
    )
  })

  it('tells how many more each facet keeps out alone', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(oneDocument, { maxLength: 40 }), oneFilter, async (documents, filter) => {
        const columns = columnsOf(documents)
        const { ids, without: more } = await narrow(columns, idsOf(columns.live), filter)
        for (const [facet, count] of more)
          expect(ids.length + count).toBe(documents.filter((one) => fits(one, without(filter, facet))).length)
      }),
      { numRuns: 100, seed: 20261125 },
    )
  })

  it('forgets what is dropped and takes what is changed', async () => {
    const columns = columnsOf([
      { values: { wall: ['ashlar'] }, years: 1 },
      { values: { wall: ['ashlar'] }, years: 2 },
    ])
    columns.drop(0)
    columns.set({ ...FACTS, id: 1, facets: facetLine({ wall: ['brick-solid'] }) })
    columns.set({ ...FACTS, id: 5000, facets: facetLine({ wall: ['ashlar'] }) })
    const find = async (wall: string) => [
      ...(await narrow(columns, idsOf(columns.live), { wall: [wall] })).ids,
    ]
    expect(await find('ashlar')).toEqual([5000])
    expect(await find('brick-solid')).toEqual([1])
  })

  it('keeps what fits a choice of all cases only as long as no document changes', async () => {
    const columns = columnsOf([{ values: { kind: ['case'], wall: ['ashlar'] }, years: 1 }])
    const find = async () => [...(await narrow(columns, columns.caseIds(), { wall: ['ashlar'] })).ids]
    expect(await find()).toEqual([0])
    columns.set({ ...FACTS, id: 3, facets: facetLine({ kind: ['case'], wall: ['ashlar'] }) })
    expect(await find()).toEqual([0, 3])
    columns.set({ ...FACTS, id: 0, facets: facetLine({ kind: ['case'], wall: ['brick-solid'] }) })
    expect(await find()).toEqual([3])
    columns.drop(3)
    expect(await find()).toEqual([])
  })
})

const FACTS = { years: 0, publishedAt: 0, latitude: null, longitude: null }
