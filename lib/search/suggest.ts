import { titlesFrom, wordsFrom } from '#lib/db/search/words.ts'
import type { FoundKind } from '#lib/entry/facets.ts'
import { fold, wordsOf } from '#lib/entry/words.ts'
import { contentSegment } from './content-pages.ts'
import { now } from './current.ts'
import { isKnownWord, startsNear } from './near-words.ts'
import { LONGEST_TEXT } from './read-text.ts'

/** Something that may be meant by what is typed so far. */
export interface Suggestion {
  readonly text: string
  readonly kind: FoundKind | 'place' | 'word'
  /** Id of the page, the region's id of a place, the word itself. */
  readonly id: string
}

const SHORTEST = 2
/** Kinds of content that are suggested by their names. */
const NAMED: readonly FoundKind[] = ['term', 'unit', 'material', 'vocabulary', 'guide', 'table']

/**
 * Names, titles, places and words that begin as was typed, names of the trade first. Names in other languages count;
 * fewer than two letters suggest nothing. Where nothing is called so, what is called nearly so comes first.
 */
export async function suggest(typed: string, limit = 8): Promise<Suggestion[]> {
  const start = fold(typed.slice(0, LONGEST_TEXT))
    .replace(/[\s\p{Control}\p{Surrogate}]+/gu, ' ')
    .trim()
  if (start.length < SHORTEST) return []
  const exact = await beginning(start, limit)
  const near = exact.some(({ kind }) => kind !== 'word') ? [] : await nearly(start, limit)
  const isName = ({ kind }: Suggestion) => kind !== 'word'
  const seen = new Set<string>()
  return [...near.filter(isName), ...exact, ...near]
    .filter(({ text }) => {
      const key = fold(text)
      return !seen.has(key) && seen.add(key)
    })
    .slice(0, limit)
}

/** What begins as was typed. */
async function beginning(start: string, limit: number): Promise<Suggestion[]> {
  const last = wordsOf(start).at(-1)
  const [recipes, cases, words, places] = await Promise.all([
    titlesFrom('recipe', start, limit),
    titlesFrom('case', start, 3),
    last === undefined || last.length < 3 ? [] : wordsFrom(last, limit),
    placesFrom(start),
  ])
  const before = start.slice(0, start.length - (last?.length ?? 0))
  return [
    ...namesFrom(start),
    ...places,
    ...recipes.map(({ slug, title }): Suggestion => ({ text: title, kind: 'recipe', id: slug })),
    ...cases.map(({ slug, title }): Suggestion => ({ text: title, kind: 'case', id: slug })),
    ...words.map((word): Suggestion => ({ text: `${before}${word}`, kind: 'word', id: word })),
  ]
}

/** What begins as was perhaps meant. A word that only texts hold is offered by itself. */
async function nearly(start: string, limit: number): Promise<Suggestion[]> {
  const meant = await Promise.all(
    (await startsNear(start)).map(async (text): Promise<Suggestion[]> => {
      const found = await beginning(text, limit)
      const last = wordsOf(text).at(-1) ?? ''
      return found.length > 0 || !isKnownWord(last) ? found : [{ text, kind: 'word', id: last }]
    }),
  )
  return meant.flat()
}

/** Names that begin so, those that are no longer first. */
const namesFrom = (start: string): Suggestion[] =>
  contentSegment()
    .pages.flatMap(({ kind, id, title, names = [] }): Suggestion[] => {
      if (!NAMED.includes(kind)) return []
      const text = [title, ...names].find((name) => fold(name).startsWith(start))
      return text === undefined ? [] : [{ text, kind, id }]
    })
    .sort((a, b) => Number(fold(b.text) === start) - Number(fold(a.text) === start))

/** Regions of published cases whose name begins so. */
const placesFrom = (start: string): Promise<Suggestion[]> =>
  now(async ({ columns }) => {
    const { sets } = columns.facets.region
    const fitting = sets.map(([id]) => id !== undefined && fold(id.slice(3)).startsWith(start))
    if (!fitting.includes(true)) return []
    return sets.flatMap(([id], code) =>
      id !== undefined && fitting[code] && (columns.tallies.region[code] ?? 0) > 0
        ? [{ text: id.slice(3), kind: 'place' as const, id }]
        : [],
    )
  })
