import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { content, type Term } from '#lib/content/index.ts'
import { follow, openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const SCRIPTS = [
  ['with JavaScript', true],
  ['without JavaScript', false],
] as const

/** The same work for both languages, as each would type it. */
const WALL = { use: 'bedding-brick', area: '10.5', joint: '12.5', 'half-bricks': '2', loss: '5' }
const comma = (text: string) => text.replace('.', ',')

const SUBMIT = '.job-form button[type=submit]:not([name])'

/** Links and forms of a page that leave its language without saying so. */
const strays = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('a[href^="/"]:not([hreflang]), form[action^="/"]')]
      .map((one) => one.getAttribute('href') ?? one.getAttribute('action') ?? '')
      .filter(
        (address) => !/^\/(?:es(?:[/?#]|$)|api\/|photos\/(?:add(?:$|\?)|[0-9a-f]{64}\/))/.test(address),
      ),
  )

/** Every figure of the sheet, its working among them, in one way of writing. */
const figuresOn = async (page: Page, language: 'en' | 'es'): Promise<string[]> => {
  const cells = await page.locator('#sheet .quantity').allTextContents()
  const [parting, decimal] = language === 'en' ? [',', '.'] : ['.', ',']
  return cells
    .flatMap((text) => text.match(/\d[\d.,]*\d|\d/g) ?? [])
    .map((figure) => figure.replaceAll(parting, '').replace(decimal, '.'))
    .sort()
}

describe.each(SCRIPTS)('A reader of Spanish %s', (_, javaScriptEnabled) => {
  it('walks from home by a search to a recipe and a job sheet with the figures of the English one', async () => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled, locale: 'es' })
    const looked = async (path: string) => {
      expect(new URL(page.url()).pathname).toBe(path)
      expect(await page.getAttribute('html', 'lang')).toBe('es')
      expect(await page.textContent('.translated')).toContain('pendiente de que la compruebe un albañil')
      expect(await strays(page)).toEqual([])
    }

    await page.goto('/es')
    await looked('/es')
    await page.fill('main form[action="/es/find"] input[name=q]', 'mortero de cal')
    await follow(page, () => page.click('main form[action="/es/find"] button[type=submit]'))
    await looked('/es/find')
    await page.goto('/es/recipes?unit=brick')
    await follow(page, () => page.click('main a[href="/es/recipes/grey-lime-brick-mortar"]'))
    await looked('/es/recipes/grey-lime-brick-mortar')
    expect(await page.getAttribute('link[rel=canonical]', 'href')).toMatch(
      /\/es\/recipes\/grey-lime-brick-mortar$/,
    )
    expect(await page.getAttribute('link[rel=alternate][hreflang=en]', 'href')).toMatch(
      /(?<!\/es)\/recipes\/grey-lime-brick-mortar$/,
    )
    await follow(page, () => page.click('main a[href^="/es/recipes/grey-lime-brick-mortar/job"]'))
    await page.selectOption('select[name=use]', WALL.use)
    if (!javaScriptEnabled) await follow(page, () => page.click('button[name=show]'))
    for (const [name, value] of Object.entries(WALL))
      if (name !== 'use') await page.fill(`input[name=${name}]`, comma(value))
    await follow(page, () => page.click(SUBMIT))
    await looked('/es/recipes/grey-lime-brick-mortar/job')
    expect(await page.textContent('#field-area-echo')).toBe('Leído como 10,5 m²')
    const spanish = await figuresOn(page, 'es')
    expect(spanish.length).toBeGreaterThan(20)
    if (javaScriptEnabled) expect(await lookOver(page, 'es-job')).toEqual([])

    await page.goto(`/recipes/grey-lime-brick-mortar/job?${new URLSearchParams(WALL)}`)
    expect(await page.getAttribute('html', 'lang')).toBe('en-GB')
    expect(await figuresOn(page, 'en')).toEqual(spanish)
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('is told in Spanish what is wrong, and keeps what was typed', async () => {
    const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled, locale: 'es' })
    await page.goto('/es/recipes/hot-lime-for-rubble/job?use=pointing-rubble&area=ancho&depth=1.500')
    expect(await page.inputValue('input[name=area]')).toBe('ancho')
    expect(await page.textContent('#field-area-error')).toContain(
      '«ancho» no es un número. Dar cifras, como 24, 0,5',
    )
    expect(await page.locator('.job-ask label').allInnerTexts()).toEqual(['1500 mm', '1,5 mm'])

    await page.goto('/es/account')
    expect(new URL(page.url()).pathname).toBe('/es/sign-in')
    await page.fill('input[name=email] >> nth=0', 'nadie@lugar.example')
    await page.fill('input[name=password]', 'no es la contraseña')
    await page.click('form:has(input[name=password]) button[type=submit]')
    await expect
      .poll(() => page.locator('form:has(input[name=password]) [role=alert]').count())
      .toBeGreaterThan(0)
    expect(new URL(page.url()).pathname).toBe('/es/sign-in')
    expect(await page.getAttribute('html', 'lang')).toBe('es')
    expect(await page.inputValue('form:has(input[name=password]) input[name=email]')).toBe(
      'nadie@lugar.example',
    )
    await page.context().close()
  })

  it('changes the language by a link that keeps the page and all that its address holds', async () => {
    const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled })
    await page.goto('/work-out/sand?q=kept')
    await follow(page, () => page.click('a.language[lang=es]'))
    expect(new URL(page.url()).pathname).toBe('/es/work-out/sand')
    expect(new URL(page.url()).searchParams.get('q')).toBe('kept')
    expect(await strays(page)).toEqual([])
    expect(await page.locator('main').textContent()).not.toContain('What to find')
    await follow(page, () => page.click('a.language[lang=en]'))
    expect(new URL(page.url()).pathname).toBe('/work-out/sand')
    await page.context().close()
  })
})

describe('Addresses in Spanish', () => {
  it('answer as the English ones do', async () => {
    const status = async (path: string) => (await fetch(`${SITE}${path}`, { redirect: 'manual' })).status
    expect(await status('/es')).toBe(200)
    expect(await status('/es/recipes/no-such-recipe')).toBe(404)
    expect(await status('/es/no-such-page')).toBe(404)
    expect(await status('/es/es')).toBe(404)
    expect(await status('/es/api/v1/cases')).toBe(404)
    expect(await status('/es/%E0%A4%A')).toBe(404)
    const away = await fetch(`${SITE}/es/account`, { redirect: 'manual' })
    expect([away.status, new URL(away.headers.get('location') ?? '', SITE).pathname]).toEqual([
      303,
      '/es/sign-in',
    ])
  })

  it('are told by the address alone: neither a header nor what a browser prefers changes the language', async () => {
    const asked = { 'Accept-Language': 'es', 'x-putlog-language': 'es' }
    expect(await (await fetch(`${SITE}/`, { headers: asked })).text()).toContain('<html lang="en-GB"')
    const fault = await (await fetch(`${SITE}/api/v1/cases?limit=no`, { headers: asked })).text()
    expect(fault).toContain('cannot be used')
  })

  it('stand in the sitemap beside the English ones', async () => {
    const sitemap = await (await fetch(`${SITE}/sitemap.xml`)).text()
    expect(sitemap).toMatch(/<loc>[^<]*\/es\/recipes<\/loc>/)
    expect(sitemap).toMatch(/hreflang="es" href="[^"]*\/es\/recipes"/)
  })
})

describe('Content on Spanish pages', () => {
  const { glossary, vocabularies } = content()
  const words = async (path: string) =>
    (await (await fetch(`${SITE}${path}`)).text())
      .replaceAll(/<script[\s\S]*?<\/script>/g, '')
      .replaceAll(/<[^>]*>/g, '')
      .replaceAll('&#x27;', "'")
      .replaceAll('&quot;', '"')
      .replaceAll('&amp;', '&')

  const lists: [string, readonly Pick<Term, 'definition' | 'es'>[]][] = [
    ['/es/glossary', [...glossary.values()]],
    ...[...vocabularies].map(([id, terms]): [string, Term[]] => [`/es/terms/${id}`, [...terms.values()]]),
  ]
  it.each(lists)('%s says in Spanish what each term means', async (path, terms) => {
    const text = await words(path)
    const told = terms.flatMap(({ definition, es }) => (definition === undefined ? [] : [{ definition, es }]))
    expect(told.filter(({ es }) => !text.includes(es?.definition ?? 'missing'))).toEqual([])
    expect(told.filter(({ definition }) => text.includes(definition))).toEqual([])
  })

  it('the glossary stands in the order of its Spanish names', async () => {
    const html = await (await fetch(`${SITE}/es/glossary`)).text()
    const names = [...html.matchAll(/<dfn>(?:<span lang="en">)?([^<]+)/g)].map(([, name = '']) => name)
    expect(names.length).toBe(glossary.size)
    expect(names).toEqual([...names].sort(new Intl.Collator('es').compare))
    expect(names[0]).toBe('Adobe')
  })

  it.each([
    ['/es/recipes/grey-lime-brick-mortar', 'in no language that is known', '<h1 lang="">'],
    ['/es/tables/renders-on-earth-1920', 'in English', '<h1><span lang="en">'],
  ])('%s marks its title as being %s', async (path, _, head) => {
    expect(await (await fetch(`${SITE}${path}`)).text()).toContain(head)
  })

  it.each([
    ['apagado en arena', '/es/terms/methods#sand-slaked'],
    ['juntas enrasadas', '/es/glossary#flush-joint'],
    ['perpiaño', '/es/glossary#through-stone'],
    ['caliza', '/es/terms/units/limestone'],
  ])('a search for %s finds %s', async (asked, href) => {
    const html = await (await fetch(`${SITE}/es/find?q=${encodeURIComponent(asked)}`)).text()
    expect(html).toContain(`href="${href}"`)
  })
})
