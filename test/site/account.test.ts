import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Browser, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { addressOf } from '#lib/auth/limits.ts'
import { bucketName } from '#lib/auth/random.ts'
import { db } from '#lib/db/client.ts'
import { joinSite, makePerson, signIn } from '../support/people.ts'
import { openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
const PASSWORD = 'lime and three of sand'
const OTHER_PASSWORD = 'putty and two of sand'

let browser: Browser
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
})
afterAll(() => browser.close())

describe.each([
  ['with JavaScript', true],
  ['without JavaScript', false],
])('an account, %s', (_, javaScriptEnabled) => {
  it('is opened, changed, left and come back to; nothing typed is lost to a mistake, and secrets are not sent back', async () => {
    const email = `${v4().slice(0, 8)}@people.example`
    const viewport = { width: 360, height: 800 }
    const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled, viewport })
    await page.goto('/account')
    expect(new URL(page.url()).pathname).toBe('/sign-in')
    await page.goto('/sign-up')
    await page.fill('[name=name]', 'Ana of the Ford')
    await page.fill('[name=email]', email)
    await page.fill('[name=password]', 'short')
    await page.click('#sign-up button')
    await page.waitForSelector('.field-error')
    expect(await page.inputValue('[name=name]')).toBe('Ana of the Ford')
    expect(await page.inputValue('[name=email]')).toBe(email)
    expect(await page.inputValue('[name=password]')).toBe('')
    expect(await page.locator('.field-error').textContent()).toMatch(/^Password: too short\. Give 12/)
    expect(await page.locator('[name=password]').getAttribute('aria-invalid')).toBe('true')
    await page.fill('[name=password]', PASSWORD)
    await page.click('#sign-up button')
    await page.waitForURL('**/account')
    const named = async (name: string) =>
      (await page.context().cookies()).find((cookie) => cookie.name === name)
    for (const name of ['putlog-session', 'putlog-device'])
      expect(await named(name)).toMatchObject({ httpOnly: true, sameSite: 'Lax' })

    await page.fill('#rename [name=name]', 'Ana of the Hill')
    await page.click('#rename button')
    await page.waitForSelector('#rename [role=status]')
    await page.goto('/account')
    expect(await page.locator('h1').textContent()).toBe('Ana of the Hill')
    for (const place of ['/write', '/notices', '/due'])
      expect(await page.locator(`main a[href="${place}"]`).count(), place).toBe(1)
    const before = await named('putlog-session')
    await page.fill('#set-password [name=password]', OTHER_PASSWORD)
    await page.fill('#set-password [name=current-password]', PASSWORD)
    await page.click('#set-password button')
    await page.waitForSelector('#set-password [role=status]')
    await page.goto('/account')
    expect(new URL(page.url()).pathname).toBe('/account')
    expect((await named('putlog-session'))?.value).not.toBe(before?.value)
    const old = { cookie: `putlog-session=${before?.value}` }
    expect((await fetch(`${SITE}/account`, { headers: old, redirect: 'manual' })).status).toBe(303)

    await page.click('#sign-out button')
    await page.waitForURL(`${SITE}/`)
    expect((await page.context().cookies()).map(({ name }) => name)).toEqual(['putlog-device'])

    await page.goto('/sign-in?to=/cases')
    await page.fill('[name=email]', email)
    await page.fill('[name=password]', 'not the right one')
    await page.click('#sign-in button')
    await page.waitForSelector('.field-error')
    if (javaScriptEnabled)
      expect(await page.evaluate('document.activeElement.getAttribute("role")')).toBe('alert')
    await page.fill('[name=password]', OTHER_PASSWORD)
    await page.click('#sign-in button')
    await page.waitForURL('**/cases')
    expect(trouble).toEqual([])
    await page.context().close()
  })
})

/** What the element that has the focus says. */
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '')

describe('a reminder', () => {
  it.each([true, false])(
    'is taken off the list with words where reading goes on (script: %s)',
    async (script) => {
      const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: script })
      await page.context().addCookies([(await signIn(await makePerson(), SITE)).cookie])
      await page.goto('/due?case=quollbrook-barn')
      await page.selectOption('#remind [name=when]', 'date')
      await page.fill('#remind [name=on]', '2090-05-01')
      await page.click('#remind button[type=submit]')
      await page.locator('#list li').getByText('1 May 2090').first().waitFor()
      await page.getByRole('button', { name: 'Take off the list' }).click()
      await page.getByText('It was taken off the list.').waitFor()
      await expect.poll(() => focused(page)).toBe('It was taken off the list.')
      expect(await page.locator('#list li').count()).toBe(0)
      await page.context().close()
    },
  )
})

describe('the language of mail', () => {
  it.each([true, false])(
    'is that of the page where the account was opened, changes in the account, and is the calendar’s (script: %s)',
    async (script) => {
      const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: script })
      await page.goto('/es/sign-up')
      await page.fill('[name=name]', 'Ana del Vado')
      await page.fill('[name=email]', `${v4().slice(0, 8)}@people.example`)
      await page.fill('[name=password]', PASSWORD)
      await page.click('#sign-up button')
      await page.waitForURL('**/es/account')
      expect(await page.inputValue('#language select')).toBe('es')

      await page.goto('/es/due?case=quollbrook-barn')
      await page.selectOption('#remind [name=when]', 'date')
      await page.fill('#remind [name=on]', '2090-05-01')
      await page.click('#remind button[type=submit]')
      await page.locator('#list li').getByText('1 de mayo de 2090').first().waitFor()
      await page.click('#calendar-form button')
      const address = (await page.locator('code.address').textContent()) ?? ''
      const calendar = async () =>
        (await (await fetch(`${SITE}${new URL(address).pathname}`)).text()).replaceAll('\r\n ', '')
      expect(await calendar()).toContain('SUMMARY:Visitar el muro: ')
      expect(await calendar()).toMatch(/URL:[^\r]*\/es\/cases\/quollbrook-barn#work-/)

      await page.goto('/es/account')
      await page.selectOption('#language select', 'en')
      await page.click('#language button')
      expect(await page.textContent('#language [role=status]')).toContain('English')
      expect(await calendar()).toContain('SUMMARY:Visit the wall: ')
      expect(await calendar()).not.toContain('/es/')
      expect(trouble).toEqual([])
      await page.context().close()
    },
  )
})

describe('sessions', () => {
  it('end at once in a browser that another one ended', async () => {
    const mason = await makePerson()
    const [here, there] = [await signIn(mason, SITE), await signIn(mason, SITE)]
    const { page } = await openPage(browser, { baseURL: SITE })
    await page.context().addCookies([here.cookie])
    await page.goto('/account')
    await page.click('#end-others button')
    await page.waitForSelector('#end-others', { state: 'detached' })
    await expect.poll(() => focused(page)).toBe('Ended: all other browsers are signed out.')
    const guest = await fetch(`${SITE}/account`, { headers: there.headers, redirect: 'manual' })
    expect([guest.status, guest.headers.get('location')]).toEqual([303, '/sign-in?to=%2Faccount'])
    await page.context().close()
  })

  it('are believed over https only from the cookie that no other host can plant', async () => {
    const { headers } = await signIn(await makePerson())
    const asked = async (over: Record<string, string>) =>
      (await fetch(`${SITE}/account`, { headers: { ...headers, ...over }, redirect: 'manual' })).status
    expect(await asked({})).toBe(200)
    expect(await asked({ 'x-forwarded-proto': 'https' })).toBe(303)
    const host = headers.cookie.replace(/^/, '__Host-')
    expect(await asked({ 'x-forwarded-proto': 'https', cookie: host })).toBe(200)
  })

  it('lead nowhere but to this site after signing in', async () => {
    const { page } = await openPage(browser, { baseURL: SITE })
    for (const to of ['//evil.example', 'https://evil.example', '/\\evil.example', 'javascript:alert(1)']) {
      await page.goto(`/sign-in?${new URLSearchParams({ to })}`)
      expect(await page.inputValue('[name=to]')).toBe('/account')
    }
    await page.context().close()
  })

  it('are carried by no request that another site makes', async () => {
    const { headers } = await signIn(await makePerson())
    const foreign = { ...headers, 'sec-fetch-site': 'cross-site' }
    expect((await fetch(`${SITE}/account/export`, { headers: foreign })).status).toBe(403)
    expect((await fetch(`${SITE}/account/export`, { headers })).status).toBe(200)
  })
})

describe('limits on guessing', () => {
  it('count by the address that a request came from, whatever a header claims', async () => {
    const extraHTTPHeaders = { 'x-forwarded-for': '203.0.113.77' }
    const { page } = await openPage(browser, { baseURL: SITE, extraHTTPHeaders, javaScriptEnabled: false })
    const email = `${v4().slice(0, 8)}@people.example`
    await page.goto('/sign-in')
    await page.fill('[name=email]', email)
    await page.fill('[name=password]', 'not the right one')
    await page.click('#sign-in button')
    await page.waitForSelector('.field-error')
    const counted = async (address: string) =>
      db().rateLimit.count({ where: { bucket: bucketName('sign-in-pair', `${email} ${address}`) } })
    expect(await counted('203.0.113.77')).toBe(0)
    expect((await counted('127.0.0.1')) + (await counted(addressOf('::1', 0)))).toBe(1)
    await page.context().close()
  })
})

describe('pages of an account', () => {
  it.each([
    ['/sign-in', null],
    ['/sign-up', null],
    ['/sign-in/link?secret=used', null],
    ['/account', ['contributor']],
    ['/steward', ['steward']],
    ['/steward', ['contributor']],
    ['/steward/audit', ['steward']],
    ['/steward/take-down', ['steward']],
  ] as const)('%s for %j: axe finds nothing serious, and it fits 320 px', async (path, roles) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const viewport = { width: 320, height: 700 }
      const context = await browser.newContext({ baseURL: SITE, bypassCSP: true, colorScheme, viewport })
      if (roles) await context.addCookies([(await signIn(await makePerson({ roles }), SITE)).cookie])
      const page = await context.newPage()
      await page.goto(path)
      expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0)
      await page.addScriptTag({ content: axe })
      const { violations } = (await page.evaluate('axe.run({ resultTypes: ["violations"] })')) as AxeResults
      const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical')
      expect(serious.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
      await context.close()
    }
  })
})
