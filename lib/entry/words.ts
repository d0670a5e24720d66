import { stemmer } from 'stemmer'

/**
 * Text as it is looked for: folded to small letters without accents, cut into words, cut down to stems. All in our
 * own code, so that every database server and every kind of page finds alike.
 */

/** Letters that are no letter with an accent, and how they are written without them. */
const SPELLED: Readonly<Record<string, string>> = {
  ß: 'ss',
  œ: 'oe',
  æ: 'ae',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  ı: 'i',
}

/** Longest word that is told apart from others. */
const LONGEST = 40

/** Words that stand in nearly every sentence of a language and tell nothing. */
const COMMON = new Set(
  (
    'a an and are as at be by for from has in is it its of on or that the this to was were with ' +
    'au aux de des du en et la le les un une der das dem den die ein eine im mit und von ' +
    'con el las los por y al da do dos em o os um uma di gli il lo nel per'
  ).split(' '),
)

/** Small letters, no accents. */
export const fold = (text: string): string =>
  PLAIN.test(text)
    ? text.toLowerCase()
    : text
        .normalize('NFKD')
        .replace(/\p{Mark}/gu, '')
        .toLowerCase()
        .replace(/[ßœæøđðþłı]/g, (letter) => SPELLED[letter] ?? letter)

/** Most text is English and has nothing to fold. */
const PLAIN = /^[\x20-\x7e\n]*$/

/** The words of a text in their order, folded; what ties letters to a word in English or French is dropped. */
export function wordsOf(text: string): string[] {
  const plain = fold(text)
    .replace(/['’]s(?![\p{L}\p{N}])/gu, '')
    .replace(/(?<![\p{L}\p{N}])\p{L}['’](?=\p{L})/gu, ' ')
  return (plain.match(/[\p{L}\p{N}]+/gu) ?? []).map((word) => word.slice(0, LONGEST))
}

/** Whether a word tells anything: neither a common one nor a single letter. */
export const tells = (word: string): boolean => !COMMON.has(word) && (word.length > 1 || /\p{N}/u.test(word))

const stems = new Map<string, string>()

/** What a word shares with its other forms: `limes` and `lime` are one. Words of other alphabets stay whole. */
export function stem(word: string): string {
  const known = stems.get(word)
  if (known !== undefined) return known
  const made = /^[a-z]{3,}$/.test(word) ? stemmer(word) : word
  // A server lives long and texts hold any word: the memory is bounded.
  if (stems.size > 200_000) stems.clear()
  stems.set(word, made)
  return made
}

/** The stems of the words that tell something, in their order. */
export const stemsOf = (text: string): string[] => wordsOf(text).filter(tells).map(stem)

/** What a page is found by. */
export interface Findable {
  readonly title: string
  /** Other names that are as good as the title. */
  readonly names?: readonly string[]
  readonly summary: string
  readonly body: string
  /** Terms that it carries, `unit:granite` and the like. */
  readonly marks: readonly string[]
}

/** A stem as it stands in a title (or other name) or in a summary. */
export const inTitle = (one: string): string => `${one}/t`
export const inSummary = (one: string): string => `${one}/s`
/** Two stems in a row, in a title, name or summary. */
export const inARow = (one: string, next: string): string => `${one}_${next}`
/** A whole title or name. */
export const wholeName = (all: readonly string[]): string => `=${all.join(' ').slice(0, 80)}`

/** Everything that a page can be looked up under, each once. */
export function lexemesOf({ title, names = [], summary, body, marks }: Findable): Set<string> {
  const found = new Set<string>(marks)
  for (const name of [title, ...names]) {
    const all = stemsOf(name)
    for (const one of all) found.add(one).add(inTitle(one))
    addPairs(found, all)
    if (all.length > 0) found.add(wholeName(all))
  }
  const inShort = stemsOf(summary)
  for (const one of inShort) found.add(one).add(inSummary(one))
  addPairs(found, inShort)
  for (const one of stemsOf(body)) found.add(one)
  return found
}

function addPairs(found: Set<string>, all: readonly string[]): void {
  for (let i = 1; i < all.length; i += 1) found.add(inARow(all[i - 1] ?? '', all[i] ?? ''))
}

/** All stems of a page in their order, a blank before, between and after; texts are kept apart. */
export const stemLine = ({ title, summary, body }: Findable): string =>
  ` ${[title, summary, ...body.split('\n')].map((text) => stemsOf(text).join(' ')).join(' . ')} `

/** Every word of a page as it is spelled, for guessing what was meant; figures are not guessed. */
export const spelledWords = ({ title, names = [], summary, body }: Findable): Set<string> =>
  new Set(
    [title, ...names, summary, body].flatMap((text) =>
      wordsOf(text).filter((word) => word.length > 2 && !/\p{N}/u.test(word)),
    ),
  )
