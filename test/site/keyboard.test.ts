import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb } from '#lib/db/client.ts'
import { joinSite } from '../support/people.ts'
import { follow, openBrowser, openPage } from './browser.ts'
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
): Promise<void> {
  const { page, trouble } = await openPage(browser, {
    baseURL: SITE,
    viewport: { width, height: 800 },
    // Where the page glides, a stop is still on its way when it is looked at.
    reducedMotion: 'reduce',
  })
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
})
