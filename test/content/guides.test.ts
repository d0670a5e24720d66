import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { faultsWith, loadWith } from './folder.ts'

const real = content().guides

/** A guide, with the same in Spanish: by itself its own body once more. */
const page = (body: string, front = '', spanish = body) => ({
  'guides/look.md': `---\ntitle: Look\nsummary: How.\norder: 1\n${front}---\n\n${body}\n`,
  'guides/look.es.md': `---\ntitle: Mirar\nsummary: Cómo.\n---\n\n${spanish}\n`,
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
      'Leer primero [esta fila](../tables/walls.md#common).\n\n## Después\n\n1. Mirar\n2. Escribir\n',
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
      { kind: 'heading', id: 'then', text: 'Then' },
      { kind: 'list', ordered: true, items: [[{ text: 'Look' }], [{ text: 'Write' }]] },
    ],
    es: {
      title: 'Mirar',
      summary: 'Cómo.',
      blocks: [
        {
          kind: 'paragraph',
          words: [
            { text: 'Leer primero ' },
            { text: 'esta fila', to: { collection: 'tables', id: 'walls', anchor: 'common' } },
            { text: '.' },
          ],
        },
        { kind: 'heading', id: 'then', text: 'Después' },
        { kind: 'list', ordered: true, items: [[{ text: 'Mirar' }], [{ text: 'Escribir' }]] },
      ],
    },
  })
})

test('loadContent(dir) refuses what a guide may not hold', () => {
  const body = '# Big\n\n> said\n\n[gone](../guides/gone.md)'
  expect(faultsWith(page(body, 'cautions: [falls]\n', '[sin ella](../guides/gone.md)'))).toEqual([
    'content/guides/look.md:5:12 unknown caution "falls"',
    'content/guides/look.md:8:1 a guide has headings of the second level, paragraphs and lists, not heading',
    'content/guides/look.md:10:1 a guide has headings of the second level, paragraphs and lists, not blockquote',
    'content/guides/look.md:12:1 broken link "../guides/gone.md"',
  ])
})

test('loadContent(dir) names two guides that stand at one place', () => {
  const { 'guides/look.md': text, 'guides/look.es.md': es } = page('A.')
  const files = { 'guides/a.md': text, 'guides/a.es.md': es, 'guides/b.md': text, 'guides/b.es.md': es }
  expect(faultsWith(files)).toEqual([
    'content/guides/b.md:4:1 guide of order "1" is already at content/guides/a.md:4',
  ])
})

const BODY = 'Look [here](../cautions/burns.md).\n\n- One\n- Two'

test.each([
  ['another kind of block', 'Mirar [aquí](../cautions/burns.md).\n\nUno y dos', 'block 2 is paragraph ()'],
  ['an item less', 'Mirar [aquí](../cautions/burns.md).\n\n- Uno y dos', 'block 2 is list ()'],
  [
    'a numbered list',
    'Mirar [aquí](../cautions/burns.md).\n\n1. Uno\n2. Dos',
    'block 2 is numbered list (; )',
  ],
  ['a block less', 'Mirar [aquí](../cautions/burns.md).', 'block 2 is missing'],
  ['no link', 'Mirar.\n\n- Uno\n- Dos', 'block 1 is paragraph ()'],
  [
    'another link',
    'Mirar [aquí](../tables/walls.md).\n\n- Uno\n- Dos',
    'block 1 is paragraph (tables/walls)',
  ],
])('loadContent(dir) refuses Spanish with %s', (_, spanish, told) => {
  expect(faultsWith(page(BODY, '', spanish))).toEqual([expect.stringContaining(told)])
})

test('loadContent(dir) asks for the Spanish of each guide, and for the English of each', () => {
  const { 'guides/look.md': text, 'guides/look.es.md': es } = page('A.')
  expect(faultsWith({ 'guides/look.md': text, 'guides/see.es.md': es })).toEqual([
    'content/guides/look.md:2:1 its Spanish is missing: look.es.md',
    'content/guides/see.es.md:1:1 there is no such guide in English',
  ])
})
