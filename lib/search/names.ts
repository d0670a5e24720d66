import { content } from '#lib/content/index.ts'
import { termsWithin } from '#lib/content/term-tree.ts'
import { mark } from '#lib/entry/search-text.ts'
import { stemsOf, wordsOf } from '#lib/entry/words.ts'

/** One thing of the trade with all that it is called, as content tells. */
export interface Concept {
  /** `glossary`, `materials` or the vocabulary. */
  readonly from: string
  readonly id: string
  readonly label: string
  /** The label and other English names: what pages may call it. */
  readonly english: readonly string[]
  /** Names in other languages. */
  readonly foreign: readonly string[]
  /** The mark that pages about it carry, and the marks of all that is a kind of it. */
  readonly marks: readonly string[]
}

/** Vocabularies whose terms pages are marked with, and the mark. */
export const MARKED = {
  units: 'unit',
  'wall-types': 'wall',
  uses: 'use',
  structures: 'structure',
  countries: 'country',
  salts: 'salt',
  families: 'family',
  methods: 'method',
} as const

export interface Names {
  /** Things by a name's stems in plain order, blanks between. */
  readonly byStems: ReadonlyMap<string, readonly Concept[]>
  /** Stems that the longest name has. */
  readonly longest: number
  /** Every word of a name as it is spelled. */
  readonly words: ReadonlySet<string>
  /** Those of English names. */
  readonly english: ReadonlySet<string>
}

let made: Names | undefined

/** All names that content knows, read once. */
export function names(): Names {
  made ??= collect()
  return made
}

/** A name as {@link Names.byStems} knows it: the order of its words does not matter. */
export const nameKey = (stems: readonly string[]): string => [...new Set(stems)].sort().join(' ')

function collect(): Names {
  const byStems = new Map<string, Concept[]>()
  const words = new Set<string>()
  const english = new Set<string>()
  let longest = 1
  for (const concept of concepts()) {
    for (const word of concept.english.flatMap(wordsOf)) english.add(word)
    for (const name of [...concept.english, ...concept.english.flatMap(joined), ...concept.foreign]) {
      const stems = stemsOf(name)
      if (stems.length === 0) continue
      const key = nameKey(stems)
      const known = byStems.get(key) ?? []
      if (!known.includes(concept)) byStems.set(key, [...known, concept])
      longest = Math.max(longest, new Set(stems).size)
      for (const word of wordsOf(name)) words.add(word)
    }
  }
  return { byStems, longest, words, english }
}

/** A name of two words as one: `brickdust` is said of brick dust. */
function joined(name: string): string[] {
  const words = wordsOf(name)
  return words.length === 2 && !words.some((word) => /\p{N}/u.test(word)) ? [words.join('')] : []
}

function* concepts(): Generator<Concept> {
  for (const { id, term, also, labels } of content().glossary.values())
    yield {
      ...{ from: 'glossary', id, label: term },
      english: spoken([term, ...also]),
      foreign: spoken(Object.values(labels ?? {}).flat()),
      marks: [],
    }
  for (const { id, label, names: other } of content().materials.values())
    yield {
      ...{ from: 'materials', id, label },
      english: spoken([label]),
      foreign: spoken(Object.values(other).flat()),
      marks: [mark('material', id)],
    }
  for (const [vocabulary, terms] of content().vocabularies)
    for (const { id, label, also = [], labels } of terms.values())
      yield {
        ...{ from: vocabulary, id, label },
        english: spoken([label, ...also]),
        foreign: spoken(Object.values(labels ?? {}).flat()),
        marks: vocabulary in MARKED ? marksOf(vocabulary as keyof typeof MARKED, id) : [],
      }
}

const marksOf = (vocabulary: keyof typeof MARKED, id: string): string[] =>
  termsWithin(vocabulary, id).map((term) => mark(MARKED[vocabulary], term))

/** Names as they are said: what a label adds in brackets is left off too. */
const spoken = (names: readonly string[]): string[] => [
  ...new Set(
    names.flatMap((name) => {
      const short = name.replace(/\s*\([^)]*\)/g, '').trim()
      return short === '' ? [name] : [name, short]
    }),
  ),
]
