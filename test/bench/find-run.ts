import { quantile } from 'd3-array'
import MiniSearch from 'minisearch'
import { Client } from 'pg'
import { caseBySlug } from '#lib/db/cases.ts'
import { closeDb } from '#lib/db/client.ts'
import { setDatabaseUrl } from '#lib/env.ts'
import { findCases, likeCases, regionCounts } from '#lib/search/index.ts'
import { forgetRecord } from '#lib/search/record.ts'
import { type Answer, byHand, countsText, HAND_FACETS } from './find-hand.ts'
import { makeQueries, type Query, type QuerySort, SORTS_OF_QUERY } from './find-queries.ts'
import { generateCases } from './generate-cases.ts'

/** What one number of cases came to. */
export interface FindReport {
  readonly cases: number
  /** Reading all columns into memory, at the first search. */
  readonly readS: number
  /** Resident memory of this process after our questions. */
  readonly memoryMb: number
  readonly rows: readonly FindRow[]
  /** Queries whose answer differs from that of the SQL written by hand, with both. */
  readonly differing: readonly { query: Query; ours: Answer; hand: Answer }[]
  readonly compared: number
}

export interface FindRow {
  readonly sort: QuerySort
  readonly who: 'ours' | 'by hand' | 'in memory'
  readonly queries: number
  readonly p50: number
  readonly p95: number
  /** Of ours: how many times as long as by hand, over the questions that both were asked in turn. */
  readonly times?: { readonly p50: number; readonly p95: number }
}

export interface FindOptions {
  readonly queries?: number
  /** How many of each sort are also asked by hand; all where it is left out. */
  readonly byHand?: number
  /** Whether the in-memory library is measured too: it holds every document. */
  readonly inMemory?: boolean
  readonly say?: (text: string) => void
}

/** Asks the questions of each side in turn, and holds the answers against one another. */
export async function measureFind(
  url: string,
  cases: number,
  options: FindOptions = {},
): Promise<FindReport> {
  const { queries: count = 200, byHand: many = count, inMemory = true, say = () => {} } = options
  setDatabaseUrl(url)
  forgetRecord()
  const readS = await seconds(() => findCases({ limit: 1 }))
  say(`read into memory in ${readS.toFixed(1)} s`)
  const queries = makeQueries(count, cases)
  const client = new Client({ connectionString: url })
  await client.connect()
  try {
    // Other questions of the same sorts come first, so that none pays for the compiler.
    const others = makeQueries(count, cases, 99)
    for (const query of others) await ask(query)
    const ours = new Times()
    for (const query of queries) await ours.take(query, () => ask(query))
    for (const { sort, p50, p95 } of ours.rows('ours'))
      say(`  ${sort}: p50 ${p50.toFixed(2)} ms, p95 ${p95.toFixed(2)} ms`)
    // Then others, new to both, in turn with the same by hand: what else the machine does falls on both.
    const pairs = makeQueries(count, cases, 13)
    const [beside, hand] = [new Times(), new Times()]
    const differing: FindReport['differing'][number][] = []
    let compared = 0
    for (const sort of SORTS_OF_QUERY) {
      for (const query of others.filter((one) => one.sort === sort).slice(0, 1)) await byHand(query)(client)
      for (const query of pairs.filter((one) => one.sort === sort).slice(0, many)) {
        const asking = byHand(query)
        const mine = await beside.take(query, () => ask(query))
        const theirs = await hand.take(query, () => asking(client))
        if (!isSame(mine, theirs)) differing.push({ query, ours: mine, hand: theirs })
        compared += 1
      }
      say(`  ${sort}: asked by hand`)
    }
    const memoryMb = Math.round(process.memoryUsage().rss / 1e6)
    const library = new Times()
    if (inMemory) {
      const search = miniSearch(cases)
      const known = queries.filter(
        ({ text, filter, sort }) => sort !== 'map' && (text ?? filter) !== undefined,
      )
      for (const query of known) await library.take(query, () => search(query))
    }
    const rows = [
      ...ours.rows('ours').map((row) => ({ ...row, times: beside.over(hand, row.sort) })),
      ...hand.rows('by hand'),
      ...library.rows('in memory'),
    ]
    return { cases, readS, memoryMb, rows, differing, compared }
  } finally {
    await client.end()
    await closeDb()
  }
}

/** How long each question took. */
class Times {
  readonly #taken = new Map<Query, number>()

  async take(query: Query, run: () => Promise<Answer>): Promise<Answer> {
    const start = performance.now()
    const answer = await run()
    this.#taken.set(query, performance.now() - start)
    return answer
  }

  rows(who: FindRow['who']): FindRow[] {
    return SORTS_OF_QUERY.flatMap((sort) => {
      const taken = this.#of(sort, this.#taken)
      return taken.length === 0 ? [] : [{ sort, who, queries: taken.length, ...quantiles(taken) }]
    })
  }

  /** How many times as long these took as the same questions did there. */
  over(there: Times, sort: QuerySort): { p50: number; p95: number } {
    const [here, other] = [this.#of(sort, there.#taken), there.#of(sort, there.#taken)].map(quantiles)
    return { p50: (here?.p50 ?? 0) / (other?.p50 ?? 0), p95: (here?.p95 ?? 0) / (other?.p95 ?? 0) }
  }

  #of(sort: QuerySort, known: ReadonlyMap<Query, number>): number[] {
    return [...this.#taken].flatMap(([query, ms]) => (query.sort === sort && known.has(query) ? [ms] : []))
  }
}

const quantiles = (taken: readonly number[]) => ({
  p50: quantile(taken, 0.5) ?? Number.NaN,
  p95: quantile(taken, 0.95) ?? Number.NaN,
})

async function ask({ sort, slug, text, filter, wall }: Query): Promise<Answer> {
  // The loader numbers documents as it numbers slugs.
  const idsOf = (found: readonly { slug: string }[]) => found.map((one) => Number(one.slug.slice(5)))
  if (slug !== undefined) {
    const found = await caseBySlug(slug)
    return { total: found?.visits.length ?? -1, first: [], counts: found?.slug ?? '' }
  }
  if (wall !== undefined) {
    const { total, results } = await likeCases(wall)
    return { total, first: idsOf(results), counts: '' }
  }
  if (sort === 'map') {
    const regions = await regionCounts({ filter })
    return {
      total: regions.reduce((sum, { count }) => sum + count, 0),
      first: [],
      counts: countsText(regions.map(({ country, region, count }) => [`${country}:${region}`, count])),
    }
  }
  const { total, results, facets } = await findCases({ text, filter })
  const counts = HAND_FACETS.flatMap((facet) =>
    facets[facet as keyof typeof facets].flatMap(({ id, count }) =>
      count > 0 ? [[`${facet} ${id}`, count] as const] : [],
    ),
  )
  return { total, first: idsOf(results), counts: sort === 'text' ? '' : countsText(counts) }
}

const isSame = (a: Answer, b: Answer) =>
  a.total === b.total && a.counts === b.counts && a.first.join() === b.first.join()

/** The same questions to a search library that holds the same documents, with its filters. It counts no facets. */
function miniSearch(cases: number): (query: Query) => Promise<Answer> {
  const search = new MiniSearch<{ id: number; title: string; summary: string; body: string }>({
    fields: ['title', 'summary', 'body'],
    storeFields: ['row'],
  })
  let id = 0
  for (const { row, document } of generateCases(cases)) {
    id += 1
    const { title, summary, body } = document
    search.add({ id, title, summary, body, row } as never)
  }
  return async ({ text, filter = {} }) => {
    const { minYears, unit, wall, use, country, family, rain, frost, method } = filter
    const some = (wanted: readonly string[] | undefined, values: readonly string[]) =>
      wanted === undefined || wanted.includes('stone') || values.some((value) => wanted.includes(value))
    const results = search.search(text ?? MiniSearch.wildcard, {
      combineWith: 'AND',
      filter: ({ row }) =>
        row.yearsWatched >= (minYears ?? -1) &&
        some(unit, row.units) &&
        some(wall, [row.wall]) &&
        some(use, row.uses) &&
        some(country, [row.country]) &&
        some(family, row.families) &&
        some(rain, [row.drivingRain]) &&
        some(frost, [row.frost]) &&
        some(method, row.methods),
    })
    return { total: results.length, first: results.slice(0, 20).map((one) => Number(one.id)), counts: '' }
  }
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now()
  await work()
  return (performance.now() - start) / 1000
}
