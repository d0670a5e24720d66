import { textsOf } from './guide-blocks.ts'
import type { Pair } from './pairs.ts'
import type { Caution, Content, Guide, Labels, Term } from './types.ts'

/** A text that is wanted in Spanish. */
type Wanted = Omit<Pair, 'spanish'> & { readonly spanish: string | undefined }

/** Every text of content that has one in Spanish, by where it stands: `cautions/quicklime.body.1`. */
export const spanishOf = (content: Content): readonly Pair[] =>
  wantedOf(content).flatMap(({ spanish, ...text }) => (spanish === undefined ? [] : [{ ...text, spanish }]))

/** Keys of the texts that Spanish pages say in English. */
export const lackingSpanish = (content: Content): readonly string[] =>
  wantedOf(content).flatMap(({ key, spanish }) => (spanish === undefined ? [key] : []))

function wantedOf(content: Content): readonly Wanted[] {
  return [
    ...[...content.cautions].flatMap(([id, caution]) => cautionPairs(`cautions/${id}`, caution)),
    ...[...content.guides].flatMap(([id, guide]) => guidePairs(`guides/${id}`, guide)),
    ...[...content.vocabularyHeads].flatMap(([id, { title, note, es }]) => [
      ...text(`vocabularies/${id}.title`, title, es?.title),
      ...text(`vocabularies/${id}.note`, note, es?.note),
    ]),
    ...[...content.vocabularies].flatMap(([vocabulary, terms]) =>
      [...terms.values()].flatMap((term) => termPairs(`vocabularies/${vocabulary}/${term.id}`, term)),
    ),
    ...[...content.glossary].flatMap(([id, { term, ...rest }]) =>
      termPairs(`glossary/${id}`, { label: term, ...rest }),
    ),
  ]
}

function cautionPairs(at: string, { title, notice, body, es }: Caution): Wanted[] {
  return [
    ...text(`${at}.title`, title, es.title),
    ...text(`${at}.notice`, notice, es.notice),
    ...body.flatMap((paragraph, i) => text(`${at}.body.${i + 1}`, paragraph, es.body[i])),
  ]
}

/** Block by block, and item by item of a list. */
function guidePairs(at: string, { title, summary, blocks, es }: Guide): Wanted[] {
  const spanish = es.blocks.flatMap(textsOf)
  return [
    ...text(`${at}.title`, title, es.title),
    ...text(`${at}.summary`, summary, es.summary),
    ...blocks.flatMap(textsOf).flatMap((english, i) => text(`${at}.${i + 1}`, english, spanish[i])),
  ]
}

function termPairs(at: string, { label, labels, definition, es, figures = [] }: Omit<Term, 'id'>): Wanted[] {
  return [
    // A class known by its letters alone has the same ones in every language.
    ...(/\p{Ll}/u.test(label) ? text(`${at}.label`, label, spanishNames(labels)) : []),
    ...text(`${at}.definition`, definition, es?.definition),
    ...figures.flatMap((figure, i) => text(`${at}.figures.${i + 1}.note`, figure.note, figure.es?.note)),
  ]
}

const spanishNames = ({ es }: Labels = {}) => (typeof es === 'object' ? es.join('; ') : es)

/** Nothing where English says nothing. */
const text = (key: string, english: string | undefined, spanish: string | undefined): Wanted[] =>
  english === undefined ? [] : [{ key, english, spanish }]
