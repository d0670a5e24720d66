import type { Page } from 'playwright-core'

/** How tests write entries through the forms, with JavaScript or without. */

/** Begins a draft as `query` asks for and opens its first step; resolves with its id. */
export async function begin(page: Page, query: string): Promise<string> {
  await page.goto(`/write/new?${query}`)
  return startHere(page)
}

/** Presses the one button of the page that says what will be made. */
export async function startHere(page: Page): Promise<string> {
  await page.click('main .write-begin button[type=submit]')
  await page.waitForURL(/\/write\/[0-9a-f-]{36}\/\w+/)
  const [, id = ''] = /\/write\/([0-9a-f-]{36})\//.exec(page.url()) ?? []
  return id
}

export const field = (page: Page, name: string) => page.locator(`[name="${name}"]`)

/** Types or chooses; `on` ticks, and of radio buttons the one with the value is chosen. */
export async function fill(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) {
    const control = field(page, name).first()
    const kind = await control.evaluate(
      (element) => `${element.tagName} ${element.getAttribute('type') ?? ''}`,
    )
    if (kind.startsWith('SELECT')) await control.selectOption(value)
    else if (kind === 'INPUT radio') await page.check(`[name="${name}"][value="${value}"]`)
    else if (kind === 'INPUT checkbox')
      await (value === 'on' ? control : page.locator(`[name="${name}"][value="${value}"]`)).check()
    else await control.fill(value)
  }
}

/** Presses a button of the form and waits for where it leads. */
export async function press(page: Page, value: string, to: RegExp): Promise<void> {
  await page.click(`.write-form button[name=":do"][value="${value}"]:not([aria-hidden])`)
  await page.waitForURL(to)
}

/** Fills the steps of a draft one after the other, by their ids, and sends it. */
export async function writeSteps(
  page: Page,
  id: string,
  steps: Readonly<Record<string, Readonly<Record<string, string>>>>,
): Promise<void> {
  for (const [step, values] of Object.entries(steps)) {
    if (!new URL(page.url()).pathname.endsWith(`/${id}/${step}`)) await page.goto(`/write/${id}/${step}`)
    await fill(page, values)
    if (step !== 'check') await press(page, 'next', new RegExp(`/${id}/(?!${step})\\w+$`))
  }
  await press(page, 'send', new RegExp(`/write/${id}$`))
}

/** What every entry is asked for last. */
export const LAST = { interests: 'I did the work.', 'rights.licence': 'on' } as const

/** What has to be mended, as the form lists it. */
export const faultLines = (page: Page) => page.locator('.write-faults li').allInnerTexts()

/** A reviewer's verdict on what waits under this title; publishing ticks the whole checklist. */
export async function judge(
  page: Page,
  title: string,
  { outcome, words, on = {} }: { outcome: string; words: string; on?: Readonly<Record<string, string>> },
): Promise<void> {
  await page.goto('/review')
  const link = page.getByRole('link', { name: title, exact: true }).last()
  await page.goto((await link.getAttribute('href')) ?? '')
  for (const [path, said] of Object.entries(on)) {
    const area = page.locator(`textarea[name="on:${path}"]`)
    await page.locator('details', { has: area }).last().locator('summary').click()
    await area.fill(said)
  }
  await page.selectOption('#judge [name=outcome]', outcome)
  await page.fill('#judge [name=words]', words)
  if (outcome === 'publish')
    for (const box of await page.locator('#judge [name=checks]').all()) await box.check()
}

/** Puts the verdict that stands in the form on record. */
export async function putOnRecord(page: Page): Promise<void> {
  await page.click('#judge button[type=submit]')
  await page.waitForURL('**/review')
}
