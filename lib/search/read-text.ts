import { stemsOf, tells, wholeName, wordsOf } from '#lib/entry/words.ts'
import type { FieldFault } from '#lib/errors.ts'
import { type Concept, nameKey, names } from './names.ts'
import { inOrder, ownNames, type Way, waysOf, waysOfConcept } from './ways.ts'

/** A part of what was typed, of which a page must fit one of the ways. */
export interface Clause {
  readonly typed: string
  readonly ways: readonly Way[]
  /** Stems that must stand in a row. */
  readonly row?: readonly string[]
  /** The one word of it, where it may be a slip. */
  readonly word?: string
}

/** A text as it is searched for. */
export interface Question {
  readonly clauses: readonly Clause[]
  readonly excluded: readonly Clause[]
  /** Pages of which it is the whole title or name: lexemes, and what that adds. */
  readonly whole: readonly { readonly lexeme: string; readonly score: number }[]
  /** Words left out: too common, or beyond the most that are read. */
  readonly ignored: readonly string[]
  readonly faults: readonly FieldFault[]
}

export const LONGEST_TEXT = 300
const MOST_CLAUSES = 12

const WHOLE_SCORE = 40
export const WHOLE_NAME_SCORE = 30

/** What a text asks for: words, names of several words, "phrases", and -exclusions of each. */
export function readText(given: string): Question {
  const text = given.slice(0, LONGEST_TEXT)
  const faults: FieldFault[] =
    given.length > LONGEST_TEXT ? [{ field: 'q', code: 'too-long', limit: LONGEST_TEXT }] : []
  const [clauses, excluded, ignored]: [Clause[], Clause[], string[]] = [[], [], []]
  for (const { words, quoted, minus } of pieces(text)) {
    const into = minus ? excluded : clauses
    const telling = words.filter(tells)
    ignored.push(...words.filter((word) => !tells(word)))
    if (quoted && telling.length > 1) into.push(rowClause(telling))
    else into.push(...wordClauses(telling, quoted || minus))
  }
  ignored.push(...clauses.slice(MOST_CLAUSES).map(({ typed }) => typed))
  const kept = clauses.slice(0, MOST_CLAUSES)
  return {
    clauses: kept,
    excluded: excluded.slice(0, MOST_CLAUSES),
    whole: wholeOf(kept.map(({ typed }) => typed).join(' ')),
    ignored: [...new Set(ignored)],
    faults,
  }
}

interface Piece {
  readonly words: string[]
  readonly quoted: boolean
  readonly minus: boolean
}

function* pieces(text: string): Generator<Piece> {
  let run: string[] = []
  for (const [, before, quote, bare] of text.matchAll(
    /(-?)(?:["“”«»„]([^"“”«»„]*)["“”«»„]?|([^\s"“”«»„]+))/gu,
  )) {
    const words = wordsOf(quote ?? bare ?? '')
    // A minus inside a word joins it; one before a word takes it out.
    const minus = before === '-'
    if (quote === undefined && !minus) {
      run.push(...words)
      continue
    }
    if (run.length > 0) yield { words: run, quoted: false, minus: false }
    run = []
    if (words.length > 0) yield { words, quoted: quote !== undefined, minus }
  }
  if (run.length > 0) yield { words: run, quoted: false, minus: false }
}

/** Words as clauses, the longest names first: `mortero de cal` is one thing. */
function wordClauses(words: readonly string[], asTyped: boolean): Clause[] {
  const { byStems, longest } = names()
  const clauses: Clause[] = []
  for (let at = 0; at < words.length; ) {
    let taken = 1
    let known: readonly Concept[] = []
    for (let length = Math.min(longest, words.length - at); length > 0; length -= 1) {
      const some = words.slice(at, at + length)
      // `lime wash` is written `limewash` too.
      const joined = length === 2 ? stemsOf(some.join('')) : []
      const found = byStems.get(nameKey(stemsOf(some.join(' ')))) ?? byStems.get(nameKey(joined))
      if (found !== undefined) {
        ;[taken, known] = [length, found]
        break
      }
    }
    const typed = words.slice(at, at + taken).join(' ')
    const stems = stemsOf(typed)
    at += taken
    // `CL90` and `NHL5` are written `CL 90` and `NHL 5` too.
    const apart = taken === 1 ? typed.replace(/(\p{L})(\p{N})/u, '$1 $2') : typed
    clauses.push({
      typed,
      ways: inOrder([
        ...waysOf(stems, 'as-typed', typed),
        ...(apart === typed ? [] : waysOf(stemsOf(apart), 'as-typed', apart)),
        ...(asTyped ? [] : known.flatMap((concept) => waysOfConcept(concept, stems))),
      ]),
      ...(taken === 1 && { word: typed }),
    })
  }
  return clauses
}

function rowClause(words: readonly string[]): Clause {
  const stems = stemsOf(words.join(' '))
  return { typed: words.join(' '), ways: waysOf(stems, 'as-typed', words.join(' ')), row: stems }
}

/** What a page is called that is wholly named by these words, typed so or taken for what was typed. */
export function wholeOf(words: string, score = WHOLE_SCORE): { lexeme: string; score: number }[] {
  const stems = stemsOf(words)
  if (stems.length === 0) return []
  const joined = stems.length === 2 ? stemsOf(words.replace(/\s+/g, '')) : []
  const known = names().byStems.get(nameKey(stems)) ?? names().byStems.get(nameKey(joined)) ?? []
  const others = known.flatMap((concept) => ownNames(concept, concept.english))
  return [
    { lexeme: wholeName(stems), score },
    ...others.map((name) => ({ lexeme: wholeName(stemsOf(name)), score: Math.min(score, WHOLE_NAME_SCORE) })),
  ]
}
