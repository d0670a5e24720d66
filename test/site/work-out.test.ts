import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Typed } from '../../app/_http/form.ts'
import { SYSTEMS } from '../../app/_ui/systems.ts'
import type { AnyCalculation } from '../../app/_ui/workshop/calculation.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { figureText, namedFigures } from '../../app/_ui/workshop/figures.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { CALCULATIONS } from '../../app/work-out/calculations.ts'
import { follow, live, openBrowser, openPage, type Watched } from './browser.ts'
import { lookOver } from './look-over.ts'
import { SITE } from './pages.ts'

/** Most sheets of A4 that a result without its working may take. */
const MOST_SHEETS = 2

let browser: Browser
/** One page with a script and one without, for all: what they share is fetched once. */
let withScript: Watched
let withoutScript: Watched
beforeAll(async () => {
  browser = await openBrowser()
  withScript = await openPage(browser, { baseURL: SITE })
  withoutScript = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
})
afterAll(() => browser.close())

async function withPage(
  path: string,
  javaScriptEnabled: boolean,
  look: (page: Page) => Promise<void>,
): Promise<void> {
  const { page, trouble } = javaScriptEnabled ? withScript : withoutScript
  trouble.length = 0
  await page.emulateMedia({ media: null })
  await page.goto(path)
  await look(page)
  await page.unrouteAll()
  expect(trouble).toEqual([])
}

/** What the sums themselves say, as a reader in these units sees it. */
function textsOf(calculation: AnyCalculation, typed: Typed): string[] {
  const { shown, form, faults } = workOut(calculation, typed, benchData(calculation))
  expect(faults).toEqual([])
  return namedFigures(shown?.blocks ?? []).map((figure) => figureText(figure, form.system) ?? 'not known')
}

/** Every figure that a page shows in its result, in order; the working apart. */
const textsOn = (page: Page): Promise<string[]> =>
  page.locator('.bench-result > *:not(.bench-working)').locator('.quantity, .unknown').allTextContents()

/** The first figure that a page asks for with an example in it. */
function exampleOf(calculation: AnyCalculation) {
  const { form } = workOut(calculation, {}, benchData(calculation))
  const found = form.fields.find(({ field, text }) => field.kind === 'amount' && text !== '')
  if (!found) throw new Error(`${calculation.name} types no figure in advance`)
  return found
}

/** Sends the form as it stands, without a script. */
const send = (page: Page) => follow(page, () => page.click('.bench-form button[type=submit]:not([name])'))

const settled = (page: Page, wanted: readonly string[]) =>
  expect.poll(() => textsOn(page), { timeout: 10_000 }).toEqual(wanted)

const cases = Object.values(CALCULATIONS).map(({ calculation }) => [calculation.name, calculation] as const)

describe.each(cases)('/work-out/%s', (name, calculation: AnyCalculation) => {
  const path = `/work-out/${name}`

  it.each(SYSTEMS)('shows what the sums say without a script, in %s units', async (units) => {
    await withPage(`${path}?units=${units}`, false, async (page) => {
      expect(await textsOn(page)).toEqual(textsOf(calculation, { units }))
    })
  })

  it('is sent without a script, and its address then holds all of it', async () => {
    const { field } = exampleOf(calculation)
    await withPage(path, false, async (page) => {
      const before = await textsOn(page)
      await send(page)
      expect(await textsOn(page)).toEqual(before)
      const { searchParams } = new URL(page.url())
      for (const part of [field.name, 'ed', 'sums', 'is', 'units'])
        expect(searchParams.has(part), part).toBe(true)
      expect(searchParams.has('in')).toBe(false)
    })
  })

  it('keeps what was typed, says what is wrong with it, and begins there', async () => {
    const { field } = exampleOf(calculation)
    await withPage(path, false, async (page) => {
      await page.fill(`[name="${field.name}"]`, 'mud')
      await send(page)
      expect(await page.inputValue(`[name="${field.name}"]`)).toBe('mud')
      expect(await page.locator(`[id="field-${field.name}-error"]`).textContent()).toContain(
        '“mud” is not a number',
      )
      expect(await page.locator(':focus').getAttribute('id')).toBe('faults')
      expect(await page.locator('#result').count()).toBe(0)
    })
  })

  it('changes units without a script without changing what was typed', async () => {
    const { form } = workOut(calculation, {}, benchData(calculation))
    await withPage(path, false, async (page) => {
      await page.selectOption('[name=in]', 'us')
      await send(page)
      const typed = Object.fromEntries(new URL(page.url()).searchParams)
      expect(typed.units).toBe('us')
      const after = workOut(calculation, typed, benchData(calculation))
      for (const { field, amount } of form.fields) {
        const now = after.form.fields.find((one) => one.field.name === field.name)?.amount
        if (amount)
          expect((now?.typical ?? Number.NaN) / (amount.typical || 1)).toBeCloseTo(amount.typical ? 1 : 0, 2)
      }
      expect(await textsOn(page)).toEqual(textsOf(calculation, typed))
    })
  })

  it('follows typing with a script: the sums’ figures, and an address that gives them again', async () => {
    const { field, text } = exampleOf(calculation)
    const example = Number(text.split('–')[0])
    // A share near the whole goes down instead.
    const most = (field.kind === 'amount' && field.limits?.max) || Number.POSITIVE_INFINITY
    const typed = String(Number((example * (example * 1.1 > most ? 0.9 : 1.1)).toPrecision(3)))
    await withPage(path, true, async (page) => {
      await live(page)
      const before = await textsOn(page)
      await page.fill(`[name="${field.name}"]`, typed)
      await expect
        .poll(() => new URL(page.url()).searchParams.get(field.name), { timeout: 10_000 })
        .toBe(typed)
      const address = page.url()
      const wanted = textsOf(calculation, Object.fromEntries(new URL(address).searchParams))
      await settled(page, wanted)
      expect(wanted).not.toEqual(before)
      await page.goto(address)
      expect(await textsOn(page)).toEqual(wanted)
      expect(await page.locator('.notice-note').filter({ hasText: 'Something changed' }).count()).toBe(0)
    })
  })

  it('is heard and mended with the keyboard alone', async () => {
    const { field, text } = exampleOf(calculation)
    await withPage(path, true, async (page) => {
      await live(page)
      await page.focus(`[name="${field.name}"]`)
      await page.keyboard.press('Control+A')
      await page.keyboard.type('mud')
      await expect.poll(() => page.locator('#faults').count(), { timeout: 10_000 }).toBe(1)
      expect(await page.inputValue(`[name="${field.name}"]`)).toBe('mud')
      await expect
        .poll(() => page.locator('[role=status]').first().textContent(), { timeout: 10_000 })
        .toContain('to mend')
      await page.keyboard.press('Control+A')
      await page.keyboard.type(text)
      await expect.poll(() => page.locator('#faults').count(), { timeout: 10_000 }).toBe(0)
    })
  })

  it('prints its result and its address, and neither form nor controls', async () => {
    await withPage(path, true, async (page) => {
      const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true })
      const sheets = pdf.toString('latin1').match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0
      expect(sheets).toBeGreaterThan(0)
      expect(sheets).toBeLessThanOrEqual(MOST_SHEETS)
      await page.emulateMedia({ media: 'print' })
      expect(await page.locator('.bench-form').isVisible()).toBe(false)
      expect(await page.locator('.bench-versions .address').isVisible()).toBe(true)
      expect(await page.locator('.bench-versions .address').textContent()).toContain(path)
    })
  })

  it('gives the same figures as CSV and JSON', async () => {
    const figures = namedFigures(workOut(calculation, {}, benchData(calculation)).shown?.blocks ?? [])
    const csv = await (await fetch(`${SITE}${path}/figures.csv`)).text()
    for (const { name } of figures) expect(csv).toContain(`result,${name},`)
    const { lines } = (await (await fetch(`${SITE}${path}/figures.json`)).json()) as {
      lines: { name: string }[]
    }
    expect(lines.map((line) => line.name)).toEqual(
      expect.arrayContaining(figures.map((figure) => figure.name)),
    )
    const { field } = exampleOf(calculation)
    const refused = await fetch(`${SITE}${path}/figures.csv?${field.name}=mud`)
    expect(refused.status).toBe(422)
    expect(await refused.text()).toContain('mud')
  })

  it('breaks no rule of axe and fits narrow windows, with a result and with faults', async () => {
    await withPage(path, true, async (page) => {
      expect(await lookOver(page, `work-out-${name}`)).toEqual([])
      const { field } = exampleOf(calculation)
      await page.goto(`${path}?${field.name}=1,500`)
      expect(await lookOver(page)).toEqual([])
    })
  })
})

describe('a blend, whose sums are fetched once they are needed', () => {
  const { calculation } = CALCULATIONS.sieve
  const BLEND = '/work-out/sieve?what=blend&show=fields'
  const typedOn = (page: Page): Typed => Object.fromEntries(new URL(page.url()).searchParams)
  const told = (page: Page) => page.locator('[role=status]').first().textContent()

  /** Has every further file of the build go by this. */
  const files = (page: Page, answer: (go: () => Promise<void>, stop: () => Promise<void>) => Promise<void>) =>
    page.route('**/_next/static/chunks/**', (route) =>
      answer(
        () => route.continue(),
        () => route.abort('internetdisconnected'),
      ),
    )

  it('says that they are on their way, then shows what they say', async () => {
    await withPage('/work-out/sieve', true, async (page) => {
      await live(page)
      let release = () => {}
      const free = new Promise<void>((resolve) => {
        release = resolve
      })
      await files(page, async (go) => {
        await free
        await go()
      })
      await page.selectOption('[name=what]', 'blend')
      await expect
        .poll(() => told(page), { timeout: 10_000 })
        .toContain('Fetching what this is worked out with')
      release()
      await expect.poll(() => typedOn(page).is, { timeout: 10_000 }).toBeDefined()
      expect(typedOn(page).what).toBe('blend')
      await settled(page, textsOf(calculation, typedOn(page)))
    })
  })

  it('opens at its address as the server drew it, and follows what is typed', async () => {
    await withPage(BLEND, true, async (page) => {
      await live(page)
      const before = await textsOn(page)
      await page.fill('[name=balance]', '2')
      await expect.poll(() => typedOn(page).balance, { timeout: 10_000 }).toBe('2')
      const wanted = textsOf(calculation, typedOn(page))
      await settled(page, wanted)
      expect(wanted).not.toEqual(before)
    })
  })

  it('is worked out by the site where they cannot be had', async () => {
    const { page } = await openPage(browser, { baseURL: SITE })
    await page.goto('/work-out/sieve')
    await live(page)
    await page.fill('[name=label]', 'Blended on site')
    await files(page, (_, stop) => stop())
    await page.selectOption('[name=what]', 'blend')
    await expect.poll(() => told(page), { timeout: 10_000 }).toContain('could not be fetched')
    await page.unrouteAll()
    await send(page)
    expect(typedOn(page)).toMatchObject({ what: 'blend', label: 'Blended on site' })
    expect(await textsOn(page)).toEqual(textsOf(calculation, typedOn(page)))
    await page.context().close()
  })

  it('stays as the server drew it at its own address, and works as without a script', async () => {
    const { page } = await openPage(browser, { baseURL: SITE })
    const chunks: string[] = []
    page.on('request', (request) => {
      if (request.url().includes('/_next/static/chunks/')) chunks.push(request.url())
    })
    await page.goto('/work-out/sieve', { waitUntil: 'networkidle' })
    const without = new Set(chunks)
    await page.route('**/_next/static/chunks/**', (route) =>
      without.has(route.request().url()) ? route.continue() : route.abort('internetdisconnected'),
    )
    await page.goto(BLEND, { waitUntil: 'networkidle' })
    const figures = await textsOn(page)
    expect(figures.length).toBeGreaterThan(0)
    await page.fill('[name=balance]', '2')
    await send(page)
    expect(typedOn(page)).toMatchObject({ what: 'blend', balance: '2' })
    expect(await textsOn(page)).toEqual(textsOf(calculation, typedOn(page)))
    await page.context().close()
  })
})
