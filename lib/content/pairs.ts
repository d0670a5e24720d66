import { createHash } from 'node:crypto'

/** One text in English and the same in Spanish, by a key that stays while the text changes. */
export interface Pair {
  readonly key: string
  readonly english: string
  readonly spanish: string
}

/** Key → digests of both texts as they were when somebody last set one beside the other. */
export type Marks = Readonly<Record<string, string>>

/** What a set of marks is told by comparing it with the texts of today. */
export interface Compared {
  /** The English changed since, the Spanish did not: it may say something else now. */
  readonly stale: readonly Pair[]
  /** Never marked, or the Spanish changed since. */
  readonly unmarked: readonly Pair[]
  /** Keys of marks whose texts are gone. */
  readonly gone: readonly string[]
}

const digest = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 8)

const markOf = ({ english, spanish }: Pair) => `${digest(english)} ${digest(spanish)}`

/** Sets marks beside the texts of today. */
export function comparePairs(pairs: readonly Pair[], marks: Marks): Compared {
  const keys = new Set(pairs.map(({ key }) => key))
  const changed = pairs.filter((pair) => marks[pair.key] !== markOf(pair))
  const isStale = ({ key, spanish }: Pair) => marks[key]?.endsWith(` ${digest(spanish)}`) ?? false
  return {
    stale: changed.filter(isStale),
    unmarked: changed.filter((pair) => !isStale(pair)),
    gone: Object.keys(marks).filter((key) => !keys.has(key)),
  }
}

/**
 * The marks of today: of new texts and of those whose Spanish changed, and of stale ones that somebody looked over and
 * found to say the same still. Other stale ones keep the mark they had.
 *
 * @param lookedOver keys of stale texts whose Spanish stays as it is
 */
export function markPairs(pairs: readonly Pair[], marks: Marks, lookedOver: ReadonlySet<string>): Marks {
  const stale = new Set(comparePairs(pairs, marks).stale.map(({ key }) => key))
  const kept = (pair: Pair) =>
    stale.has(pair.key) && !lookedOver.has(pair.key) ? marks[pair.key] : undefined
  return Object.fromEntries(
    pairs.map((pair) => [pair.key, kept(pair) ?? markOf(pair)] as const).sort(([a], [b]) => (a < b ? -1 : 1)),
  )
}

const NUMBERS = {
  en: { pattern: /\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?/g, thousands: ',', decimal: '.' },
  es: { pattern: /\d{1,3}(?:\.\d{3})+(?:,\d+)?|\d+(?:,\d+)?/g, thousands: '.', decimal: ',' },
} as const

/** The numbers that a text writes in digits, each once, the smallest first. */
export function figuresIn(text: string, language: keyof typeof NUMBERS): readonly number[] {
  const { pattern, thousands, decimal } = NUMBERS[language]
  const found = [...text.matchAll(pattern)].map(([written]) =>
    Number(written.replaceAll(thousands, '').replace(decimal, '.')),
  )
  return [...new Set(found)].sort((a, b) => a - b)
}

/** The texts whose two languages write other numbers. */
export const differingFigures = (pairs: readonly Pair[]): readonly Pair[] =>
  pairs.filter(
    ({ english, spanish }) => figuresIn(english, 'en').join(' ') !== figuresIn(spanish, 'es').join(' '),
  )
