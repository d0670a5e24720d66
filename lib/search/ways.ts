import { inARow, inSummary, inTitle, stemsOf } from '#lib/entry/words.ts'
import { type Concept, nameKey, names } from './names.ts'

/** How what was typed and what was found go together. */
export type How = 'as-typed' | 'other-name' | 'narrower' | 'spelling' | 'beginning'
export type Field = 'title' | 'summary' | 'text' | 'mark'

/** One way to fit a clause: a page that has all the lexemes scores so much. */
export interface Way {
  readonly score: number
  readonly needs: readonly string[]
  readonly how: How
  /** What it is found by, as it is written. */
  readonly matched: string
  readonly field: Field
}

/** By how a page fits and where: the title says what a page is about, a name stands for another only mostly. */
const SCORES = {
  'as-typed': { title: 12, summary: 6, text: 3 },
  'other-name': { title: 9, summary: 5, text: 2 },
  spelling: { title: 9, summary: 5, text: 2 },
  beginning: { title: 8, summary: 4, text: 2 },
  // A word of another language may by chance be one of English too.
  foreign: { title: 5, summary: 4, text: 2 },
} as const
const MARK_SCORE = 7
const KIND_SCORE = 5
/** The ways of one word that was typed otherwise: as another spelling of it, or as its beginning. */
export function waysOfWord(word: string, how: 'spelling' | 'beginning'): Way[] {
  const stems = stemsOf(word)
  const known = names().byStems.get(nameKey(stems)) ?? []
  return [...waysOf(stems, how, word), ...known.flatMap((concept) => waysOfConcept(concept, stems))]
}

/** By the very words, in the title, in the summary or anywhere in the text. */
export function waysOf(
  stems: readonly string[],
  how: Exclude<keyof typeof SCORES, 'foreign'>,
  matched: string,
  { title, summary, text }: (typeof SCORES)[keyof typeof SCORES] = SCORES[how],
): Way[] {
  return [
    { score: title, needs: stems.map(inTitle), how, matched, field: 'title' },
    { score: summary, needs: stems.map(inSummary), how, matched, field: 'summary' },
    { score: text, needs: stems, how, matched, field: 'text' },
  ]
}

/** By what a thing is called otherwise, and by the marks of it and of its kinds. */
export function waysOfConcept(concept: Concept, typed: readonly string[]): Way[] {
  const [own, ...kinds] = concept.marks
  const named = (names: readonly string[], scores: (typeof SCORES)['other-name' | 'foreign']) =>
    names.flatMap((name): Way[] => {
      const stems = stemsOf(name)
      if (nameKey(stems) === nameKey(typed)) return []
      if (stems.length === 1) return waysOf(stems, 'other-name', name, scores)
      const needs = stems.slice(1).map((stem, i) => inARow(stems[i] ?? '', stem))
      const inShort: Way = {
        score: scores.summary,
        needs,
        how: 'other-name',
        matched: name,
        field: 'summary',
      }
      // English words stand together by chance; those of another language hardly ever.
      return scores === SCORES.foreign
        ? [inShort, { score: scores.text, needs: stems, how: 'other-name', matched: name, field: 'text' }]
        : [inShort]
    })
  const marked = (needs: string, score: number, how: How): Way => ({
    ...{ score, needs: [needs], how, matched: concept.label, field: 'mark' },
  })
  return [
    ...named(ownNames(concept, concept.english), SCORES['other-name']),
    ...named(ownNames(concept, concept.foreign), SCORES.foreign),
    ...(own === undefined ? [] : [marked(own, MARK_SCORE, 'other-name')]),
    ...kinds.map((kind) => marked(kind, KIND_SCORE, 'narrower')),
  ]
}

/** Those of its names that mean this thing alone: `freestone` is said of more than one stone. */
export const ownNames = (concept: Concept, all: readonly string[]): string[] =>
  all.filter((name) => {
    const meant = names().byStems.get(nameKey(stemsOf(name))) ?? []
    return meant.length > 0 && meant.every(({ from, id }) => from !== concept.from || id === concept.id)
  })

/** The best way first. */
export const inOrder = (ways: readonly Way[]): Way[] => [...ways].sort((a, b) => b.score - a.score)
