import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { faultsWith, loadWith } from './folder.ts'

const real = content().guides

const page = (body: string, front = '') => ({
  'guides/look.md': `---\ntitle: Look\nsummary: How.\norder: 1\n${front}---\n\n${body}\n`,
})

test('there are 10 to 14 guides in unbroken order, each with a source and a caution', () => {
  const guides = [...real.values()]
  expect(guides.length).toBeGreaterThanOrEqual(10)
  expect(guides.length).toBeLessThanOrEqual(14)
  expect(guides.map(({ order }) => order)).toEqual(guides.map((_, i) => i + 1))
  expect(guides.filter(({ sources }) => sources.length === 0).map(({ id }) => id)).toEqual([])
  expect(guides.filter(({ cautions }) => cautions.length === 0).map(({ id }) => id)).toEqual([])
})

test('every guide on quicklime, height or raking carries its caution', () => {
  const cautionsOf = (id: string) => real.get(id)?.cautions ?? []
  expect(cautionsOf('quicklime-and-slaking')).toContain('quicklime')
  expect(cautionsOf('joints')).toEqual(
    expect.arrayContaining(['deep-raking-and-packing', 'working-at-height']),
  )
  expect(cautionsOf('plaster-and-limewash')).toContain('limewash')
})

test('loadContent(dir) reads a guide into headings, paragraphs and lists with their links', () => {
  const outcome = loadWith(
    page(
      'Read [this row](../tables/walls.md#common) **first**.\n\n## Then\n\n1. Look\n2. Write\n',
      'cautions: [burns]\n',
    ),
  )
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults))
  expect(outcome.content.guides.get('look')).toEqual({
    id: 'look',
    title: 'Look',
    summary: 'How.',
    order: 1,
    sources: [],
    cautions: ['burns'],
    blocks: [
      {
        kind: 'paragraph',
        words: [
          { text: 'Read ' },
          { text: 'this row', to: { collection: 'tables', id: 'walls', anchor: 'common' } },
          { text: ' ' },
          { text: 'first' },
          { text: '.' },
        ],
      },
      { kind: 'heading', text: 'Then' },
      { kind: 'list', ordered: true, items: [[{ text: 'Look' }], [{ text: 'Write' }]] },
    ],
  })
})

test('loadContent(dir) refuses what a guide may not hold', () => {
  expect(faultsWith(page('# Big\n\n> said\n\n[gone](../guides/gone.md)', 'cautions: [falls]\n'))).toEqual([
    'content/guides/look.md:5:12 unknown caution "falls"',
    'content/guides/look.md:8:1 a guide has headings of the second level, paragraphs and lists, not heading',
    'content/guides/look.md:10:1 a guide has headings of the second level, paragraphs and lists, not blockquote',
    'content/guides/look.md:12:1 broken link "../guides/gone.md"',
  ])
})

test('loadContent(dir) names two guides that stand at one place', () => {
  const text = page('A.')['guides/look.md'] ?? ''
  expect(faultsWith({ 'guides/a.md': text, 'guides/b.md': text })).toEqual([
    'content/guides/b.md:4:1 guide of order "1" is already at content/guides/a.md:4',
  ])
})
