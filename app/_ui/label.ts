import { askedLanguage } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import { materialBy } from '#lib/content/known-materials.ts'
import type { Labels, Term } from '#lib/content/types.ts'
import { formatList } from '../_words/format.ts'
import { eachLanguage, locale } from '../_words/index.ts'
import { first, type Query } from './query.ts'

/** The term of a vocabulary in content/vocabularies, or undefined for one that is not in it. */
export const termOf = (vocabulary: string, id: string): Term | undefined =>
  content().vocabularies.get(vocabulary)?.get(id)

const regions = eachLanguage(
  (language) => new Intl.DisplayNames(locale(language), { type: 'region', fallback: 'code' }),
)

/** A country by its code of ISO 3166-1; the code itself where it is none. */
const countryName = (code: string): string => (/^[A-Z]{2}$/.test(code) ? (regions().of(code) ?? code) : code)

/** A term of a vocabulary, by its id; anything that is no term is no choice. */
export function termIn(vocabulary: string, value: Query[string]): string | undefined {
  const given = first(value)
  return given !== undefined && termOf(vocabulary, given) ? given : undefined
}

/**
 * A term's label; its id where the vocabulary has no such term (an older entry may name one). Of countries it has those
 * that content has words about, and the rest go by their usual names.
 */
export function labelOf(vocabulary: string, id: string): string {
  const term = termOf(vocabulary, id)
  if (term !== undefined) return termName(term)
  return vocabulary === 'countries' ? countryName(id) : id
}

/** What a term is called. */
export const termName = ({ label, labels }: Term): string => nameOf(label, labels)

/** The name that content is sure of in the language spoken now, as a label; the English one where there is none. */
export function nameOf(label: string, names: Labels = {}): string {
  const name = ownNames(names)?.[0]
  return name === undefined ? label : name.charAt(0).toUpperCase() + name.slice(1)
}

/** What else it is called in the language of {@link nameOf}'s answer. */
export const otherNames = (also: readonly string[] = [], names: Labels = {}): readonly string[] =>
  ownNames(names)?.slice(1) ?? also

/** What it is called in the language spoken now; undefined where content is sure of no name, and in English. */
export function ownNames(names: Labels = {}): readonly string[] | undefined {
  const own = names[askedLanguage()]
  return typeof own === 'string' ? [own] : own
}

/** A material's label, also of one that somebody added, once it was read. */
export function materialLabel(id: string): string {
  const material = materialBy(id)
  return material === undefined ? id : nameOf(material.label, material.names)
}

/** A label as it stands inside a sentence; names and classes (`NHL 5`) keep their capitals. */
export const inSentence = (label: string): string =>
  /^.[A-Z0-9]/.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1)

/** Several terms as one phrase: `Brick and limestone`. */
export const labelList = (vocabulary: string, ids: readonly string[]): string =>
  formatList(
    ids.map((id, index) => (index === 0 ? labelOf(vocabulary, id) : inSentence(labelOf(vocabulary, id)))),
  )
