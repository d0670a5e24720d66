import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const pagesOf = async (path: string) => (await printed(path, '#sheet')).length

/** Width and height of each page that a part of the site prints on, in millimetres. */
async function printed(path: string, part: string): Promise<[number, number][]> {
  const { page } = await openPage(browser, { baseURL: SITE })
  await page.goto(path)
  expect(await page.locator(part).count()).toBe(1)
  const pdf = (await page.pdf({ format: 'A4', preferCSSPageSize: true })).toString('latin1')
  await page.context().close()
  expect(pdf.match(/\/Type\s*\/Page(?!s)/g)).toHaveLength(pdf.match(/\/MediaBox/g)?.length ?? 0)
  return [...pdf.matchAll(/\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/g)].map(([, width, height]) => [
    Math.round((Number(width) / 72) * 25.4),
    Math.round((Number(height) / 72) * 25.4),
  ])
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

describe('A printed batch card', () => {
  it.each([
    ['', false],
    ['/es', true],
  ])('says on %s/ whether it is a translation', async (language, isTranslated) => {
    const path = `${SITE}${language}/recipes/hot-lime-for-rubble/job/card?show=fields&mixer=120&box=15`
    const html = await (await fetch(path)).text()
    expect(html).toContain('id="card"')
    expect(html.includes('Traducción que aún no ha comprobado')).toBe(isTranslated)
    expect(html).not.toContain('A translation that no mason')
  })

  it('is exactly one A5 page for every recipe, whatever is on site', async () => {
    const reason = 'override=yes&reason=To+see+how+much+fits'
    const all = `show=fields&${reason}&sand=measured&moisture=4`
    const cards: Record<string, [number, number][]> = {}
    for (const slug of await recipes())
      for (const works of ['', '&use=pointing-rubble&use-2=limewash'])
        cards[`${slug}${works}`] = await printed(
          `/recipes/${slug}/job/card?${all}${works}&mixer=120&box=15`,
          '#card',
        )
    // Spanish says the same at greater length.
    for (const slug of await recipes())
      cards[`es ${slug}`] = await printed(`/es/recipes/${slug}/job/card?${all}&mixer=120&box=15`, '#card')
    expect(Object.keys(cards).length).toBeGreaterThanOrEqual(36)
    for (const [card, pages] of Object.entries(cards)) expect([card, pages]).toEqual([card, [[148, 210]]])
  })
})
