import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser, openPage } from './browser.ts'
import { firstCase, SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

/** Status and what is read without JavaScript; only a page drawn by the server shows anything then. */
async function readWithout(path: string) {
  const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
  const status = (await page.goto(path))?.status()
  const read = {
    status,
    title: await page.title(),
    heading: (await page.locator('h1').allInnerTexts()).join(),
    robots: await page.locator('meta[name=robots]').first().getAttribute('content'),
    links: await page.locator('main a').evaluateAll((all) => all.map((a) => a.getAttribute('href'))),
    lead: await page.locator('main .lead').textContent(),
  }
  await page.context().close()
  return read
}

const ABSENT = {
  status: 404,
  title: 'Nothing at this address · Putlog',
  heading: 'Nothing at this address',
  robots: expect.stringContaining('noindex'),
}
const ONWARD = ['/', '/recipes', '/cases']

describe('An address at which nothing is, without JavaScript', () => {
  it.each([
    '/no-such-page',
    '/recipes/no-such',
    '/recipes/No%20Such',
    '/recipes/%E0%A4%A',
    '/recipes/no-such?revision=2',
    '/recipes/no-such/job',
    '/cases/no-such',
    '/tables/no-such',
    '/tables/README',
    '/sources/no-such',
    '/materials/no-such',
    '/terms/no-such',
    '/guides/no-such',
  ])('%s says so, with 404', async (path) => {
    expect(await readWithout(path)).toMatchObject({ ...ABSENT, links: ONWARD })
  })

  it.each(['/recipes', '/cases', '/work-out'])(
    '%s after a place that never was begins at its start',
    async (path) => {
      const answer = await fetch(`${SITE}${path}?after=nonsense`, { redirect: 'manual' })
      expect(answer.status).toBe(307)
      expect(answer.headers.get('location')).toBe(path)
    },
  )

  it('a revision that was never published leads to the newest', async () => {
    for (const [path, query] of [
      ['/recipes/hot-lime-for-rubble', 'revision=99'],
      ['/recipes/hot-lime-for-rubble/job', 'r=99'],
      [await firstCase(), 'revision=99'],
    ] as const) {
      const read = await readWithout(`${path}?${query}`)
      expect(read).toMatchObject({ ...ABSENT, links: [path, ...ONWARD] })
      expect(read.lead).toMatch(/^Revision 99 was never published\. Revision \d+ is the newest\.$/)
    }
  })
})
