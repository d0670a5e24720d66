import { wordsFrom, wordsWritten } from '#lib/db/search/words.ts'
import { stem } from '#lib/entry/words.ts'
import { isKnownWord, knownWords, wordsNear } from './near-words.ts'
import { type Clause, type Question, WHOLE_NAME_SCORE, wholeOf } from './read-text.ts'
import { inOrder, waysOfWord } from './ways.ts'

/** What a word was taken for. */
export interface Correction {
  readonly typed: string
  readonly how: 'spelling' | 'beginning'
  readonly to: readonly string[]
}

const MOST_GUESSES = 4
const SHORTEST_BEGINNING = 3

/** Words of a text that are written nowhere though another form of them, by its stem, may be: perhaps slips. */
export async function unwritten(read: Question): Promise<Clause[]> {
  const doubtful = read.clauses.filter(
    ({ word }) => word !== undefined && stem(word) !== word && !isKnownWord(word),
  )
  const written = new Set(await wordsWritten(doubtful.flatMap(({ word }) => word ?? [])))
  return doubtful.filter(({ word }) => word !== undefined && !written.has(word))
}

/**
 * The text with what its words may mean put in for those that no page has: words spelled nearly so, else words that
 * begin so, from the record, from content and from the names of things.
 */
export async function amend(
  read: Question,
  unknown: readonly Clause[],
): Promise<{ read: Question; corrections: Correction[] }> {
  const corrections: Correction[] = []
  const clauses = await Promise.all(
    read.clauses.map(async (clause) => {
      if (clause.word === undefined || !unknown.includes(clause)) return clause
      const guess = await guessWord(clause.word)
      if (guess === undefined) return clause
      corrections.push(guess)
      const ways = guess.to.flatMap((word) => waysOfWord(word, guess.how))
      return { ...clause, ways: inOrder([...clause.ways, ...ways]) }
    }),
  )
  const taken = new Map(corrections.map(({ typed, to }) => [typed, to[0] ?? typed]))
  const words = clauses.map(({ typed }) => taken.get(typed) ?? typed).join(' ')
  return { read: { ...read, clauses, whole: wholeOf(words, WHOLE_NAME_SCORE) }, corrections }
}

async function guessWord(word: string): Promise<Correction | undefined> {
  if (/\p{N}/u.test(word)) return undefined
  const near = (await wordsNear(word)).slice(0, MOST_GUESSES)
  if (near.length > 0) return { typed: word, how: 'spelling', to: near }
  const longer = word.length < SHORTEST_BEGINNING ? [] : await wordsBeginning(word)
  return longer.length > 0 ? { typed: word, how: 'beginning', to: longer } : undefined
}

async function wordsBeginning(word: string): Promise<string[]> {
  const known = knownWords().filter((one) => one.startsWith(word))
  return [...new Set([...(await wordsFrom(word)), ...known])].slice(0, MOST_GUESSES)
}
