import type { Browser, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb } from '#lib/db/client.ts'
import { joinSite, makePerson, signIn } from '../support/people.ts'
import { follow, live, openBrowser, openPage } from './browser.ts'
import { type Keys, keysOf } from './keyboard.ts'
import { SITE } from './pages.ts'

/** Whole jobs with no pointer: every stop of the focus on the way is seen, uncovered and in the order of reading. */

const SLOW = { timeout: 30_000 }

let browser: Browser
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

/** A page with a keyboard; nothing may have gone wrong on it, and nothing have been out of sight. */
async function byKeys(
  width: number,
  path: string,
  work: (keys: Keys, page: Page) => Promise<void>,
  person?: Parameters<typeof signIn>[0],
): Promise<void> {
  const { page, trouble } = await openPage(browser, {
    baseURL: SITE,
    viewport: { width, height: 800 },
    // Where the page glides, a stop is still on its way when it is looked at.
    reducedMotion: 'reduce',
  })
  if (person) await page.context().addCookies([(await signIn(person, SITE)).cookie])
  await page.goto(path, { waitUntil: 'networkidle' })
  const keys = keysOf(page)
  await work(keys, page)
  expect([...new Set(keys.faults)]).toEqual([])
  expect(trouble).toEqual([])
  await page.context().close()
}

const submit = '.job-form .actions button'

describe('By keyboard alone', () => {
  it('a reader finds a recipe for their stone, works out a job, opens its working and its card', async () => {
    await byKeys(1280, '/', async (keys, page) => {
      await keys.skip()
      await keys.choose('select[name=unit]', 'limestone')
      await keys.go('main form[action="/recipes"] button')
      expect(new URL(page.url()).search).toBe('?unit=limestone')
      await keys.skip()
      await keys.go('a[href="/recipes/hot-lime-for-rubble"]')
      await keys.skip()
      await keys.go('main a[href^="/recipes/hot-lime-for-rubble/job"]')
      await keys.skip()
      await keys.type('[name=area]', 'wide')
      await page.locator('.job-live #faults').waitFor(SLOW)
      expect(await keys.standsAt()).toBe('field-area')
      await keys.go(submit)
      // What is to be mended is where reading goes on, and its first link leads to its field.
      expect(await keys.standsAt()).toBe('faults')
      await keys.press('#faults a')
      expect(await keys.standsAt()).toBe('field-area')
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type('24')
      await keys.choose('select[name=sand]', 'dry')
      await keys.go(submit)
      expect(new URL(page.url()).searchParams.get('area')).toBe('24')
      expect(await page.locator('#sheet').isVisible()).toBe(true)
      await keys.press('#working > summary')
      expect(await page.locator('#working').getAttribute('open')).not.toBeNull()
      await keys.back('#sheet a[href*="/job/card"]')
      await follow(page, () => page.keyboard.press('Enter'))
      expect(await page.locator('#card').isVisible()).toBe(true)
    })
  })

  it('somebody weighs a sand on several sieves, mends a figure and blends three sands', async () => {
    await byKeys(360, '/work-out/sieve', async (keys, page) => {
      await live(page)
      await keys.skip()
      await keys.type('[name=start]', '500')
      await keys.type('[name=on-1]', 'mud')
      await page.locator('#faults').waitFor(SLOW)
      expect(await keys.standsAt()).toBe('field-on-1')
      await keys.press('.bench-form .actions button')
      await expect.poll(() => keys.standsAt()).toBe('faults')
      await keys.press('#faults a')
      expect(await keys.standsAt()).toBe('field-on-1')
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type('112')
      await page.locator('#result').waitFor(SLOW)
      await keys.press('.bench-form .actions button')
      await expect.poll(() => keys.standsAt()).toBe('result-head')
      await page.keyboard.press('Shift+Tab')
      await keys.skip()
      await keys.choose('[name=what]', 'blend')
      await keys.choose('[name=sands]', '3')
      await keys.type('[name=sand-3]', '0\n5\n10\n50\n200\n150\n60\n20\n5')
      await expect.poll(() => page.locator('#result').textContent(), SLOW).toContain('Sand 3')
      expect(await keys.standsAt()).toBe('field-sand-3')
    })
  })

  it('a contributor signs in, begins a visit, fills every step and sends it; a reviewer publishes it', async () => {
    const password = `${v4()} lime`
    const visitor = await makePerson({ password })
    const reviewer = await makePerson({ roles: ['reviewer'] })
    await byKeys(360, '/cases/quollbrook-barn', async (keys, page) => {
      await keys.skip()
      await keys.press('main a[href^="/write/new"]')
      await page.waitForURL(/sign-in/)
      await keys.skip()
      await keys.type('#sign-in [name=email]', visitor.email)
      await keys.type('#sign-in [name=password]', 'not this one')
      await keys.press('#sign-in button')
      await page.locator('#sign-in .act-wrong:focus').waitFor(SLOW)
      await keys.type('#sign-in [name=password]', password)
      await within(keys, page, '#sign-in button', /write\/new/)
      await within(keys, page, '.write-begin button', /seen$/)
      await keys.type('[name=on]', '31.02.2019')
      await keys.pick('joint', 'worn')
      await keys.pick('unit', 'sound')
      await keys.pick('damp', 'dry')
      await keys.press(doing('next'))
      await page.waitForURL(/look=mend/)
      await expect.poll(() => keys.standsAt()).toBe('faults')
      await keys.press('#faults a')
      expect(await keys.standsAt()).toBe('field-on')
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.type('12.6.2019')
      await within(keys, page, doing('next'), /photos$/)
      await within(keys, page, doing('next'), /measured$/)
      await keys.choose('[name="readings.0.kind"]', 'moisture-meter-relative')
      await keys.type('[name="readings.0.value"]', '14')
      await keys.choose('[name="readings.0.unit"]', 'relative')
      await keys.press(doing('add others'))
      await expect.poll(() => keys.standsAt(), SLOW).toBe('item-others.0')
      await keys.choose('[name="others.0.who"]', 'other-practitioner')
      await keys.choose('[name="others.0.joint"]', 'worn')
      await keys.choose('[name="others.0.unit"]', 'sound')
      await keys.choose('[name="others.0.damp"]', 'dry')
      await keys.press(doing('add others'))
      await expect.poll(() => keys.standsAt(), SLOW).toBe('item-others.1')
      await keys.choose('[name="others.1.who"]', 'other-practitioner')
      await keys.press(doing('stay'))
      await page.locator(doing('remove others.1')).waitFor(SLOW)
      await page.locator(`${doing('stay')}:focus`).waitFor(SLOW)
      await keys.press(doing('remove others.1'))
      await page.locator('.act-told:focus').waitFor(SLOW)
      expect(await page.locator('[name="others.0.who"]').inputValue()).toBe('other-practitioner')
      await within(keys, page, doing('next'), /observer$/)
      await keys.choose('[name="observer.who"]', 'other-practitioner')
      await keys.type('[name="observer.how"]', 'From a ladder.')
      await within(keys, page, doing('next'), /worked$/)
      await within(keys, page, doing('next'), /check$/)
      await keys.type('[name=interests]', 'None')
      await keys.tick('[name="rights.licence"]')
      await within(keys, page, doing('send'), /write\/[0-9a-f-]{36}$/)
      expect(await page.textContent('h1')).toBe('Sent')
    })
    await byKeys(
      1280,
      '/review',
      async (keys, page) => {
        await keys.skip()
        await keys.go(`main a[href="${await waiting(page, 'Sandstone barn with salt in its feet')}"]`)
        await keys.choose('#judge [name=outcome]', 'publish')
        await keys.type('#judge [name=words]', 'Joint and stone are both read.')
        await keys.press('#judge button[type=submit]')
        // The checklist is not ticked yet: the sentence that says so has the focus, and every word is still there.
        await page.locator('#judge .act-wrong:focus').waitFor(SLOW)
        expect(await page.inputValue('#judge [name=words]')).toBe('Joint and stone are both read.')
        for (const box of await page.locator('#judge [name=checks]').all())
          await keys.tick(`#${await box.getAttribute('id')}`)
        await within(keys, page, '#judge button[type=submit]', /review$/)
      },
      reviewer,
    )
  }, 240_000)
})

/** Where the version on the desk is read that was sent last, of a case by its title. */
const waiting = async (page: Page, title: string) =>
  (await page.getByRole('link', { name: title, exact: true }).last().getAttribute('href')) ?? ''

/**
 * Presses what leads to another page. Where a script draws that one in place of this, reading has to go on at its start;
 * a page that is loaded anew begins there by itself.
 */
async function within(keys: Keys, page: Page, selector: string, to: RegExp): Promise<void> {
  await keys.to(selector)
  await page.evaluate(() => Object.assign(window, { isOpen: true }))
  await page.keyboard.press('Enter')
  await page.waitForURL(to)
  const stands = async () => ((await page.evaluate(() => 'isOpen' in window)) ? keys.standsAt() : 'main')
  await expect.poll(stands, SLOW).toBe('main')
}

const doing = (value: string) => `.write-form button[value="${value}"]:not([aria-hidden])`
