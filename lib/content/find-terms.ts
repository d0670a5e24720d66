import type { GlossaryTerm } from './types.ts'

/** Small letters without accents, so that kalkmortel finds Kalkmörtel. */
const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase()

const namesOf = ({ term, also, labels }: GlossaryTerm): readonly string[] => [
  term,
  ...also,
  ...Object.values(labels ?? {}).flat(),
]

/**
 * Glossary terms that go by a name: the term itself, its other names, or what it is called in another language.
 * Every word asked for must stand in one name, as a whole or in part; case and accents do not matter. Names that
 * begin with what was asked come first, otherwise the order given is kept. Nothing asked finds nothing.
 */
export function findTerms(terms: Iterable<GlossaryTerm>, asked: string): readonly GlossaryTerm[] {
  const words = folded(asked).split(/\s+/).filter(Boolean)
  if (words.length === 0) return []
  const found = [...terms].flatMap((term) => {
    const names = namesOf(term).map(folded)
    const fits = names.filter((name) => words.every((word) => name.includes(word)))
    return fits.length === 0 ? [] : [{ term, begins: fits.some((name) => name.startsWith(words[0] ?? '')) }]
  })
  return [...found.filter(({ begins }) => begins), ...found.filter(({ begins }) => !begins)].map(
    ({ term }) => term,
  )
}
