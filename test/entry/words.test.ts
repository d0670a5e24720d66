import { describe, expect, it } from 'vitest'
import { fold, lexemesOf, spelledWords, stem, stemLine, stemsOf, wordsOf } from '#lib/entry/words.ts'

describe('fold(text)', () => {
  it.each([
    ['Kalkmörtel', 'kalkmortel'],
    ['Štajerska', 'stajerska'],
    ['ÉTÉ', 'ete'],
    ['Straße, œuvre, Łódź', 'strasse, oeuvre, lodz'],
    ['ﬁne', 'fine'],
  ])('of %s is %s', (text, folded) => {
    expect(fold(text)).toBe(folded)
  })

  it('says the same of composed and decomposed letters', () => {
    expect(fold('mo\u0308rtel')).toBe(fold('mörtel'))
  })
})

describe('wordsOf(text)', () => {
  it('takes figures, words of any alphabet, and neither signs nor pictures', () => {
    expect(wordsOf('1:3, 😀 مرحبا – Kalk!')).toEqual(['1', '3', 'مرحبا', 'kalk'])
    expect(wordsOf('')).toEqual([])
  })

  it('drops what is tied to a word by an apostrophe', () => {
    expect(wordsOf("the mason's wall, l'argile d’eau")).toEqual(['the', 'mason', 'wall', 'argile', 'eau'])
  })

  it('cuts a word that has no end', () => {
    expect(wordsOf('a'.repeat(5000))).toEqual(['a'.repeat(40)])
  })
})

/** M. F. Porter, “An algorithm for suffix stripping”, Program 14 (1980), examples of steps 1a to 5. */
const PORTER: readonly (readonly [string, string])[] = [
  ['caresses', 'caress'],
  ['ponies', 'poni'],
  ['cats', 'cat'],
  ['agreed', 'agre'],
  ['plastered', 'plaster'],
  ['motoring', 'motor'],
  ['hopping', 'hop'],
  ['filing', 'file'],
  ['relational', 'relat'],
  ['formaliti', 'formal'],
  ['triplicate', 'triplic'],
  ['hopefulness', 'hope'],
  ['adjustable', 'adjust'],
  ['effective', 'effect'],
  ['probate', 'probat'],
]

describe('stem(word)', () => {
  it.each(PORTER)('of %s is %s, as Porter has it', (word, expected) => {
    expect(stem(word)).toBe(expected)
  })

  it('leaves words of other letters whole', () => {
    expect(stem('известь')).toBe('известь')
  })
})

describe('lexemesOf(page)', () => {
  const page = {
    title: 'Lime mortars',
    names: ['Kalkmörtel'],
    summary: 'For the damp wall.',
    body: 'Sand and hair.',
    marks: ['unit:granite'],
  }

  it('tells where each stem stands, pairs in a row, whole names and marks', () => {
    expect([...lexemesOf(page)].sort()).toEqual(
      [
        ...['unit:granite', 'lime', 'lime/t', 'mortar', 'mortar/t', 'lime_mortar', '=lime mortar'],
        ...['kalkmortel', 'kalkmortel/t', '=kalkmortel'],
        ...['damp', 'damp/s', 'wall', 'wall/s', 'damp_wall', 'sand', 'hair'],
      ].sort(),
    )
  })

  it('leaves out common words, from phrases too', () => {
    expect(stemsOf('the lime of the wall')).toEqual(['lime', 'wall'])
    expect(stemLine({ ...page, body: 'sand\nhair' })).toBe(' lime mortar . damp wall . sand . hair ')
  })

  it('knows words as they are spelled', () => {
    expect([...spelledWords(page)].sort()).toEqual(
      ['and', 'damp', 'for', 'hair', 'kalkmortel', 'lime', 'mortars', 'sand', 'the', 'wall'].sort(),
    )
  })
})
