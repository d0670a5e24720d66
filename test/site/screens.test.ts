import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser.ts'
import { firstCase, PAGES, SITE } from './pages.ts'

const FOLDER = fileURLToPath(new URL('../artefacts/screens/', import.meta.url))
const WIDTHS = [320, 360, 768, 1280]

let browser: Browser
beforeAll(async () => {
  mkdirSync(FOLDER, { recursive: true })
  browser = await openBrowser()
})
afterAll(() => browser.close())

/** Takes a picture and tells by how many pixels the page is wider than its window. */
async function picture(
  name: string,
  path: string,
  width: number,
  colorScheme: 'light' | 'dark',
  media: 'screen' | 'print',
) {
  const context = await browser.newContext({ baseURL: SITE, viewport: { width, height: 900 }, colorScheme })
  const page = await context.newPage()
  await page.goto(path)
  await page.emulateMedia({ media, colorScheme })
  await page.screenshot({
    path: `${FOLDER}${name}-${width}-${media === 'print' ? media : colorScheme}.png`,
    fullPage: true,
  })
  const excess = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  await context.close()
  return excess
}

describe('No page is wider than its window', () => {
  it.each(Object.entries(PAGES))('%s, from 320 to 1280 pixels', async (name, path) => {
    const excess: Record<number, number> = {}
    for (const width of WIDTHS) excess[width] = await picture(name, path, width, 'light', 'screen')
    expect(Object.entries(excess).filter(([, pixels]) => pixels > 0)).toEqual([])
  })

  it('a case record', async () => {
    const path = await firstCase()
    for (const width of WIDTHS)
      expect(await picture('case', path, width, 'light', 'screen')).toBeLessThanOrEqual(0)
  })

  it.each(['home', 'recipe', 'job', 'table', 'cases'] as const)('%s, dark and on paper', async (name) => {
    expect(await picture(name, PAGES[name], 1280, 'dark', 'screen')).toBeLessThanOrEqual(0)
    expect(await picture(name, PAGES[name], 688, 'light', 'print')).toBeLessThanOrEqual(0)
  })
})
