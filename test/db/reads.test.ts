import { v7 } from 'uuid'
import { beforeAll, describe, expect, it, test } from 'vitest'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { listCases, newestCases } from '#lib/db/cases.ts'
import { db } from '#lib/db/client.ts'
import type { Broader, Count } from '#lib/db/facet.ts'
import { faringOf, faringOfCases } from '#lib/db/faring.ts'
import { listRecipes, type RecipeFilter, recipeFacets } from '#lib/db/recipes.ts'
import type { Family, Use } from '#lib/entry/terms.ts'

/**
 * Lists, pages and facets against the plainest way of saying the same over the same rows. The rows are laid out by
 * number, so that every combination occurs and a failure fails again.
 */
const COUNTRIES = ['AU', 'EE', 'PT', 'SI']
const UNITS = ['basalt', 'brick', 'granite', 'limestone', 'oolitic-limestone']
const USES: Use[] = ['floor', 'limewash', 'pointing']
const FAMILIES: Family[] = ['air-lime', 'earth', 'hydraulic-lime']
/** Oolitic limestone is a limestone; both are sedimentary; granite and basalt are igneous. */
const BROADER: Broader = [
  ...UNITS.map((unit) => [unit, unit] as const),
  ['oolitic-limestone', 'limestone'],
  ['oolitic-limestone', 'sedimentary'],
  ['limestone', 'sedimentary'],
  ['granite', 'igneous'],
  ['basalt', 'igneous'],
]
const pick = <T>(list: readonly T[], n: number): T[] => list.filter((_, i) => (n >> i) % 2 === 1)
const date = (n: number) => new Date(Date.UTC(2020, 0, 1 + n))

const recipes = Array.from({ length: 60 }, (_, n) => ({
  entryId: v7(),
  slug: `recipe-${n}`,
  revision: 1,
  title: n % 2 === 0 ? `Éarth ${n}` : `ash ${n}`,
  sortTitle: n % 2 === 0 ? `earth ${n}` : `ash ${n}`,
  summary: 's',
  family: FAMILIES[n % 3] ?? 'earth',
  uses: pick(USES, (n % 7) + 1),
  standing: n % 9 === 0 ? 'known-hazard' : 'in-use',
  invented: true,
  publishedAt: date(n),
  units: pick(UNITS, (n * 5) % 32),
  cases: 0,
  longestYears: null,
}))

const cases = Array.from({ length: 240 }, (_, n) => ({
  entryId: v7(),
  // Not in the order of any other column.
  slug: `case-${(n * 77) % 240}`,
  revision: 1,
  title: `Case ${n}`,
  summary: 's',
  country: COUNTRIES[(n * 3) % 4] ?? 'EE',
  region: 'r',
  units: pick(UNITS, ((n * 7) % 31) + 1),
  wall: 'ashlar',
  uses: pick(USES, (n % 7) + 1),
  invented: n % 3 !== 0,
  publishedAt: date(n),
  visits: n % 5,
  // Many are equal, so that pages must break within a run; a fifth was never visited.
  yearsWatched: n % 5 === 0 ? -1 : ((n * 13) % 24) / 2,
  latestOn: n % 5 === 0 ? null : date(n),
  latestJoint: n % 5 === 0 ? null : n % 3 === 0 ? 'fine-cracks' : 'worn',
  latestUnit: n % 5 === 0 ? null : n % 7 === 0 ? 'powdering' : 'sound',
  families: pick(FAMILIES, n % 8),
  latestDamp: n % 5 === 0 ? null : 'damp',
  structure: 'mill',
  drivingRain: n % 2 === 0 ? 'severe' : 'sheltered',
  frost: 'none',
  ground: 'waterside',
  salts: n % 4 === 0 ? ['chlorides', 'nitrates'] : [],
  recipes: [`recipe-${n % 10}`],
  hasPhotos: n % 3 === 0,
  disputed: n % 8 === 0,
}))
const usedBy = (n: number) => recipes[n % 10]

beforeAll(async () => {
  await db().recipeIndex.createMany({ data: recipes })
  await db().caseIndex.createMany({ data: cases })
  await db().workIndex.createMany({
    data: cases.map(({ entryId }, n) => ({
      caseEntryId: entryId,
      work: 'w',
      use: 'floor',
      started: '2001',
      finished: '2002',
      recipeEntryId: usedBy(n)?.entryId ?? null,
      recipeRevision: 1,
    })),
  })
})

type Row = (typeof cases)[number]
const some = (list: readonly string[], wanted: string | readonly string[]) =>
  [wanted].flat().some((item) => list.includes(item))
const VALUES: Record<string, (row: Row) => readonly string[]> = {
  country: (row) => [row.country],
  region: (row) => [`${row.country}:${row.region}`],
  unit: (row) => row.units,
  use: (row) => row.uses,
  rain: (row) => [row.drivingRain],
  salt: (row) => row.salts,
  joint: (row) => (row.latestJoint === null ? [] : [row.latestJoint]),
  recipe: (row) => row.recipes,
}
const fits =
  ({ minYears, maxYears, quality, disputed, ...facets }: CaseFilter) =>
  (row: Row) =>
    Object.entries(facets).every(([facet, values]) => some(VALUES[facet]?.(row) ?? [], values)) &&
    (minYears === undefined || Math.floor(row.yearsWatched) >= minYears) &&
    (maxYears === undefined || Math.floor(row.yearsWatched) <= maxYears) &&
    (quality === undefined || (quality.includes('photos') && row.hasPhotos)) &&
    (disputed === undefined || disputed.includes(row.disputed ? 'yes' : 'no'))
const byWatched = (a: Row, b: Row) => b.yearsWatched - a.yearsWatched || (a.slug < b.slug ? -1 : 1)

const FILTERS: CaseFilter[] = [
  {},
  { country: ['EE'] },
  { country: ['EE', 'PT'], region: ['EE:r', 'SI:r'] },
  { unit: ['granite'] },
  { unit: ['limestone', 'oolitic-limestone'] },
  { use: ['pointing'], country: ['PT'] },
  { minYears: 5 },
  { minYears: 5, maxYears: 8, unit: ['brick'], use: ['floor'] },
  { recipe: ['recipe-3'] },
  { recipe: ['recipe-3', 'recipe-4'], country: ['AU'], minYears: 1 },
  { rain: ['severe'], salt: ['nitrates'], joint: ['worn', 'lost'] },
  { quality: ['photos', 'analysis'], disputed: ['no'] },
  { country: ['FI'] },
  { recipe: ['no-such-recipe'] },
]

describe('listCases(filter, page)', () => {
  it.each(FILTERS)('with %j gives every case that fits once, in order, over its pages', async (filter) => {
    const expected = cases.filter(fits(filter)).sort(byWatched)
    const found: string[] = []
    let after: string | undefined
    do {
      const page = await listCases(filter, { after, limit: 7 })
      expect(page.total).toBe(expected.length)
      expect(page.cases.length).toBeLessThanOrEqual(7)
      found.push(...page.cases.map(({ slug }) => slug))
      after = page.next ?? undefined
    } while (after !== undefined)
    expect(found).toEqual(expected.map(({ slug }) => slug))
  })

  it('tells years and the latest state, or that nobody came', async () => {
    const { cases: all } = await listCases({}, { limit: 100 })
    const visited = cases.find(({ slug }) => slug === all[0]?.slug)
    expect(all[0]).toMatchObject({
      yearsWatched: visited?.yearsWatched,
      latest: {
        on: visited?.latestOn?.toISOString().slice(0, 10),
        joint: visited?.latestJoint,
        unit: visited?.latestUnit,
        damp: 'damp',
      },
    })
    const { cases: rest } = await listCases({}, { after: '-1_case-0', limit: 1 })
    expect(rest[0]).toMatchObject({ yearsWatched: null, latest: null })
  })

  it('refuses a page that was never given', async () => {
    for (const after of ['', '5', '5_', "5_' OR 1=1", '1e9_x', 'NaN_x'])
      await expect(listCases({}, { after })).rejects.toMatchObject({
        code: 'invalid',
        faults: [{ field: 'after' }],
      })
  })
})

describe('faringOf(filter, broader)', () => {
  it.each(FILTERS)('with %j counts under each family how its cases were last seen', async (filter) => {
    const shown = cases.filter(fits(filter)).filter(({ disputed }) => !disputed)
    const expected = FAMILIES.flatMap((family) => {
      const rows = shown.filter(({ families }) => families.includes(family))
      const seen = rows.filter(({ latestOn, families }) => latestOn !== null && families.length === 1)
      const holds = seen.filter(({ latestJoint }) => latestJoint === 'sound' || latestJoint === 'fine-cracks')
      return rows.length === 0
        ? []
        : [
            {
              family,
              walls: rows.length,
              invented: rows.filter(({ invented }) => invented).length,
              seen: seen.length,
              jointHolds: holds.length,
              unitSound: seen.filter(({ latestUnit }) => latestUnit === 'sound').length,
              longestYears:
                seen.length === 0 ? null : Math.max(...seen.map(({ yearsWatched }) => yearsWatched)),
            },
          ]
    }).sort((a, b) => b.walls - a.walls || (a.family < b.family ? -1 : 1))
    expect(await faringOf(filter, [])).toEqual({
      families: expected,
      disputed: cases.filter(fits(filter)).filter(({ disputed }) => disputed).length,
    })
  })

  it('takes the narrower units with a broader one', async () => {
    const sedimentary = await faringOf({ unit: ['sedimentary'] }, BROADER)
    expect(sedimentary).toEqual(await faringOf({ unit: ['limestone', 'oolitic-limestone'] }, []))
    expect(sedimentary.families.length).toBeGreaterThan(0)
  })
})

test('faringOfCases(slugs) counts those cases alone', async () => {
  const some = cases.filter(({ disputed }) => !disputed).slice(0, 9)
  const { families, disputed } = await faringOfCases([...some.map(({ slug }) => slug), 'no-such-case'])
  expect(disputed).toBe(0)
  expect(families.reduce((sum, { walls }) => sum + walls, 0)).toBe(
    some.reduce((sum, { families: own }) => sum + own.length, 0),
  )
  expect(await faringOfCases([])).toEqual({ families: [], disputed: 0 })
})

describe('newestCases(limit)', () => {
  it('gives the last to be published', async () => {
    expect((await newestCases(3)).map(({ title }) => title)).toEqual(['Case 239', 'Case 238', 'Case 237'])
  })
})

describe('listRecipes(filter) and recipeFacets(filter, broader)', () => {
  const RECIPE_FILTERS: RecipeFilter[] = [
    {},
    { unit: 'brick' },
    { unit: ['granite', 'basalt'], family: 'earth' },
    { use: 'floor', family: 'air-lime' },
    { unit: 'brick', use: 'limewash', family: 'earth' },
    { standing: 'known-hazard' },
  ]
  const fitsRecipe =
    ({ unit, use, family, standing }: RecipeFilter) =>
    (row: (typeof recipes)[number]) =>
      (standing === undefined || row.standing === standing) &&
      (unit === undefined || some(row.units, unit)) &&
      (use === undefined || row.uses.includes(use)) &&
      (family === undefined || row.family === family)

  it.each(RECIPE_FILTERS)('with %j agree with the rows', async (filter) => {
    const rows = recipes.filter(fitsRecipe(filter))
    const sorted = rows
      .map(({ sortTitle, slug }) => [sortTitle, slug] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1))
    const slugs: string[] = []
    for (let after: string | undefined; ; ) {
      const page = await listRecipes(filter, { limit: 7, after })
      slugs.push(...page.recipes.map(({ slug }) => slug))
      expect(page.total).toBe(rows.length)
      if (page.next === null) break
      after = page.next
    }
    expect(slugs).toEqual(sorted.map(([, slug]) => slug))
    const under = (except: keyof RecipeFilter) =>
      recipes.filter(fitsRecipe({ ...filter, [except]: undefined }))
    expect(await recipeFacets(filter)).toEqual({
      unit: counted(UNITS, under('unit'), (row, id) => row.units.includes(id)),
      use: counted(USES, under('use'), (row, id) => row.uses.includes(id as Use)),
      family: counted(FAMILIES, under('family'), (row, id) => row.family === id),
    })
  })
})

describe('listRecipes(filter, page)', () => {
  it('refuses to go on from a recipe that is not there', async () => {
    for (const after of ['no-such-recipe', 'recipe-4\u0000'])
      await expect(listRecipes({}, { after })).rejects.toMatchObject({ code: 'invalid' })
  })
})

/** Counts above zero, most first, as facets are. */
function counted<T>(
  ids: readonly string[],
  rows: readonly T[],
  has: (row: T, id: string) => boolean,
): Count[] {
  return ids
    .map((id) => ({ id, count: rows.filter((row) => has(row, id)).length }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count || (a.id < b.id ? -1 : 1))
}
