import { describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { hasContentPage } from '#lib/content/pages.ts'

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
