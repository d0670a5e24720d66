import { titlesFrom, wordsFrom } from '#lib/db/search/read.ts'
import type { FoundKind } from '#lib/entry/facets.ts'
import { fold, wordsOf } from '#lib/entry/words.ts'
import { contentSegment } from './content-pages.ts'
import { now } from './find.ts'
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
 * fewer than two letters suggest nothing.
 */
export async function suggest(typed: string, limit = 8): Promise<Suggestion[]> {
  const start = fold(typed.slice(0, LONGEST_TEXT))
    .replace(/[\s\p{Control}\p{Surrogate}]+/gu, ' ')
    .trim()
  if (start.length < SHORTEST) return []
  const last = wordsOf(start).at(-1)
  const [recipes, cases, words, places] = await Promise.all([
    titlesFrom('recipe', start, limit),
    titlesFrom('case', start, 3),
    last === undefined || last.length < 3 ? [] : wordsFrom(last, limit),
    placesFrom(start),
  ])
  const before = start.slice(0, start.length - (last?.length ?? 0))
  const all: Suggestion[] = [
    ...namesFrom(start),
    ...places,
    ...recipes.map(({ slug, title }): Suggestion => ({ text: title, kind: 'recipe', id: slug })),
    ...cases.map(({ slug, title }): Suggestion => ({ text: title, kind: 'case', id: slug })),
    ...words.map((word): Suggestion => ({ text: `${before}${word}`, kind: 'word', id: word })),
  ]
  const seen = new Set<string>()
  return all
    .filter(({ text }) => {
      const key = fold(text)
      return !seen.has(key) && seen.add(key)
    })
    .slice(0, limit)
}

function namesFrom(start: string): Suggestion[] {
  return contentSegment().pages.flatMap(({ kind, id, title, names = [] }) => {
    if (!NAMED.includes(kind)) return []
    const text = [title, ...names].find((name) => fold(name).startsWith(start))
    return text === undefined ? [] : [{ text, kind, id }]
  })
}

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
