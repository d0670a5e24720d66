import { noSuchPage, pageSize } from '#lib/db/page.ts'
import { pause } from './pause.ts'
import { Best, byYears, joined, type Place, readPlace, writePlace } from './rank.ts'
import type { Asked, Part, Sought } from './sought.ts'

/** The places of a page, and where the next one starts. Ids of content's pages are told as -1, -2, …. */
export function pageOf(sought: Sought, asked: Asked): { places: readonly Place[]; next: string | null } {
  const size = pageSize(asked.limit ?? 20)
  const after = asked.after === undefined ? undefined : readPlace(asked.after, 2)
  if (asked.after !== undefined && after === undefined) throw noSuchPage(asked.after)
  const best = new Best(size + 1, after)
  for (const [i, one] of sought.parts.entries()) {
    const { ids } = one.narrowed
    const { years, published } = one.segment.columns
    const scores = (asked.sort ?? 'best') === 'best' ? ranksOf(one) : undefined
    const isNewest = asked.sort === 'newest'
    for (let n = 0; n < ids.length; n += 1) {
      const id = ids[n] as number
      const told = i === 0 ? id : -id - 1
      if (scores !== undefined) best.offer(scores(id), years[id] as number, told)
      else best.offer((isNewest ? published : years)[id] as number, 0, told)
    }
  }
  const places = best.places.slice(0, size)
  const last = places.at(-1)
  return { places, next: best.places.length > size && last ? writePlace(last) : null }
}

/** All that was found by a text in the order of its pages, ids told as there. */
export async function allInOrder({ parts }: Sought): Promise<Int32Array> {
  const byRank = new Map<number, number[]>()
  for (const [i, one] of parts.entries()) {
    const ranks = ranksOf(one)
    for (const id of one.narrowed.ids) {
      const rank = ranks?.(id) ?? 0
      const told = i === 0 ? id : -id - 1
      const known = byRank.get(rank)
      if (known === undefined) byRank.set(rank, [told])
      else known.push(told)
    }
  }
  const [record, content] = parts.map(({ segment }) => segment.columns.years)
  const years = (told: number) => (told < 0 ? content?.[-told - 1] : record?.[told]) ?? -1
  const inOrder: Int32Array[] = []
  for (const [, told] of [...byRank].sort(([a], [b]) => b - a)) {
    inOrder.push(byYears(told, years))
    await pause(told.length)
  }
  return joined(inOrder)
}

/** Among equals, what explains a thing comes before what mentions it. */
const PRIORS = [
  'caution',
  'source',
  'vocabulary',
  'row',
  'table',
  'case',
  'guide',
  'recipe',
  'material',
  'unit',
  'term',
]
const KINDS_END = 16

/** How well each found page fits, by its id; undefined without a text. */
function ranksOf({ match, segment }: Part): ((id: number) => number) | undefined {
  if (match === undefined) return undefined
  const scores = match.scores()
  const { codes, sets } = segment.columns.facets.kind
  const priors = Uint8Array.from(sets, ([kind]) => PRIORS.indexOf(kind ?? '') + 1)
  return (id) => (scores[id] as number) * KINDS_END + (priors[codes[id] as number] as number)
}
