import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { evidenceAnswer } from '#lib/api/evidence-answer.ts'
import { follow, openBrowser, openPage } from './browser.ts'
import { PAGES, SITE } from './pages.ts'

/** Pictures to look at; kept out of the history. */
const FOLDER = fileURLToPath(new URL('../artefacts/screens/', import.meta.url))
const COMPARE = PAGES['evidence-compare']

let browser: Browser
beforeAll(async () => {
  mkdirSync(FOLDER, { recursive: true })
  browser = await openBrowser()
})
afterAll(() => browser.close())

async function ask(body: unknown) {
  const response = await fetch(`${SITE}/api/v1/evidence`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  })
  expect(response.status).toBe(200)
  return evidenceAnswer.parse(await response.json())
}

const open = (path: string, options = {}) =>
  openPage(browser, { baseURL: SITE, javaScriptEnabled: false, ...options }).then(async (opened) => {
    expect((await opened.page.goto(path))?.status()).toBe(200)
    return opened
  })

describe('A comparison', () => {
  it.each([
    [360, 'light'],
    [1280, 'light'],
    [1280, 'dark'],
  ] as const)(
    'shows at %i pixels, %s, without a script or a word to anyone else',
    async (width, colorScheme) => {
      const { page, trouble } = await open(COMPARE, { viewport: { width, height: 900 }, colorScheme })
      await page.screenshot({ path: `${FOLDER}compare-groups-${width}-${colorScheme}.png`, fullPage: true })
      const plot = page.getByRole('img', { name: /share of works without it/ })
      expect(await plot.count()).toBe(1)
      expect(await page.locator('[style]').count()).toBe(0)
      expect(trouble).toEqual([])
      await page.context().close()
    },
  )

  it('tells groups apart in grey: every curve has a dash, a hatching and a mark of its own, and its name', async () => {
    const { page } = await open(COMPARE)
    const plot = page.locator('#curves svg.plot-wide')
    const dashes = await plot
      .locator('.plot-level')
      .evaluateAll((paths) => paths.map((path) => getComputedStyle(path).strokeDasharray))
    expect(dashes).toHaveLength(3)
    expect(new Set(dashes).size).toBe(3)
    const lines = await plot
      .locator('pattern .plot-lines')
      .evaluateAll((all) => all.map((one) => one.getAttribute('d')))
    expect(new Set(lines).size).toBe(3)
    for (const letter of ['A', 'B', 'C'])
      expect(await plot.getByText(new RegExp(`^${letter}: `)).count()).toBe(1)
    await page.emulateMedia({ media: 'print' })
    await page.screenshot({ path: `${FOLDER}compare-groups-print.png`, fullPage: true })
    await page.context().close()
  })

  it('says in its tables what the JSON interface says, and warns where groups differ much', async () => {
    const { comparisons } = await ask({
      filter: { family: ['air-lime'] },
      endPoints: ['joint-worse'],
      compareWith: [{ family: ['hydraulic-lime'] }, {}],
    })
    const [comparison] = comparisons
    const { page } = await open(COMPARE)
    const said = await page.locator('#curves').textContent()
    for (const { size } of comparison?.groups ?? []) expect(said).toContain(`${size.works} works`)
    const table = page.locator('#curves table').first()
    for (const { years } of comparison?.groups[0]?.figures.horizons ?? [])
      expect(await table.getByRole('rowheader', { name: String(years), exact: true }).count()).toBe(1)
    const much = comparison?.traits.filter(({ differsMuch, chosenBy }) => differsMuch && !chosenBy) ?? []
    expect(await page.locator('.notice-caution').count()).toBe(much.length > 0 ? 1 : 0)
    await page.context().close()
  })

  it('says plainly that a group beside itself is the same walls, and shows no difference', async () => {
    const { page } = await open('/evidence/compare?a=all&b=all')
    const { size } = await ask({ endPoints: ['unit-damaged'] })
    const notice = page.locator('.notice', { hasText: 'These are the same walls' })
    expect(await notice.textContent()).toContain(`the same ${size.works} works on ${size.walls} walls`)
    const said = (await page.locator('main').textContent()) ?? ''
    expect(said).not.toContain('less B')
    expect(said).not.toContain('chi-square')
    expect(await page.locator('#traits').count()).toBe(0)
    await page.goto(COMPARE)
    expect(await page.locator('.notice', { hasText: 'These groups overlap' }).textContent()).toMatch(
      /A: Air lime is wholly in C: All walls: \d+ works on \d+ walls in both/,
    )
    await page.context().close()
  })

  it('takes a group of which nothing can be used for none, and names it', async () => {
    const { page } = await open('/evidence/compare?a=foo%3Dbar&b=unit%3Dlimstone&end=never')
    expect(await page.locator('.notice li').allTextContents()).toEqual([
      'Group A: “foo=bar” is not one that can be chosen.',
      'Stone, brick or earth: “limstone” is not one that can be chosen. The nearest that is: limestone.',
      'What is counted: “never” is not one that can be chosen.',
    ])
    expect(await page.locator('#curves').count()).toBe(0)
    await page.context().close()
  })

  it('is chosen from lists by the keyboard alone, and the address holds it', async () => {
    const { page } = await open('/evidence/compare')
    await page.getByLabel('Group A').focus()
    await page.keyboard.type('Air')
    await page.keyboard.press('Tab')
    await page.keyboard.type('Hydraulic')
    await page.getByRole('button', { name: 'Compare' }).focus()
    await page.keyboard.press('Enter')
    await page.waitForURL(/a=family/)
    expect(new URL(page.url()).searchParams.get('a')).toBe('family=air-lime')
    expect(new URL(page.url()).searchParams.get('b')).toBe('family=hydraulic-lime')
    expect(await page.locator('#curves').count()).toBe(1)
    await page.context().close()
  })
})

describe('The evidence of a choice', () => {
  it('draws no curve from too few walls, and says what is missing', async () => {
    const { endPoints } = await ask({
      filter: { recipe: ['cement-lime-one-one-six'] },
      endPoints: ['joint-worse'],
    })
    expect(endPoints[0]?.lacking?.walls).toBeGreaterThan(0)
    const { page } = await open(PAGES['evidence-few'])
    expect(await page.locator('#curve svg.plot').count()).toBe(0)
    expect(await page.locator('#curve .notice').textContent()).toContain(
      `${endPoints[0]?.lacking?.walls} more wall`,
    )
    expect(await page.locator('#cases .index > li').count()).toBeGreaterThan(0)
    await page.context().close()
  })

  it('says who volunteered, what was left out and that the demo is invented, before any figure', async () => {
    const { page } = await open('/evidence')
    const text = (await page.locator('main').textContent()) ?? ''
    expect(text.indexOf('People chose to record')).toBeGreaterThan(-1)
    expect(text.indexOf('People chose to record')).toBeLessThan(text.indexOf('Works counted'))
    expect(await page.locator('.notice-invented').count()).toBe(1)
    expect(text).toMatch(/Withdrawn from the whole record/)
    await page.context().close()
  })

  it('gives a share of each bar to walls that nobody looked at, and limits beside every share', async () => {
    const { states, drying, endPoints } = await ask({ endPoints: ['joint-worse'] })
    const unseen = states.filter(({ years, seen }) => years === 1 && seen === null)
    const { page } = await open('/evidence?end=joint-worse')
    const row = page.locator('#states').getByRole('row', { name: /^Not seen then/ })
    expect(await row.locator('td').nth(1).textContent()).toBe(String(unseen[0]?.works))
    for (const { low, high, bandLow, bandHigh } of [
      ...drying.dry.horizons,
      ...drying.again.horizons,
      ...(endPoints[0]?.incidence.flatMap(({ horizons }) => horizons) ?? []),
    ])
      expect(bandLow <= low && low <= high && high <= bandHigh && bandLow < bandHigh).toBe(true)
    expect(await page.locator('#damp table').last().locator('.note').count()).toBe(
      drying.dry.horizons.length + drying.again.horizons.length,
    )
    await page.context().close()
  })

  it('shows how far people agree, the disputed case left out, and what the cases hold', async () => {
    const { agreement, setAside, cases, laboratory } = await ask({ endPoints: ['joint-worse'] })
    expect(agreement.visits).toBeGreaterThan(10)
    expect(setAside.disputedCases).toBe(1)
    expect(cases.first.length).toBe(Math.min(100, cases.total))
    expect(cases.quality.photos).toBeGreaterThan(0)
    expect(laboratory.map(({ slug }) => slug)).toContain('putty-and-sharp-sand-pointing')
    const { page } = await open('/evidence')
    expect(await page.locator('#agreement tbody tr').count()).toBe(3)
    expect(await page.locator('#size').textContent()).toContain('Disputed and not yet settled: 1 case')
    expect(await page.locator('#cases table').textContent()).toContain(
      `${cases.quality.photos} of ${cases.total}`,
    )
    await page.context().close()
  })

  it('counts the walls that words find, and says that words may choose by outcome', async () => {
    const { page } = await open('/cases?q=sandstone')
    await follow(page, () => page.getByRole('link', { name: 'What happened to these walls' }).click())
    expect(page.url()).toContain('/evidence?q=sandstone')
    const { cases, chosenByOutcome } = await ask({ text: 'sandstone' })
    expect(chosenByOutcome).toBe(true)
    expect(await page.locator('main').textContent()).toContain('they do not show how walls fare')
    expect(await page.locator('#cases table').textContent()).toContain(`of ${cases.total}`)
    await page.context().close()
  })

  it('keeps what of its address is sound, and names what is not', async () => {
    const { page } = await open('/evidence?family=air-lime&frost=frekwent')
    expect(await page.locator('main').textContent()).toContain('frekwent')
    expect(await page.getByLabel('Family of mortar', { exact: true }).inputValue()).toBe('air-lime')
    await page.context().close()
  })

  it('folds its numbers and cases on a narrow screen, where they open without a script, and prints them open', async () => {
    const { page } = await open('/evidence', { viewport: { width: 360, height: 800 } })
    const first = page.locator('#cases .index-title').first()
    expect(await first.isVisible()).toBe(false)
    await page.locator('#cases summary', { hasText: 'longest watched' }).click()
    expect(await first.isVisible()).toBe(true)
    const table = page.locator('#curve table').first()
    expect(await table.isVisible()).toBe(false)
    await page.emulateMedia({ media: 'print' })
    expect(await table.isVisible()).toBe(true)
    await page.emulateMedia({ media: 'screen' })
    await page.setViewportSize({ width: 1280, height: 900 })
    expect(await table.isVisible()).toBe(true)
    await page.context().close()
  })

  it('shows the words of what is chosen whole', async () => {
    const { page } = await open('/evidence', { viewport: { width: 1280, height: 900 } })
    const room = await page.getByLabel('What is counted').evaluate((list) => {
      const select = list as HTMLSelectElement
      const told = document.createElement('span')
      const style = getComputedStyle(select)
      told.textContent = select.selectedOptions[0]?.text ?? ''
      Object.assign(told.style, { font: style.font, position: 'absolute', whiteSpace: 'nowrap' })
      document.body.append(told)
      const arrow = 20
      const inner = select.clientWidth - Number.parseFloat(style.paddingLeft) * 2 - arrow
      return inner - told.getBoundingClientRect().width
    })
    expect(room).toBeGreaterThanOrEqual(0)
    await page.context().close()
  })

  it('is reached from a recipe, a case and a table row', async () => {
    const { page } = await open('/recipes/putty-and-sharp-sand-pointing')
    expect(await page.locator('#laboratory table').count()).toBe(5)
    await follow(page, () => page.getByRole('link', { name: 'What happened to these walls' }).click())
    expect(page.url()).toContain('/evidence?recipe=putty-and-sharp-sand-pointing')
    await page.goto('/tables/us-common-lime-mortar')
    await follow(page, () =>
      page
        .getByRole('link', { name: /What happened to \d+ works? by recipes/ })
        .first()
        .click(),
    )
    expect(page.url()).toContain('/evidence?row=us-common-lime-mortar%23')
    expect(await page.locator('h1').textContent()).toBe('What happened to the walls')
    await page.context().close()
  })
})
