import { describe, expect, test } from 'vitest'
import { shortCitation } from '../../app/_ui/citation.tsx'

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
