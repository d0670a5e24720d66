import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { hinter } from '../../app/_ui/hint.tsx'

// Read before the first test, whose time is not meant for it.
content()

const terms = (text: string, hint = hinter()) =>
  hint(text).flatMap(({ text: word, term }) => (term ? [`${word}=${term.id}`] : []))

test('hinter()(text) marks a term of the glossary at its first use', () => {
  expect(terms('Quicklime meets water; quicklime swells.')).toEqual(['Quicklime=quicklime'])
})

test('hinter()(text) remembers what earlier texts of the page marked', () => {
  const hint = hinter()
  expect(terms('Slaking quicklime.', hint)).toContain('quicklime=quicklime')
  expect(terms('More quicklime.', hint)).toEqual([])
})

test('hinter()(text) prefers the longer name and cuts no word in two', () => {
  expect(terms('Carbonation depth is not recarbonations.')).toEqual(['Carbonation depth=carbonation-depth'])
})

test('hinter()(text) leaves plain words and an empty text alone, and loses no letter', () => {
  expect(terms('Sand in the joint, lime in the mortar.')).toEqual([])
  expect(hinter()('')).toEqual([])
  const text = 'Fat lime, quicklime and putty; a pozzolan (trass).'
  expect(
    hinter()(text)
      .map((piece) => piece.text)
      .join(''),
  ).toBe(text)
})
