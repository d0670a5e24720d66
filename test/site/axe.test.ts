import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './browser.ts'
import { firstCase, PAGES, SITE } from './pages.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

/** What axe finds wrong, with the first places of each. */
async function violations(path: string, colorScheme: 'light' | 'dark'): Promise<string[]> {
  const context = await browser.newContext({ baseURL: SITE, bypassCSP: true, colorScheme })
  const page = await context.newPage()
  await page.goto(path)
  await page.addScriptTag({ content: axe })
  const results = (await page.evaluate('axe.run({ resultTypes: ["violations"] })')) as AxeResults
  await context.close()
  return results.violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .slice(0, 3)
          .map(({ html }) => html.slice(0, 160))
          .join(' | ')}`,
    )
}

describe('axe finds nothing serious', () => {
  it.each(Object.entries(PAGES))('on %s', async (_, path) => {
    expect(await violations(path, 'light')).toEqual([])
  })

  it('on a case record', async () => {
    expect(await violations(await firstCase(), 'light')).toEqual([])
  })

  it.each(['home', 'job-refused', 'table'] as const)('on %s in the dark', async (name) => {
    expect(await violations(PAGES[name], 'dark')).toEqual([])
  })
})
