import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { faultsWith } from './folder.ts'

const { glossary } = content()

const words = (terms: string) => ({ 'glossary/words.yaml': `terms:\n${terms}` })

test('there are at least 150 terms, none with an English name that another has', () => {
  expect(glossary.size).toBeGreaterThanOrEqual(150)
  const names = [...glossary.values()].flatMap(({ term, also }) =>
    [term, ...also].map((name) => name.toLowerCase()),
  )
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
})

test('every term leads to another, or is led to', () => {
  const terms = [...glossary.values()]
  const reached = new Set(terms.flatMap(({ see }) => see))
  expect(terms.filter(({ id, see }) => see.length === 0 && !reached.has(id)).map(({ id }) => id)).toEqual([])
})

test('a definition is one or two sentences, and does not open with the term itself', () => {
  for (const { id, term, definition } of glossary.values()) {
    expect(definition.length, id).toBeLessThanOrEqual(220)
    expect(definition.endsWith('.'), id).toBe(true)
    expect(definition.toLowerCase().startsWith(`${term.toLowerCase()} is`), id).toBe(false)
  }
})

test('loadContent(dir) finds a glossary term that leads nowhere, or to itself', () => {
  const right = '  - { id: lime, term: Lime, definition: Burned limestone., see: [sand, lime] }\n'
  expect(faultsWith(words(right))).toEqual([
    'content/glossary/words.yaml:2:66 unknown glossary term "sand"',
    'content/glossary/words.yaml:2:72 a term cannot send its reader to itself',
  ])
})

test('loadContent(dir) names both places of a repeated term', () => {
  const twice = '  - { id: lime, term: Lime, definition: A. }\n'.repeat(2)
  expect(faultsWith(words(twice))).toEqual([
    'content/glossary/words.yaml:3:7 glossary term "lime" is already at content/glossary/words.yaml:2',
  ])
})
