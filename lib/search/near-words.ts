import { wordsLike, wordsLikeBeginning, wordsWritten } from '#lib/db/search/words.ts'
import { stem, wordsOf } from '#lib/entry/words.ts'
import { contentWords } from './content-pages.ts'
import { beginningDistance, editDistance, slipsFor } from './distance.ts'
import { names } from './names.ts'

/** So many words are offered in place of one. */
const MOST_BEGINNINGS = 3

/** Whether content or a name of a thing has the word, spelled so. */
export const isKnownWord = (word: string): boolean => contentWords().has(word) || names().words.has(word)

let made: readonly string[] | undefined

/** Every word of content and of the names of things: some thousands, whatever the record holds. */
export function knownWords(): readonly string[] {
  made ??= [...new Set([...contentWords(), ...names().words])]
  return made
}

/** The words with the fewest slips between them and this one, none where even the nearest is far. */
export async function wordsNear(word: string): Promise<string[]> {
  const most = slipsFor(word.length)
  if (most === 0) return []
  const near = nearestOf([...(await wordsLike(word)), ...knownWords()], most, (one, least) =>
    editDistance(word, one, least),
  )
  // Another form of a word that is known is no slip.
  return near.some((one) => stem(one) === stem(word)) ? [] : near
}

/**
 * What may be meant by a text that is typed so far, should it hold slips: each word put right that nobody writes so,
 * the last by the words whose beginning is nearest to it; and two words written as one. Never the text itself.
 */
export async function startsNear(start: string): Promise<string[]> {
  const words = wordsOf(start)
  const last = words.pop()
  if (last === undefined) return []
  const before = await Promise.all(words.map(putRight))
  const ends = await beginningsNear(last)
  const isSame = before.every((word, k) => word === words[k])
  const texts = (ends.length > 0 ? ends : isSame ? [] : [last]).map((end) => [...before, end].join(' '))
  return words.length === 1 ? [...texts, `${words[0]}${last}`] : texts
}

async function putRight(word: string): Promise<string> {
  if (/\p{N}/u.test(word) || isKnownWord(word) || (await wordsWritten([word])).length > 0) return word
  const [nearest = word] = await wordsNear(word)
  return nearest
}

/** Words with the fewest slips between what is typed of them and how they begin; none where one begins just so. */
async function beginningsNear(typed: string): Promise<string[]> {
  const most = slipsFor(typed.length)
  if (most === 0 || /\p{N}/u.test(typed)) return []
  const near = nearestOf([...knownWords(), ...(await wordsLikeBeginning(typed))], most, (one, least) =>
    beginningDistance(typed, one, least),
  )
  if (near.some((one) => one.startsWith(typed))) return []
  const { english, words } = names()
  // Few words differ from a short one in their first letter by a slip; the whole word typed is the likelier one.
  const rank = (word: string) =>
    100 * (word[0] === typed[0] ? 0 : 1) +
    10 * (english.has(word) ? 0 : words.has(word) ? 1 : 2) +
    editDistance(typed, word, 9)
  return near
    .filter((word) => most > 1 || word[0] === typed[0])
    .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))
    .slice(0, MOST_BEGINNINGS)
}

/** Those of the words with the least distance, if that is at most `most`, each once. */
function nearestOf(
  words: Iterable<string>,
  most: number,
  distanceOf: (word: string, most: number) => number,
): string[] {
  let [least, nearest]: [number, Set<string>] = [most, new Set()]
  for (const word of words) {
    const distance = distanceOf(word, least)
    if (distance > least) continue
    if (distance < least) nearest = new Set()
    least = distance
    nearest.add(word)
  }
  return [...nearest]
}
