import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { firstCase, PAGES, SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

/** Opens a page afresh; tells what went wrong on the way and what is wrong with what is seen. */
async function faultsOf(name: string, path: string): Promise<string[]> {
  const { page, trouble } = await openPage(browser, { baseURL: SITE })
  const response = await page.goto(path, { waitUntil: 'networkidle' })
  // That the page itself is not there is what this one is for.
  const expected = response?.status() === 404 ? `404 (Not Found) ${response.url()}` : undefined
  const faults = await lookOver(page, name)
  await page.context().close()
  return [...trouble.filter((one) => expected === undefined || !one.endsWith(expected)), ...faults]
}

describe('Breaks no policy, calls no other host, fits 320 to 1280 pixels and paper, and axe finds nothing', () => {
  it.each(Object.entries(PAGES))('on %s', async (name, path) => {
    expect(await faultsOf(name, path)).toEqual([])
  })

  it('on a case record', async () => {
    expect(await faultsOf('case', await firstCase())).toEqual([])
  })
})
