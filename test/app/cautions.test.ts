import { createElement, type ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { content } from '#lib/content/index.ts'
import { cautionWords } from '../../app/_ui/caution-words.ts'
import { Cautions, cautionsFor, type Work } from '../../app/_ui/cautions.tsx'
import CautionsPage from '../../app/cautions/page.tsx'
import { FoundList } from '../../app/find/found-list.tsx'

// Reading it takes seconds on a busy machine, and no test should be charged with that.
content()

const ids = (work: Work) => cautionsFor(work).map(({ id }) => id)

describe('cautionsFor(work)', () => {
  it.each(['lump-quicklime', 'ground-quicklime', 'quicklime-not-stated', 'not-stated', undefined] as const)(
    'warns of quicklime for a lime that is or may be such: %s',
    (state) => {
      expect(ids({ materials: [{ material: 'lime-cl90', state }] })).toContain('quicklime')
    },
  )

  it.each(['dry-hydrate', 'putty'] as const)(
    'does not for a lime that came as %s, and still of lime',
    (state) => {
      const shown = ids({ materials: [{ material: 'lime-cl90', state }] })
      expect(shown).not.toContain('quicklime')
      expect(shown).toContain('lime-putty-and-dust')
    },
  )

  it('warns of quicklime for every method that begins from it, putty run on site among them', () => {
    for (const method of ['hot-mixed-used-hot', 'hot-mixed-laid-down', 'sand-slaked', 'putty'] as const)
      expect(ids({ methods: [method], materials: [{ material: 'lime-cl90', state: 'putty' }] })).toContain(
        'quicklime',
      )
  })

  it('keeps that of kiln ash, which holds quicklime in whatever state', () => {
    expect(ids({ materials: [{ material: 'ash-lime-kiln', state: 'dry' }] })).toContain('quicklime')
  })

  it('puts the gravest first and asks for nothing where nothing is done', () => {
    const all = ids({ materials: [{ material: 'lime-cl90' }], uses: ['pointing'], roles: ['aggregate'] })
    expect(all[0]).toBe('quicklime')
    expect(ids({})).toEqual([])
  })
})

describe('cautionWords(caution)', () => {
  it('speaks the language of the page', () => {
    const [quicklime] = cautionsFor({ methods: ['putty'] })
    if (!quicklime) throw new Error('no caution of quicklime')
    expect(cautionWords(quicklime).title).toBe('Quicklime')
    expect(speaking('es', () => cautionWords(quicklime))).toBe(quicklime.es)
  })
})

describe('A Spanish page', () => {
  const cautions = [...content().cautions.values()]
  const found = cautions.map(({ id, title, notice }) => ({
    ...{ kind: 'caution' as const, id, title, summary: notice },
    ...{ entry: false, invented: false, why: [] },
  }))
  const escaped = (text: string) => renderToStaticMarkup(createElement('i', null, text)).slice(3, -4)

  it.each<[string, () => ReactNode, boolean]>([
    ['beside the work', () => createElement(Cautions, { cautions }), true],
    ['on their own page', () => createElement(CautionsPage), true],
    ['among what was found', () => createElement(FoundList, { pages: found }), false],
  ])('says every caution %s in Spanish alone', (_, draw, whole) => {
    const html = speaking('es', () => renderToStaticMarkup(draw()))
    const read = html.replaceAll(/<[^>]*>/g, '')
    for (const { title, notice, body, es } of cautions) {
      const texts = whole ? [es.title, es.notice, ...es.body] : [es.title, es.notice]
      expect(texts.filter((text) => !read.includes(escaped(text)))).toEqual([])
      expect([notice, ...body].filter((text) => read.includes(escaped(text)))).toEqual([])
      expect(html).not.toContain(`>${escaped(title)}`)
    }
    // Sources keep their titles, and the places in them their names.
    const cited = /<span class="source-mark">.*?<\/li>/g
    expect(html.replaceAll(cited, '')).not.toContain('lang="en"')
  })
})
