import { existsSync } from 'node:fs'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'

/** The one without windows first: the other draws its tabs and menus too, for half as much time again. */
const PLACES = ['/usr/bin/chromium-headless-shell', '/usr/bin/chromium', '/usr/bin/chromium-browser']

/** Opens the system's Chromium, told to call nobody by itself. */
export function openBrowser(): Promise<Browser> {
  const executablePath = PLACES.find((place) => existsSync(place))
  if (!executablePath)
    throw new Error('No Chromium on this machine: install the package `chromium-headless-shell`.')
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })
}

/** A page, and all that went wrong on it so far: script errors, breaches of the policy, calls elsewhere. */
export interface Watched {
  readonly page: Page
  readonly trouble: string[]
}

/**
 * Does what leads to another page and waits until that one has loaded: a click by itself may return while the page
 * before still answers, and what is then read is of either.
 */
export async function follow(page: Page, act: () => Promise<unknown>): Promise<void> {
  await Promise.all([page.waitForEvent('load'), act()])
}

/** Until a script follows the form of a calculation. */
export const live = (page: Page) =>
  page.waitForFunction(() =>
    Object.keys(document.querySelector('.bench-form') ?? {}).some((key) => key.startsWith('__reactProps')),
  )

/**
 * Opens a page of a fresh profile that keeps note of trouble. Close its context when done. What is asked for goes to the
 * site itself: the worker that keeps pages is only let in where a test is about it.
 */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions & { baseURL: string },
): Promise<Watched> {
  const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block', ...options })
  const page = await context.newPage()
  const trouble: string[] = []
  const home = new URL(options.baseURL).origin
  page.on('console', (message) => {
    if (message.type() === 'error') trouble.push(`console: ${message.text()} ${message.location().url}`)
  })
  page.on('pageerror', (error) => trouble.push(`script: ${error.message}`))
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url())
    if (protocol !== 'data:' && origin !== home) trouble.push(`call to another host: ${request.url()}`)
  })
  page.on('requestfailed', (request) => {
    const refused = options.javaScriptEnabled === false && request.resourceType() === 'script'
    if (!refused && request.failure()?.errorText !== 'net::ERR_ABORTED')
      trouble.push(`failed: ${request.url()}`)
  })
  return { page, trouble }
}
