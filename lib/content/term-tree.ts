import { content } from './index.ts'

const termsOf = (vocabulary: string) => content().vocabularies.get(vocabulary) ?? new Map()

/** A term and all that it is a kind of, the term first. */
export function termLine(vocabulary: string, id: string): string[] {
  const terms = termsOf(vocabulary)
  const line = [id]
  for (let at = terms.get(id)?.broader; at !== undefined; at = terms.get(at)?.broader) line.push(at)
  return line
}

/** Every term of a vocabulary with each term that covers it, itself included. */
export const broaderPairs = (vocabulary: string): (readonly [term: string, broader: string])[] =>
  [...termsOf(vocabulary).keys()].flatMap((id) =>
    termLine(vocabulary, id).map((broader) => [id, broader] as const),
  )

/** A term and every narrower one: asking for limestone finds chalk too. */
export const termsWithin = (vocabulary: string, id: string): string[] => [
  id,
  ...broaderPairs(vocabulary).flatMap(([term, broader]) => (broader === id && term !== id ? [term] : [])),
]
