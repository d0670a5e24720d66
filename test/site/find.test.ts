import { parse } from 'csv-parse/sync'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { follow, openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const plain = { baseURL: SITE, javaScriptEnabled: false }

/** Presses Tab until what has the focus fits; fails when the page has been gone through. */
async function tabTo(page: Page, fits: string): Promise<void> {
  for (let presses = 0; presses < 200; presses += 1) {
    await page.keyboard.press('Tab')
    if (await page.evaluate((selector) => document.activeElement?.matches(selector), fits)) return
  }
  throw new Error(`Tab never reached ${fits}`)
}

const countOf = (text: string | null) => Number((text ?? '').replace(/\D+/g, ' ').trim().split(' ')[0])

describe('Finding by keyboard alone', () => {
  it('suggests while one types, and arrows, Enter and Escape do what a combobox does', async () => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE })
    await page.goto('/')
    await tabTo(page, 'input[name=q]')
    const box = page.locator('input[name=q]')
    await page.waitForSelector('input[name=q][role=combobox]')
    await page.keyboard.type('kalkm')
    await page.waitForSelector('[role=option]')
    expect(await box.getAttribute('aria-expanded')).toBe('true')
    expect(await box.getAttribute('aria-activedescendant')).toBeNull()
    expect(await page.textContent('.suggest [role=status]')).toMatch(/^\d+ suggestion/)

    await page.keyboard.press('Escape')
    expect(await box.getAttribute('aria-expanded')).toBe('false')
    expect(await box.inputValue()).toBe('kalkm')

    await page.keyboard.type('ö')
    await page.waitForSelector('[role=option]')
    await page.keyboard.press('ArrowDown')
    const active = (await box.getAttribute('aria-activedescendant')) ?? ''
    const option = page.locator(`[id="${active}"]`)
    expect(await option.getAttribute('aria-selected')).toBe('true')
    expect(await option.textContent()).toBe('Kalkmörtel')
    await Promise.all([page.waitForURL(/\/find\?/), page.keyboard.press('Enter')])
    expect(new URL(page.url()).searchParams.get('q')).toBe('Kalkmörtel')
    expect(await page.locator('.index-title').first().textContent()).toBe('Lime mortar')
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('walks from the map of the world by its marks to the cases of one region', async () => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE })
    await page.goto('/map')
    await tabTo(page, '.map-mark[href*="country=EE"]')
    await Promise.all([page.waitForURL(/country=EE/), page.keyboard.press('Enter')])
    const marks = page.locator('.map-mark')
    const said = await marks.first().locator('title').textContent()
    await tabTo(page, '.map-mark')
    await Promise.all([page.waitForURL(/\/cases\?.*region=/), page.keyboard.press('Enter')])
    expect(await page.textContent('.finding-results [role=status]')).toContain(`${countOf(said)} case`)
    expect(await page.locator('.index > li').count()).toBe(countOf(said))
    expect(trouble).toEqual([])
    await page.context().close()
  })
})

describe('Finding without JavaScript', () => {
  it('narrows by boxes to as many as they said, and widens again by links', async () => {
    const phone = { ...plain, viewport: { width: 360, height: 780 } }
    const { page, trouble } = await openPage(browser, phone)
    await page.goto('/cases')
    const box = page.locator('input[name=unit][value=limestone]')
    expect(await box.isVisible()).toBe(false)
    await page.click('.narrow-facets > summary')
    await box.check()
    const said = countOf(await page.locator('label', { has: box }).locator('.box-count').textContent())
    await follow(page, () => page.locator('.narrow-line button').click())
    expect(new URL(page.url()).searchParams.getAll('unit')).toEqual(['limestone'])
    expect(countOf(await page.textContent('.finding-results [role=status]'))).toBe(said)

    await page.click('.narrow-facets > summary')
    await page.locator('input[name=unit][value=granite]').check()
    await follow(page, () => page.locator('.narrow-line button').click())
    expect(new URL(page.url()).searchParams.getAll('unit')).toEqual(
      expect.arrayContaining(['limestone', 'granite']),
    )
    expect(countOf(await page.textContent('.finding-results [role=status]'))).toBeGreaterThan(said)

    await follow(page, () => page.locator('.chip', { hasText: 'Granite' }).click())
    expect(new URL(page.url()).search).toBe('?unit=limestone')
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('says which choice to drop when nothing fits, and that brings as many as it said', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/cases?unit=rammed-earth&country=EE')
    expect(await page.textContent('.finding-results [role=status]')).toContain('No case fits')
    const way = page.locator('.notice li').first()
    const said = countOf((await way.textContent())?.replace(/^[^:]+:[^:]+:/, '') ?? null)
    await follow(page, () => way.locator('a').click())
    expect(said).toBeGreaterThan(0)
    expect(countOf(await page.textContent('.finding-results [role=status]'))).toBe(said)
    await page.context().close()
  })

  it('names what of an address cannot be used, and what is nearest to it', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/cases?unit=grannite&country=EE&minYears=soon')
    const notice = page.locator('.notice', { hasText: 'Not all of the address' })
    expect(await notice.textContent()).toContain('granite')
    expect(await notice.textContent()).toContain('soon')
    expect(await page.locator('.chip').allTextContents()).toEqual(['Country: Estonia'])
    await page.context().close()
  })

  it('knows no country ZZ, says what would do, and shows again what was typed where it stood', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/map?country=ZZ&maxYears=ten')
    expect(await page.textContent('main')).not.toContain('Unknown Region')
    expect(await page.locator('.notice li').allTextContents()).toEqual([
      'Country: “ZZ” is not the code of a country. Give two capital letters as ISO 3166-1 has them, such as EE.',
      'Years watched: “ten” is not a whole number. Give digits alone, such as 5.',
    ])
    expect(await page.locator('input[name=maxYears]').inputValue()).toBe('ten')
    await page.goto('/like?latitude=abc&longitude=999')
    expect(await page.getByLabel('Latitude').inputValue()).toBe('abc')
    expect(await page.getByLabel('Longitude').getAttribute('aria-invalid')).toBe('true')
    await page.context().close()
  })

  it('says of words that nothing has together which one to leave out, and that brings as many as it said', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/find?q=mortar+falling+flint')
    const way = page.locator('.finding-results ul li', { hasText: 'Without “' }).first()
    const said = countOf((await way.locator('a').textContent()) ?? null)
    expect(said).toBeGreaterThan(0)
    await follow(page, () => way.locator('a').click())
    expect(countOf(await page.textContent('.finding-results [role=status]'))).toBe(said)
    await page.context().close()
  })

  it('turns pages of cases without a repeat or a gap, and leads old addresses on', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/cases?years=5')
    expect(new URL(page.url()).search).toBe('?minYears=5')
    const total = countOf(await page.textContent('.finding-results [role=status]'))
    const titles: string[] = []
    for (;;) {
      titles.push(...(await page.locator('.index-title').allTextContents()))
      const next = page.locator('.actions a', { hasText: 'The next ones' })
      if ((await next.count()) === 0) break
      // A click would not wait for the page that it leads to.
      await page.goto((await next.getAttribute('href')) ?? '')
    }
    expect(titles.length).toBe(total)
    expect(new Set(titles).size).toBe(total)
    await page.context().close()
  })

  it('tells the map in words: the list has every mark with the same count', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/map?use=pointing')
    const marks = await page
      .getByRole('link', { name: /: \d+ cases?$/ })
      .evaluateAll((all) => all.map((mark) => mark.querySelector('title')?.textContent ?? ''))
    const rows = await page.locator('main table tbody tr').allTextContents()
    expect(marks.length).toBeGreaterThan(1)
    for (const mark of marks) {
      const [, place = '', count = ''] = /^(.+): (\d+) case/.exec(mark) ?? []
      expect(rows).toContain(`${place}${count}`)
    }
    await page.context().close()
  })
})

describe('Walls like yours, without JavaScript', () => {
  it('starts from a case, leaves it out, and explains every likeness to its sum', async () => {
    const { page, trouble } = await openPage(browser, plain)
    await page.goto('/cases/penhas-da-urze-bridge')
    await follow(page, () => page.locator('a[href="/like?from=penhas-da-urze-bridge"]').click())
    expect(await page.locator('select[name=wall]').inputValue()).toBe('ashlar')
    expect(await page.locator('select[name=country]').inputValue()).toBe('PT')
    const cases = page.locator('#cases .index > li')
    expect(await cases.count()).toBeGreaterThan(3)
    expect(await page.locator('#cases a[href="/cases/penhas-da-urze-bridge"]').count()).toBe(0)
    const sums = await cases.evaluateAll((all) =>
      all.map((one) => {
        const points = (text: string | null) => Number(/(\d+) of \d+/.exec(text ?? '')?.[1])
        const parts = [...one.querySelectorAll('.likeness-part')]
        return {
          said: points(one.querySelector('.likeness p')?.textContent ?? ''),
          parts: parts.reduce((sum, part) => sum + points(part.textContent), 0),
        }
      }),
    )
    for (const { said, parts } of sums) expect(parts).toBe(said)
    const said = sums.map((one) => one.said)
    expect(said).toEqual([...said].sort((a, b) => b - a))
    expect(await page.textContent('#families')).toContain('Air lime')
    expect(await page.locator('#rows a[href^="/tables/"]').count()).toBeGreaterThan(0)
    expect(await page.locator('#cautions').count()).toBe(1)
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('says that too few walls were found rather than give an interval', async () => {
    const { page } = await openPage(browser, plain)
    await page.goto('/like?wall=brick-faced-rubble')
    const families = await page.textContent('#families')
    expect(families).toMatch(/too few for an interval|Fewer than 5 walls/)
    await page.context().close()
  })
})

describe('Lists to take away', () => {
  it.each([
    ['/cases?country=SI', '/api/v1/find/cases.csv?country=SI'],
    ['/like?unit=granite', '/api/v1/find/like.csv?unit=granite'],
    ['/find?q=putty', '/api/v1/find/found.csv?q=putty'],
    ['/recipes?use=pointing', '/api/v1/find/recipes.csv?use=pointing'],
    ['/map?country=PT', '/api/v1/find/regions.csv?country=PT'],
  ])('%s links to its whole list, which says the same in CSV and JSON', async (path, file) => {
    expect(await (await fetch(SITE + path)).text()).toContain(`href="${file.replaceAll('&', '&amp;')}"`)
    const csv = await fetch(SITE + file)
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8; header=present')
    const rows = parse(await csv.text(), { columns: true, bom: true }) as Record<string, string>[]
    const json = (await (await fetch(SITE + file.replace('.csv', '.json'))).json()) as Record<
      string,
      unknown[]
    >
    expect(rows.length).toBeGreaterThan(0)
    expect(Object.values(json)[0]?.length).toBe(rows.length)
  })

  it('has every case of the record, and as many as the pages have', async () => {
    const rows = parse(await (await fetch(`${SITE}/api/v1/find/cases.csv`)).text(), {
      columns: true,
      bom: true,
    }) as { slug: string }[]
    const { total } = (await (await fetch(`${SITE}/api/v1/cases?limit=1`)).json()) as { total: number }
    expect(new Set(rows.map(({ slug }) => slug)).size).toBe(total)
  })

  it.each([
    ['/api/v1/find/cases.csv?unit=no-such', 422],
    ['/api/v1/find/nothing.csv', 404],
    ['/api/v1/find/cases.xml', 404],
  ])('%s answers %i in words', async (file, status) => {
    const answer = await fetch(SITE + file)
    expect(answer.status).toBe(status)
    expect(answer.headers.get('content-type')).toBe('application/problem+json')
  })
})

describe('Pages of stones and walls', () => {
  it.each(['/terms/units/limestone', '/terms/wall-types/ashlar'])('%s leads to cases', async (path) => {
    const { page } = await openPage(browser, plain)
    expect((await page.goto(path))?.status()).toBe(200)
    expect(await page.locator('#cases a[href^="/cases/"]').count()).toBeGreaterThan(0)
    expect(await page.locator('#fared').count()).toBe(1)
    await page.context().close()
  })

  it('are not there for a term that is none', async () => {
    expect((await fetch(`${SITE}/terms/units/no-such`)).status).toBe(404)
    expect((await fetch(`${SITE}/terms/uses/pointing`)).status).toBe(404)
  })
})
