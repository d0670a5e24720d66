import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { follow, openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

/**
 * The example: 10 m² of half-brick wall in handmade brick 240 × 115 × 35 mm with 20 mm joints.
 *
 * Published: Junta de Andalucía, Base de Costes de la Construcción de Andalucía, edition 2024-01, item
 * 06LEC00013 (lime mortar): 0.047 m³ of mortar and 74 bricks to 1 m², 5 % of breakage in the bricks.
 *
 * By hand: the joints' share of the face is f = 1 − 240 · 35 / (260 · 55) = 1 − 8400 / 14300 = 0.41259;
 * mortar 115 mm · f = 47.448 L/m², so 474.48 L for 10 m²; bricks 1e6 / 14300 = 69.930 to 1 m², 699.3 in all.
 */
const PUBLISHED = { mortarM3PerM2: 0.047, roundedTo: 0.0005, bricksPerM2: 74, breakage: 1.05 }
const BY_HAND = { mortarL: 474.48, bricks: 699.3 }
const WALL = {
  area: '10',
  'brick-length': '240',
  'brick-height': '35',
  'brick-width': '115',
  joint: '20',
  'half-bricks': '1',
  loss: '0',
}

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

describe.each([
  ['with JavaScript', true],
  ['without JavaScript', false],
])('A newcomer %s', (_, javaScriptEnabled) => {
  it('walks from home by stone to a recipe, its sources and cases, and to a job sheet that is right', async () => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled })

    await page.goto('/')
    await page.selectOption('select[name=unit]', 'brick')
    await follow(page, () => page.click('main form[action="/recipes"] button[type=submit]'))
    expect(new URL(page.url()).search).toBe('?unit=brick')

    await follow(page, () => page.click('main a[href="/recipes/grey-lime-brick-mortar"]'))
    expect(await page.textContent('h1')).toBe('Grey lime for brickwork')

    await follow(page, () => page.locator('main a[href="/sources/useful-arts-1851"]:visible').first().click())
    expect(new URL(page.url()).pathname).toBe('/sources/useful-arts-1851')
    expect(await page.locator('main a[href="/recipes/grey-lime-brick-mortar"]').count()).toBeGreaterThan(0)

    await follow(page, () => page.click('main a[href="/recipes/grey-lime-brick-mortar"]'))
    await follow(page, () => page.locator('#cases a[href^="/cases/"]').first().click())
    expect(new URL(page.url()).pathname).toMatch(/^\/cases\//)
    await follow(page, () => page.locator('main a[href^="/recipes/grey-lime-brick-mortar"]').first().click())

    await follow(page, () => page.click('main a[href^="/recipes/grey-lime-brick-mortar/job"]'))
    await page.selectOption('select[name=use]', 'bedding-brick')
    if (!javaScriptEnabled) await follow(page, () => page.click('button[name=show]'))
    for (const [name, value] of Object.entries(WALL)) await page.fill(`input[name=${name}]`, value)
    await follow(page, () => page.click('.job-form button[type=submit]:not([name])'))

    const address = new URL(page.url())
    expect(Object.fromEntries(address.searchParams)).toMatchObject({ use: 'bedding-brick', ...WALL })
    expect([...address.searchParams.keys()]).toEqual(expect.arrayContaining(['r', 'ed', 'sums', 'is']))

    const mortarL = await printed(page, 'Mortar in place')
    expect(mortarL).toBeCloseTo(BY_HAND.mortarL, -0.5)
    expect(Math.abs(mortarL / 10_000 - PUBLISHED.mortarM3PerM2)).toBeLessThanOrEqual(PUBLISHED.roundedTo)
    const bricks = await printed(page, 'Bricks in place')
    expect(bricks).toBeCloseTo(BY_HAND.bricks, -0.5)
    expect(Math.ceil((bricks / 10) * PUBLISHED.breakage)).toBe(PUBLISHED.bricksPerM2)
    expect(await printed(page, 'Mortar to make')).toBe(mortarL)

    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('gets the same sheet again from its address', async () => {
    const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled })
    await page.goto(
      `/recipes/grey-lime-brick-mortar/job?${new URLSearchParams({ use: 'bedding-brick', ...WALL })}`,
    )
    const address = page.url()
    const sheet = await page.textContent('#sheet')
    await page.goto('about:blank')
    await page.goto(address)
    expect(page.url()).toBe(address)
    expect(await page.textContent('#sheet')).toBe(sheet)
    await page.context().close()
  })

  it('is told what changed when the address was made from other versions', async () => {
    const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled })
    await page.goto(
      `/recipes/grey-lime-brick-mortar/job?${new URLSearchParams({ use: 'bedding-brick', ...WALL })}`,
    )
    const address = new URL(page.url())
    address.searchParams.set('ed', '000000000000')
    await page.goto(address.href)
    expect(await page.textContent('main')).toContain('edition 000000000000 then')
    expect(await page.textContent('main')).toContain('Every printed figure is still the same.')
    address.searchParams.set('is', '0000000000')
    await page.goto(address.href)
    expect(await page.textContent('main')).toContain('At least one printed figure differs')
    await page.context().close()
  })
})

/** The typical figure printed beside a name on the sheet. */
async function printed(page: Page, name: string): Promise<number> {
  const text = await page
    .locator('#sheet .facts > div', { hasText: name })
    .locator('.quantity-main')
    .textContent()
  return Number((text ?? '').replace(/[^\d.]/g, ''))
}
