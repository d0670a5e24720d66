import { content } from '#lib/content/index.ts'
import type { GlossaryTerm } from '#lib/content/types.ts'
import type { Language } from '../_words/languages.ts'
import { said } from './said.tsx'

/** A run of words, with the term of the trade that they name where this is its first use on the page. */
export interface Piece {
  readonly text: string
  readonly term?: GlossaryTerm
}

/** Terms whose words every reader knows or that often mean something plain; marking them would only be noise. */
const PLAIN = new Set(
  [
    'lime mortar lime-mortar sand joint plaster render clay hair unit visit batch binder core-of-wall',
    'course keying rod perch green set yield bond fabric bedding burning washing grit scaling',
    'erosion bushel barrel pointing sieve suction popping',
  ].flatMap((line) => line.split(' ')),
)

const escaped = (word: string) => word.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')

const known = new Map<Language, ReturnType<typeof namesIn>>()

/** Every name of every term that may be hinted at in a language; a longer name wins over one inside it. */
function namesIn(language: Language) {
  const namesOf = ({ term, also, labels }: GlossaryTerm) =>
    language === 'en' ? [term, ...also] : [labels?.[language] ?? []].flat()
  const byWord = new Map(
    [...content().glossary.values()]
      .filter(({ id }) => !PLAIN.has(id))
      .flatMap((term) => namesOf(term).map((name) => [name.toLowerCase(), term] as const)),
  )
  const words = [...byWord.keys()].sort((a, b) => b.length - a.length).map(escaped)
  return { byWord, pattern: new RegExp(`(?<![\\p{L}\\p{N}])(${words.join('|')})(?![\\p{L}\\p{N}])`, 'giu') }
}

/**
 * For one page: cuts text after text, in the order they are read, where a term of the glossary is used for
 * the first time.
 *
 * @param language of the texts: English as most of content was written
 */
export function hinter(language: Language = 'en'): (text: string) => Piece[] {
  const seen = new Set<string>()
  const { pattern, byWord } = known.get(language) ?? namesIn(language)
  known.set(language, { pattern, byWord })
  return (text) => {
    const pieces: Piece[] = []
    let from = 0
    for (const { 0: word, index } of text.matchAll(pattern)) {
      const term = byWord.get(word.toLowerCase())
      if (!term || seen.has(term.id)) continue
      seen.add(term.id)
      pieces.push({ text: text.slice(from, index) }, { text: word, term })
      from = index + word.length
    }
    return [...pieces, { text: text.slice(from) }].filter((piece) => piece.text !== '')
  }
}

/** Words with their hints: what the term means on hovering, and its place in the glossary on following it. */
export const Hinted = ({ pieces }: { pieces: readonly Piece[] }) =>
  pieces.map(({ text, term }) =>
    term === undefined ? (
      text
    ) : (
      <a key={term.id} className="hint" href={`/glossary#${term.id}`} title={said(term, 'definition')}>
        {text}
      </a>
    ),
  )
