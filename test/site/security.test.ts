import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb, db } from '#lib/db/client.ts'
import { joinSite } from '../support/people.ts'
import { openBrowser, openPage } from './browser.ts'
import { PAGES, SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

const policyOf = (response: Response) =>
  new Map(
    (response.headers.get('content-security-policy') ?? '').split('; ').map((directive) => {
      const [name = '', ...sources] = directive.split(' ')
      return [name, sources] as const
    }),
  )

describe('Every page', () => {
  it.each(Object.entries(PAGES))('%s allows scripts and styles of ours alone', async (_, path) => {
    const response = await fetch(SITE + path)
    const policy = policyOf(response)
    for (const directive of ['script-src', 'style-src'])
      expect(policy.get(directive)?.filter((source) => /unsafe|\*|https?:/.test(source))).toEqual([])
    expect(policy.get('script-src')).toContainEqual(expect.stringMatching(/^'nonce-[A-Za-z0-9+/=]{24}'$/))
    expect(policy.get('default-src')).toEqual(["'none'"])
    expect(policy.get('object-src')).toEqual(["'none'"])
    expect(policy.get('base-uri')).toEqual(["'none'"])
    expect(policy.get('form-action')).toEqual(["'self'"])
    expect(policy.get('frame-ancestors')).toEqual(["'none'"])
    expect(Object.fromEntries(response.headers)).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'strict-origin-when-cross-origin',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'permissions-policy': expect.stringContaining('geolocation=()'),
    })
    expect(response.headers.get('x-powered-by')).toBeNull()
    expect(response.headers.get('strict-transport-security')).toBeNull()
  })
})

describe('The framework’s own resizer of pictures', () => {
  it('is not there: it would keep copies of what may be erased', async () => {
    const icon = `${SITE}/_next/image?url=${encodeURIComponent('/icon.svg')}&w=640&q=75`
    expect((await fetch(icon)).status).toBe(404)
    joinSite()
    const { sha256 } = await db().photo.findFirstOrThrow()
    const photo = `/photos/${sha256}/kept.jpg`
    expect((await fetch(SITE + photo)).headers.get('cache-control')).toBe('public, no-cache')
    const resized = `${SITE}/_next/image?url=${encodeURIComponent(photo)}&w=640&q=75`
    expect((await fetch(resized)).status).toBe(404)
  })
})

describe('The gate', () => {
  it('makes a new nonce for every answer', async () => {
    const nonces = await Promise.all(
      [1, 2, 3].map(async () =>
        policyOf(await fetch(SITE))
          .get('script-src')
          ?.find((one) => one.includes('nonce')),
      ),
    )
    expect(new Set(nonces).size).toBe(3)
  })

  it('asks for https from then on only where it came over https', async () => {
    const response = await fetch(SITE, { headers: { 'x-forwarded-proto': 'https' } })
    expect(response.headers.get('strict-transport-security')).toBe('max-age=31536000')
  })

  it.each([7000, 27_000])('refuses an address of %i characters with 414, in words', async (length) => {
    const page = await fetch(`${SITE}/recipes?unit=${'x'.repeat(length)}`)
    expect([page.status, page.headers.get('content-type')]).toEqual([414, 'text/html; charset=utf-8'])
    const html = await page.text()
    expect(html).toContain('at most 6,000 characters are read')
    expect(html).not.toMatch(/xxx|<script/)
    const answer = await fetch(`${SITE}/api/v1/recipes?unit=${'x'.repeat(length)}`)
    expect(answer.headers.get('content-type')).toBe('application/problem+json')
    expect(await answer.json()).toMatchObject({ status: 414, title: 'URI Too Long' })
  })

  it.each(['/api/v1/job', '/'])('refuses a body that says it is too large at %s with 413', async (path) => {
    const response = await fetch(SITE + path, { method: 'POST', body: 'x'.repeat(70_000) })
    expect(response.status).toBe(413)
  })

  it('refuses a body that turns out too large with 413', async () => {
    const body = new ReadableStream({
      start(controller) {
        controller.enqueue(new TextEncoder().encode(' '.repeat(70_000)))
        controller.close()
      },
    })
    const response = await fetch(`${SITE}/api/v1/job`, {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/json' },
      duplex: 'half',
    } as RequestInit)
    expect(response.status).toBe(413)
  })

  it('shows what is typed as text and never as markup', async () => {
    const script = '"><script>document.title = "taken"</script>'
    const { page, trouble } = await openPage(browser, { baseURL: SITE })
    await page.goto(
      `${PAGES.job}?${new URLSearchParams({ use: 'floor', area: script, reason: script, money: script })}`,
    )
    expect(await page.inputValue('input[name=area]')).toBe(script)
    expect(await page.title()).not.toBe('taken')
    expect(trouble).toEqual([])
    await page.context().close()
  })
})
