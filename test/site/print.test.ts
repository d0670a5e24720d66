import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

async function pagesOf(path: string): Promise<number> {
  const { page } = await openPage(browser, { baseURL: SITE })
  await page.goto(path)
  expect(await page.locator('#sheet').count()).toBe(1)
  const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true })
  await page.context().close()
  return pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0
}

async function recipes(): Promise<string[]> {
  const { recipes } = (await (await fetch(`${SITE}/api/v1/recipes?limit=100`)).json()) as {
    recipes: { slug: string }[]
  }
  return recipes.map(({ slug }) => slug)
}

describe('A printed job sheet', () => {
  it('fits one A4 page for every recipe, with all that can be on it', async () => {
    const all = 'show=fields&override=yes&reason=To+see+how+much+fits&sand=measured&moisture=4&money=EUR'
    const counts: Record<string, number> = {}
    for (const slug of await recipes()) counts[slug] = await pagesOf(`/recipes/${slug}/job?${all}`)
    expect(Object.keys(counts).length).toBeGreaterThanOrEqual(12)
    expect(Object.entries(counts).filter(([, pages]) => pages !== 1)).toEqual([])
  })

  it('brings the working on further pages when that is opened', async () => {
    const path = '/recipes/hot-lime-for-rubble/job?show=fields'
    expect(await pagesOf(`${path}&working=open`)).toBeGreaterThan(1)
  })
})
