import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser.ts'
import { firstCase, PAGES, SITE } from './pages.ts'

/** Pictures to look at; kept out of the history. */
const FOLDER = fileURLToPath(new URL('../artefacts/screens/', import.meta.url))
const WIDTHS = [320, 360, 768, 1280]

let browser: Browser
let page: Page
beforeAll(async () => {
  mkdirSync(FOLDER, { recursive: true })
  browser = await openBrowser()
  page = await browser.newPage({ baseURL: SITE })
})
afterAll(() => browser.close())

/** Takes a picture and tells by how many pixels the page is wider than its window. */
async function picture(name: string, width: number): Promise<number> {
  await page.setViewportSize({ width, height: 900 })
  await page.screenshot({ path: `${FOLDER}${name}.png`, fullPage: true })
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
}

async function excessAt(name: string, path: string): Promise<Record<number, number>> {
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' })
  await page.goto(path)
  const excess: Record<number, number> = {}
  for (const width of WIDTHS) {
    const pixels = await picture(`${name}-${width}`, width)
    if (pixels > 0) excess[width] = pixels
  }
  return excess
}

describe('No page is wider than its window', () => {
  it.each(Object.entries(PAGES))('%s, from 320 to 1280 pixels', async (name, path) => {
    expect(await excessAt(name, path)).toEqual({})
  })

  it('a case record', async () => {
    expect(await excessAt('case', await firstCase())).toEqual({})
  })

  it.each(['home', 'recipe', 'job', 'table', 'cases'] as const)('%s, dark and on paper', async (name) => {
    await page.goto(PAGES[name])
    await page.emulateMedia({ media: 'screen', colorScheme: 'dark' })
    expect(await picture(`${name}-dark`, 1280)).toBeLessThanOrEqual(0)
    await page.emulateMedia({ media: 'print', colorScheme: 'light' })
    expect(await picture(`${name}-print`, 688)).toBeLessThanOrEqual(0)
  })
})
