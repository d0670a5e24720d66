import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { content } from '#lib/content/index.ts'
import { openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const read = async (path: string) => (await fetch(`${SITE}${path}`)).text()
const hrefs = (html: string, pattern: RegExp) => [...html.matchAll(pattern)].map(([, href = '']) => href)
const idsOf = (html: string) => new Set(hrefs(html, /\sid="([^"]+)"/g))

describe('The library refuses what it does not hold', () => {
  it.each(['/guides/no-such', '/materials/no-such', '/terms/no-such'])('%s', async (path) => {
    expect((await fetch(`${SITE}${path}`)).status).toBe(404)
  })
})

describe('The chart of the centuries', () => {
  const marks = (html: string) => hrefs(html, /href="\/tables\/([a-z0-9-]+#[a-z0-9-]+)" tabindex="-1"/g)
  const named = (html: string) => hrefs(html, /<th[^>]*><a href="\/tables\/([a-z0-9-]+#[a-z0-9-]+)"/g)

  it('draws each row once, links it to its own row, and lists the same rows in numbers', async () => {
    const html = await read('/compare')
    const drawn = marks(html)
    expect(drawn.length).toBeGreaterThan(140)
    expect(new Set(drawn).size).toBe(drawn.length)
    expect(drawn.filter((ref) => !content().rows.has(ref))).toEqual([])
    expect([...named(html)].sort()).toEqual([...drawn].sort())
  })

  it('keeps rows from memory in a drawing of their own', async () => {
    const [checked = '', memory = ''] = (await read('/compare')).split(
      '<figure class="chart-figure chart-memory">',
    )
    const bases = (html: string) => new Set(marks(html).map((ref) => content().rows.get(ref)?.basis))
    expect(bases(checked).has('memory')).toBe(false)
    expect([...bases(memory)]).toEqual(['memory'])
  })

  it('narrows to a use and a standing, and takes no choice that names nothing', async () => {
    const uses = marks(await read('/compare?use=floor')).map((ref) => content().rows.get(ref)?.uses)
    expect(uses.length).toBeGreaterThan(2)
    expect(uses.filter((one) => !one?.includes('floor'))).toEqual([])
    const standing = marks(await read('/compare?standing=known-hazard'))
    expect(standing.map((ref) => content().rows.get(ref)?.standing)).toEqual(
      standing.map(() => 'known-hazard'),
    )
    expect(marks(await read('/compare?use=nonsense'))).toEqual(marks(await read('/compare')))
  })

  it('holds within its range the proportion that Vitruvius gives, 3 of pit sand, wherever lime is putty', async () => {
    // Vitruvius, De architectura, bk 2, ch. 5, § 1: three of dug sand to one of slaked lime.
    const html = await read('/compare?state=putty')
    const title = /Mortar with pit sand: 1 : [\d.]+ \(([\d.]+)–([\d.]+)\)\. Rome/.exec(html)
    expect(Number(title?.[1])).toBeLessThanOrEqual(3)
    expect(Number(title?.[2])).toBeGreaterThanOrEqual(3)
  })

  it('prints on paper laid on its side, above the numbers', async () => {
    const { page } = await openPage(browser, { baseURL: SITE })
    await page.goto('/compare?use=bedding-brick')
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
    const sheets = [...pdf.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/g)]
    expect(sheets.some(([, width, height]) => Number(width) > Number(height))).toBe(true)
    await page.context().close()
  })
})

describe('The glossary', () => {
  it('holds every term at its address, and leads from term to term only to what is there', async () => {
    const html = await read('/glossary')
    const ids = idsOf(html)
    expect([...content().glossary.keys()].filter((id) => !ids.has(id))).toEqual([])
    expect(hrefs(html, /href="#([^"]+)"/g).filter((id) => !ids.has(id))).toEqual([])
  })

  it('is hinted at on the first use of a word in a guide, and no word twice', async () => {
    const html = await read('/guides/hot-mixed-sand-slaked-putty')
    const hints = hrefs(html, /class="hint" href="\/glossary#([^"]+)"/g)
    expect(hints.length).toBeGreaterThan(0)
    expect(new Set(hints).size).toBe(hints.length)
    expect(hints.filter((id) => !content().glossary.has(id))).toEqual([])
  })
})

describe('The guides', () => {
  it('lead to pages and places that are there, each with its sources and cautions', async () => {
    for (const { id, sources, cautions } of content().guides.values()) {
      const html = await read(`/guides/${id}`)
      for (const { source } of sources) expect(html, id).toContain(`href="/sources/${source}"`)
      for (const caution of cautions)
        expect(html, id).toContain(content().cautions.get(caution)?.notice.slice(0, 20))
    }
  })
})

describe('The cautions', () => {
  it('stand each at its address, with all the materials that show it', async () => {
    const ids = idsOf(await read('/cautions'))
    expect([...content().cautions.keys()].filter((id) => !ids.has(id))).toEqual([])
  })
})

describe('The materials', () => {
  it('lead from the list to a page of each, with every figure and where it comes from', async () => {
    const listed = new Set(hrefs(await read('/materials'), /href="\/materials\/([a-z0-9-]+)"/g))
    expect([...content().materials.keys()].filter((id) => !listed.has(id))).toEqual([])
    const ids = idsOf(await read('/materials/lime-fat'))
    const figures = Object.keys(content().materials.get('lime-fat')?.properties ?? {})
    expect(figures.filter((name) => !ids.has(name))).toEqual([])
  })

  it('name the rows and the recipes that use them', async () => {
    const html = await read('/materials/sand-pit')
    expect(html).toContain('href="/tables/vitruvius-mortar#pit-sand"')
    expect(hrefs(html, /<li><a href="\/recipes\/([a-z0-9-]+)"/g).length).toBeGreaterThan(0)
  })
})

describe('The lists of terms', () => {
  it('hold every vocabulary and every term', async () => {
    const list = await read('/terms')
    for (const [id, terms] of content().vocabularies) {
      expect(list).toContain(`href="/terms/${id}"`)
      const ids = idsOf(await read(`/terms/${id}`))
      expect([...terms.keys()].filter((term) => !ids.has(term))).toEqual([])
    }
  })

  it('set chalk under limestone under sedimentary stone', async () => {
    const { page } = await openPage(browser, { baseURL: SITE })
    await page.goto('/terms/units')
    const above = page.locator('.tree a[href="#chalk"]').locator('xpath=ancestor::li/a')
    expect(await above.evaluateAll((links) => links.map((link) => link.getAttribute('href')))).toEqual([
      '#stone',
      '#sedimentary-rock',
      '#limestone',
      '#chalk',
    ])
    await page.context().close()
  })
})

describe('The scales', () => {
  it('are drawn step by step where a record is explained, each step by its own name', async () => {
    const drawings = hrefs(await read('/record'), /class="scale-drawing"[^>]*aria-label="([^"]+)"/g)
    expect(drawings.length).toBe(15)
    expect(new Set(drawings).size).toBe(15)
  })
})
