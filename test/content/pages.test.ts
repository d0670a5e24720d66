import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { hasContentPage, hasTermPage, PAGED_VOCABULARIES } from '#lib/content/pages.ts'

const KINDS = [
  ['tables', content().tables],
  ['sources', content().sources],
  ['materials', content().materials],
  ['guides', content().guides],
  ['terms', content().vocabularies],
] as const

describe('hasContentPage(kind, id)', () => {
  it.each(KINDS)('finds all that is loaded of %s', (kind, loaded) => {
    expect(loaded.size).toBeGreaterThan(0)
    expect([...loaded.keys()].filter((id) => !hasContentPage(kind, id))).toEqual([])
  })

  it.each(KINDS)('finds nothing else in %s', (kind) => {
    for (const id of ['no-such', 'README', '', '.', '../tables/vitruvius-mortar', 'vitruvius-mortar.md'])
      expect(hasContentPage(kind, id), id).toBe(false)
  })
})

describe('hasTermPage(vocabulary, id)', () => {
  it.each(PAGED_VOCABULARIES)('finds every term of %s', (vocabulary) => {
    const terms = [...(content().vocabularies.get(vocabulary)?.keys() ?? [])]
    expect(terms.length).toBeGreaterThan(0)
    expect(terms.filter((id) => !hasTermPage(vocabulary, id))).toEqual([])
  })

  it('finds nothing else', () => {
    for (const [vocabulary, id] of [
      ['units', 'no-such'],
      ['units', ''],
      ['units', '.*'],
      ['units', 'lime'],
      ['uses', 'pointing'],
      ['../sources', 'limestone'],
    ] as const)
      expect(hasTermPage(vocabulary, id), `${vocabulary}/${id}`).toBe(false)
  })
})
