import type { CaseSummary } from '#lib/db/cases.ts'
import { listRecipes, type RecipeFilter } from '#lib/db/recipes.ts'
import { FOUND_KINDS } from '#lib/entry/facets.ts'
import { everyCase, everyLike, everyPage, type LikeCase, regionCounts, WEIGHTS } from '#lib/search/index.ts'
import { type Cell, csvLine } from './csv.ts'
import { filterIn, wallIn } from './find-query.ts'
import { unitsWithin } from './units.ts'

export type ListRow = Readonly<Record<string, Cell>>

/** A list in full, batch by batch: each is asked for when the one before has been sent. */
type Batches = AsyncIterable<readonly ListRow[]>

const BATCH = 100

/** Lists that can be taken away whole, under the same address parameters as their pages. */
export const LISTS = {
  cases: (params: URLSearchParams): Batches =>
    mapped(everyCase({ text: textIn(params), filter: filterIn(params) }), caseRow),
  regions: async function* (params: URLSearchParams): Batches {
    const regions = await regionCounts({ text: textIn(params), filter: filterIn(params) })
    yield regions.map((region) => ({ ...region }))
  },
  found: (params: URLSearchParams): Batches => {
    const kind = FOUND_KINDS.find((one) => one === params.get('kind'))
    return mapped(everyPage({ text: textIn(params) ?? '', kind }), ({ entry: _, ...one }) => one)
  },
  like: (params: URLSearchParams): Batches => {
    const except = params.get('from') ?? undefined
    return mapped(everyLike(wallIn(params), { except }), ({ likeness, ...one }: LikeCase) => ({
      ...caseRow(one),
      likeness: likeness.points,
      likenessOf: likeness.of,
      ...Object.fromEntries(likeness.parts.map(({ part, points }) => [`${part}Points`, points])),
    }))
  },
  recipes: (params: URLSearchParams): Batches => {
    const filter = recipeFilterIn(params)
    return pages(async (after) => {
      const { recipes, next } = await listRecipes(filter, { after, limit: BATCH })
      return { rows: recipes.map((recipe) => ({ ...recipe })), next }
    })
  },
} as const satisfies Record<string, (params: URLSearchParams) => Batches>
export type ListName = keyof typeof LISTS

const CASE_HEADS =
  'slug revision title summary country region units wall uses visits yearsWatched latestOn joint unitState damp invented'

/** What the columns of each list are called, in their order: a list that holds nothing has them too. */
export const HEADS = {
  cases: CASE_HEADS.split(' '),
  regions: 'country region count latitude longitude'.split(' '),
  found: 'kind id title summary invented'.split(' '),
  like: [
    ...CASE_HEADS.split(' '),
    'likeness',
    'likenessOf',
    ...Object.keys(WEIGHTS).map((part) => `${part}Points`),
  ],
  recipes: 'slug revision title summary family uses standing units cases longestYears invented'.split(' '),
} as const satisfies Record<ListName, readonly string[]>

/** A list as lines of CSV, the first its heads. */
export async function* asCsv(heads: readonly string[], batches: Batches): AsyncGenerator<string> {
  // A mark of byte order tells a spreadsheet that the text is UTF-8.
  let before = `\uFEFF${csvLine(heads)}`
  for await (const rows of batches)
    for (let from = 0; from < rows.length; from += BATCH) {
      const part = rows.slice(from, from + BATCH)
      yield before + part.map((row) => csvLine(heads.map((head) => row[head] ?? null))).join('')
      before = ''
    }
  if (before !== '') yield before
}

/** A list as one JSON object that holds it under its name. */
export async function* asJson(name: ListName, batches: Batches): AsyncGenerator<string> {
  let before = `{${JSON.stringify(name)}:[`
  for await (const rows of batches)
    for (let from = 0; from < rows.length; from += BATCH) {
      const part = rows.slice(from, from + BATCH).map((row) => JSON.stringify(row))
      yield before + part.join(',')
      before = ','
    }
  yield before === ',' ? ']}' : `${before}]}`
}

const textIn = (params: URLSearchParams) => params.get('q') ?? undefined

const caseRow = ({ latest, ...one }: CaseSummary): ListRow => ({
  ...one,
  latestOn: latest?.on ?? null,
  joint: latest?.joint ?? null,
  unitState: latest?.unit ?? null,
  damp: latest?.damp ?? null,
})

function recipeFilterIn(params: URLSearchParams): RecipeFilter {
  const unit = params.get('unit')
  const { use, family } = filterIn(new URLSearchParams([...params].filter(([name]) => name !== 'after')))
  return {
    ...(unit && { unit: unitsWithin(unit) }),
    ...(use?.[0] !== undefined && { use: use[0] as RecipeFilter['use'] }),
    ...(family?.[0] !== undefined && { family: family[0] as RecipeFilter['family'] }),
  }
}

async function* mapped<T>(
  batches: AsyncIterable<readonly T[]>,
  row: (one: T) => ListRow,
): Batches & AsyncGenerator<readonly ListRow[]> {
  for await (const batch of batches) yield batch.map(row)
}

/** Page after page of a list that is read by pages. */
async function* pages(
  read: (after: string | undefined) => Promise<{ rows: readonly ListRow[]; next: string | null }>,
): AsyncGenerator<readonly ListRow[]> {
  for (let after: string | undefined; ; ) {
    const { rows, next } = await read(after)
    yield rows
    if (next === null) return
    after = next
  }
}
