import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { FullCitation, shortCitation } from '../../app/_ui/citation.tsx'

const source = { id: 'a-book', type: 'book', title: 'A Book of Walls' }

describe('shortCitation(source)', () => {
  test('gives one surname and the year', () => {
    expect(
      shortCitation({
        ...source,
        author: [{ family: 'Masonova', given: 'Ana' }],
        issued: { 'date-parts': [[1851, 3]] },
      }),
    ).toBe('Masonova 1851')
  })

  test('joins two surnames and shortens three', () => {
    const author = [{ family: 'Tamm' }, { family: 'Kivi' }, { literal: 'A Guild' }]
    expect(shortCitation({ ...source, author: author.slice(0, 2) })).toBe('Tamm and Kivi')
    expect(shortCitation({ ...source, author })).toBe('Tamm and others')
  })

  test('falls back on the title, and says about and BC where they apply', () => {
    expect(shortCitation({ ...source, issued: { 'date-parts': [[-25]], circa: true } })).toBe(
      'A Book of Walls c. 25 BC',
    )
  })
})

describe('FullCitation', () => {
  test('gives every part of a source, its own words in their language', () => {
    const html = renderToStaticMarkup(
      createElement(FullCitation, {
        source: {
          ...source,
          ...{ 'container-title': 'Mauern', edition: '2', volume: '3', number: 'Heft 4.', page: '5-6' },
          ...{ publisher: 'Ein Verlag', 'publisher-place': 'Ulm', ISBN: '978-0-00-000000-2', language: 'de' },
        },
      }),
    )
    expect(html.replaceAll(/<[^>]*>/g, '')).toBe(
      'A Book of Walls. Mauern. 2 ed. vol. 3. Heft 4. Ulm: Ein Verlag. pp. 5-6. ISBN 978-0-00-000000-2. ',
    )
    expect([...html.matchAll(/lang="de">([^<]*)/g)].map(([, words]) => words)).toEqual([
      'A Book of Walls',
      'Mauern. ',
      'Heft 4. ',
      'Ulm: Ein Verlag. ',
    ])
  })
})
