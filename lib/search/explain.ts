import { content, type Labels } from '#lib/content/index.ts'
import { type Findable, fold, lexemesOf, stem } from '#lib/entry/words.ts'
import { MARKED } from './names.ts'
import type { Question } from './read-text.ts'
import type { Field, How, Way } from './ways.ts'

/** Why a page was found: what fits one part of the text that was typed. */
export interface Why {
  readonly typed: string
  readonly how: How
  /** The word, name or term that it was found by. */
  readonly matched: string
  /** What the term or material is called elsewhere. */
  readonly names?: Labels
  readonly field: Field
  /** The place in the page, in pieces; the marked ones are what fits. Absent where a term of the page fits. */
  readonly excerpt?: readonly Piece[]
  /** The language of the excerpt; absent where none is known, as of all that people wrote. */
  readonly language?: string
}

export interface Piece {
  readonly text: string
  readonly marked: boolean
}

/** Letters shown before and after the first word that fits. */
const AROUND = 90

/** A page with the line of all its stems, and the languages of those of its texts of which it is known. */
type Explained = Findable & { readonly stems: string; readonly languages?: ReadonlyMap<string, string> }

/**
 * Why a page fits a text, part by part.
 *
 * @param language the reader's, in which the place in the page is looked for first
 */
export function explain(page: Explained, { clauses }: Question, language?: string): Why[] {
  const short = lexemesOf({ ...page, body: '' })
  const held = { has: (lexeme: string) => short.has(lexeme) || page.stems.includes(` ${lexeme} `) }
  const isRead = (text: string) => language !== undefined && page.languages?.get(text) === language
  return clauses.flatMap(({ typed, ways, row }) => {
    const way = ways.find(({ needs }) => needs.every((need) => held.has(need)))
    return way === undefined ? [] : [whyOf(page, typed, way, row, isRead)]
  })
}

function whyOf(
  page: Explained,
  typed: string,
  way: Way,
  row: readonly string[] | undefined,
  isRead: (text: string) => boolean,
): Why {
  const { how, matched, field } = way
  if (field === 'mark') return { typed, how, ...(saidBy(way.needs[0] ?? '') ?? { matched }), field }
  const stems = new Set(row ?? way.needs.flatMap((need) => need.replace(/\/[ts]$/, '').split('_')))
  const all = textsOf(page, field)
  const texts = [...all.filter(isRead), ...all.filter((text) => !isRead(text))]
  const text =
    texts.find((one) => fits(one, stems, way.needs.length > 1)) ??
    texts.find((one) => fits(one, stems, false))
  if (text === undefined) return { typed, how, matched, field }
  const language = page.languages?.get(text)
  return {
    ...{ typed, how, matched, field, excerpt: excerptOf(text, stems) },
    ...(language !== undefined && { language }),
  }
}

/** A name of several words may stand in the title though it is looked for in the summary too. */
function textsOf({ title, names = [], summary, body }: Findable, field: Field): string[] {
  if (field === 'title') return [title, ...names]
  if (field === 'summary') return [summary, title, ...names]
  return [...body.split('\n'), summary, title]
}

const WORD = /[\p{L}\p{N}]+/gu

function fits(text: string, stems: ReadonlySet<string>, all: boolean): boolean {
  const found = new Set(
    [...text.matchAll(WORD)].map(([word]) => stem(fold(word))).filter((one) => stems.has(one)),
  )
  return all ? found.size === stems.size : found.size > 0
}

/** A part of a text about the first word that fits, with every word that fits marked. */
export function excerptOf(text: string, stems: ReadonlySet<string>): Piece[] {
  const words = [...text.matchAll(WORD)].filter(([word]) => stems.has(stem(fold(word))))
  const first = words[0]?.index ?? 0
  const from = first <= AROUND ? 0 : wordStart(text, first - AROUND)
  const rest = text.length - first
  const to = rest <= AROUND * 2 ? text.length : wordEnd(text, first + AROUND)
  const pieces: Piece[] = [{ text: from > 0 ? '… ' : '', marked: false }]
  let at = from
  for (const { 0: word, index } of words) {
    if (index < from || index + word.length > to) continue
    pieces.push({ text: text.slice(at, index), marked: false }, { text: word, marked: true })
    at = index + word.length
  }
  pieces.push({ text: `${text.slice(at, to)}${to < text.length ? ' …' : ''}`, marked: false })
  return pieces.filter((piece) => piece.text !== '')
}

const wordStart = (text: string, at: number) => {
  const blank = text.indexOf(' ', at)
  return blank < 0 ? at : blank + 1
}

const wordEnd = (text: string, at: number) => {
  const blank = text.lastIndexOf(' ', at)
  return blank < 0 ? at : blank
}

/** What a mark says: the label of its term or material, and its names elsewhere. */
function saidBy(found: string): Pick<Why, 'matched' | 'names'> | undefined {
  const colon = found.indexOf(':')
  const [of, id] = [found.slice(0, colon), found.slice(colon + 1)]
  if (of === 'material') {
    const material = content().materials.get(id)
    return material && { matched: material.label, names: material.names }
  }
  const vocabulary = Object.entries(MARKED).find(([, name]) => name === of)?.[0] ?? ''
  const term = content().vocabularies.get(vocabulary)?.get(id)
  return term && { matched: term.label, ...(term.labels && { names: term.labels }) }
}
