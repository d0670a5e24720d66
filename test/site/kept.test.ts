import type { Browser, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { decide } from '#lib/workflow/decide.ts'
import { eraseBody } from '#lib/workflow/erase.ts'
import { keepSheet } from '#lib/workflow/sheet-keep.ts'
import { withdraw } from '#lib/workflow/withdraw.ts'
import { workSheet } from '../../app/_kept/worked-sheet.ts'
import { verdictOn } from '../support/make.ts'
import { joinSite, makePerson, type Person, signIn } from '../support/people.ts'
import { follow, openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { SITE } from './pages.ts'
import { begin, LAST, writeSteps } from './writing.ts'

let browser: Browser
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
})
afterAll(() => browser.close())

const SAND = '/work-out/sand?what=voids-water&sand-ml=1000&water-ml=340&units=us&label=Heap+by+the+gate'
const JOB = '/recipes/hot-lime-for-rubble/job?use=pointing-rubble&area=12&units=metric'

/** Every figure of a result, kept or live; the working apart. */
const figuresOn = (page: Page) =>
  page.locator('.bench-result > *:not(.bench-working)').locator('.quantity').allTextContents()
/** How many pages of A4 it prints on. */
const pagesIn = async (page: Page) =>
  (await page.pdf({ format: 'A4', preferCSSPageSize: true }))
    .toString('latin1')
    .match(/\/Type\s*\/Page(?!s)/g)?.length ?? 0
const keep = (page: Page) => page.getByRole('link', { name: 'Keep this sheet' })

async function open(person: Person | null, javaScriptEnabled: boolean) {
  const opened = await openPage(browser, { baseURL: SITE, javaScriptEnabled })
  if (person !== null) await opened.page.context().addCookies([(await signIn(person, SITE)).cookie])
  return opened
}

/** Keeps the sheet of an address under a name; resolves with the address of the kept one. */
async function kept(page: Page, of: string, name: string): Promise<string> {
  await page.goto(of)
  await follow(page, () => keep(page).click())
  await page.fill('#keep [name=name]', name)
  await page.click('#keep button')
  await page.waitForURL(/\/account\/sheets\/[0-9a-f-]{36}$/)
  return new URL(page.url()).pathname
}

describe.each([
  ['with JavaScript', true],
  ['without JavaScript', false],
])('a sheet, %s', (_, javaScriptEnabled) => {
  it('is kept by somebody who has to sign in first, with every input; named anew, found and deleted', async () => {
    const person = await makePerson({ password: 'lime and three of sand' })
    const { page, trouble } = await open(null, javaScriptEnabled)
    await page.goto(SAND)
    const figures = await figuresOn(page)
    expect(figures.length).toBeGreaterThan(0)
    await follow(page, () => keep(page).click())
    expect(new URL(page.url()).pathname).toBe('/sign-in')
    await page.fill('[name=email]', person.email)
    await page.fill('[name=password]', 'lime and three of sand')
    await page.click('#sign-in button')
    await page.waitForURL('**/account/sheets/new?**')
    expect(await page.inputValue('#keep [name=name]')).toBe('Heap by the gate')
    expect(await figuresOn(page)).toEqual(figures)
    await page.fill('#keep [name=name]', '')
    await page.fill('#keep [name=note]', 'North side.')
    await page.click('#keep button')
    await page.waitForSelector('.field-error')
    expect(await page.inputValue('#keep [name=note]')).toBe('North side.')
    await page.fill('#keep [name=name]', 'North heap')
    await page.click('#keep button')
    await page.waitForURL(/\/account\/sheets\/[0-9a-f-]{36}$/)
    expect(await page.locator('h1').textContent()).toBe('North heap')
    expect(await figuresOn(page)).toEqual(figures)
    expect(await page.locator('#today').textContent()).toContain('Every figure is the same today.')
    if (javaScriptEnabled) expect(await lookOver(page, 'kept-sand')).toEqual([])

    await page.fill('#rename [name=name]', 'South heap')
    await page.click('#rename button')
    await page.waitForSelector('#rename [role=status]')
    await page.goto('/account/sheets')
    const row = page.locator('tbody tr')
    expect(await row.count()).toBe(1)
    expect(await row.textContent()).toContain('South heap')
    if (javaScriptEnabled) expect(await lookOver(page, 'kept-list')).toEqual([])
    await follow(page, () => row.getByRole('link', { name: 'South heap' }).click())
    await page.click('#delete-sheet button')
    await page.waitForSelector('#delete-sheet [role=alert]')
    await page.check('#delete-sheet [name=sure]')
    await page.click('#delete-sheet button')
    await page.waitForURL('**/account/sheets')
    expect(await page.locator('tbody tr').count()).toBe(0)
    expect(trouble).toEqual([])
    await page.context().close()
  })
})

describe('a kept job sheet', () => {
  it('names its recipe and version, leads to the live sheet, and is nobody else’s to read', async () => {
    const [person, steward] = [
      await makePerson(),
      await makePerson({ roles: ['contributor', 'reviewer', 'steward'] }),
    ]
    const { page, trouble } = await open(person, true)
    const address = await kept(page, JOB, 'West face')
    const text = await page.locator('main').textContent()
    for (const part of ['West face', 'Job sheet', 'In this order', 'Cautions', 'Mortar to make'])
      expect(text).toContain(part)
    expect(await page.locator('#made a[href^="/recipes/hot-lime-for-rubble?revision="]').count()).toBe(1)
    expect(await lookOver(page, 'kept-job')).toEqual([])
    await follow(page, () => page.getByRole('link', { name: 'The same inputs, worked out today' }).click())
    expect(new URL(page.url()).pathname).toBe('/recipes/hot-lime-for-rubble/job')
    expect(await page.inputValue('[name=area]')).toBe('12')
    expect(trouble).toEqual([])
    for (const other of [steward, await makePerson()]) {
      const answer = await fetch(SITE + address, { headers: (await signIn(other)).headers })
      expect([answer.status, (await answer.text()).includes('West face')]).toEqual([404, false])
    }
    await page.context().close()
  })

  it('keeps its drawings and its working, on paper too, and its costs to itself in an entry', async () => {
    const person = await makePerson()
    const { page, trouble } = await open(person, true)
    const works = 'use=pointing&area=12&unit-length=300&unit-height=150&joint=12&depth=25'
    const brick =
      'use-2=bedding-brick&area-2=6&brick-length-2=215&brick-width-2=102.5&brick-height-2=65&joint-2=10'
    const address = await kept(
      page,
      `/recipes/hot-lime-for-rubble/job?${works}&${brick}&units=metric`,
      'Two works',
    )
    const live = page.locator('.kept-sheet')
    expect(await live.locator('.drawings svg').count()).toBe(4)
    expect(await live.locator('.drawings figcaption').first().textContent()).toContain('12 mm')
    expect(await live.locator('#working tbody tr').count()).toBeGreaterThan(10)
    expect(await live.locator('#working tbody tr').first().isVisible()).toBe(false)
    // Looking it over unfolds the working.
    const bare = await pagesIn(page)
    expect(await lookOver(page, 'kept-drawn')).toEqual([])
    await follow(page, () => page.getByRole('link', { name: 'Show the working' }).click())
    expect(new URL(page.url()).pathname).toBe(address)
    expect(await live.locator('#working tbody tr').first().isVisible()).toBe(true)
    expect(await lookOver(page, 'kept-working')).toEqual([])
    const whole = await pagesIn(page)
    expect(bare).toBeLessThanOrEqual(4)
    expect(whole).toBeGreaterThan(bare)
    expect(whole).toBeLessThanOrEqual(12)
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('says on top that its recipe was withdrawn since, on paper too', async () => {
    const [person, steward] = [await makePerson(), await makePerson({ roles: ['steward'] })]
    const { page } = await open(person, true)
    const address = await kept(page, '/recipes/hot-limewash/job?use=limewash&area=20', 'Dairy wall')
    const figures = await figuresOn(page)
    await withdraw(steward.member, { key: v4(), slug: 'hot-limewash', words: 'It scorched the wall.' })
    await page.goto(address)
    await page.emulateMedia({ media: 'print' })
    const notice = page.locator('.page-head .notice-withdrawn')
    expect(await notice.isVisible()).toBe(true)
    expect(await notice.textContent()).toContain('It scorched the wall.')
    expect(await figuresOn(page)).toEqual(figures)
    expect(await page.locator('#today').textContent()).toContain('cannot be worked out anew')
    await page.emulateMedia({ media: 'screen' })
    expect(await lookOver(page, 'kept-withdrawn')).toEqual([])
    await page.context().close()
  })
})

describe.each([
  ['English', '', '/es', 'es', 'en', 'se guardó en inglés', '.'],
  ['Spanish', '/es', '', 'en-GB', 'es', 'was kept in Spanish', ','],
])('a sheet kept in %s', (_, own, others, around, inside, note, sign) => {
  it('stands as it was kept on a page of the other language, which says so', async () => {
    const person = await makePerson()
    const { page, trouble } = await open(person, true)
    await page.goto(`${own}/work-out/sand?what=voids-water&sand-ml=1234&water-ml=345${sign}5&units=us`)
    await follow(page, () => page.locator('a[href*="/account/sheets/new"]').click())
    await page.fill('#keep [name=name]', 'North heap')
    await page.click('#keep button')
    await page.waitForURL(/\/account\/sheets\/[0-9a-f-]{36}$/)
    const address = new URL(page.url()).pathname.replace(/^\/es/, '')
    const frozen = await page.locator('.kept-sheet').textContent()
    expect(await page.locator('.kept-sheet').locator('xpath=ancestor::div[@lang]').count()).toBe(0)
    expect(frozen).toMatch(new RegExp(`\\d\\${sign}\\d`))
    await page.goto(`${others}${address}`)
    expect(new URL(page.url()).pathname).toBe(`${others}${address}`)
    expect(await page.locator('html').getAttribute('lang')).toBe(around)
    expect(await page.locator(`div[lang=${inside}] .kept-sheet`).textContent()).toBe(frozen)
    expect(await page.locator('#figures').textContent()).toContain(note)
    expect(await page.locator('#today tbody tr').count()).toBe(0)
    const live = page.locator('#today a')
    expect(await live.getAttribute('href')).toMatch(new RegExp(`^${own}/work-out/sand`))
    expect(await lookOver(page, `kept-${inside}-elsewhere`)).toEqual([])
    expect(trouble).toEqual([])
    await page.context().close()
  })
})

it('a kept sheet says what an erasure took out of it, and why', async () => {
  const [person, steward] = [await makePerson(), await makePerson({ roles: ['steward'] })]
  const { page, trouble } = await open(person, true)
  const address = await kept(page, '/recipes/lime-gypsum-inside-finish/job?use=volume&volume=100', 'Parlour')
  const figures = await figuresOn(page)
  const title = await page.locator('#made a').textContent()
  const words = 'It named the owner of a house.'
  const order = {
    key: v4(),
    slug: 'lime-gypsum-inside-finish',
    number: 1,
    ground: 'personal-data',
    words,
  } as const
  await eraseBody(steward.member, order)
  await page.goto(address)
  const head = (await page.locator('.page-head').textContent()) ?? ''
  for (const part of ['Words of the recipe were taken out of this sheet', words]) expect(head).toContain(part)
  expect(await page.locator('main').textContent()).not.toContain(title)
  expect(await figuresOn(page)).toEqual(figures)
  expect(await lookOver(page, 'kept-erased')).toEqual([])
  await page.goto('/account/sheets')
  expect(await page.locator('tbody tr').textContent()).toContain('A recipe whose title was erased')
  expect(trouble).toEqual([])
  await page.context().close()
})

it('a sheet kept long ago says what differs today, figure by figure, and stays as it was', async () => {
  const person = await makePerson()
  const address = '/work-out/sand?what=voids-water&sand-ml=1000&water-ml=340&units=metric'
  const working = await workSheet(address)
  if (!working?.ok) throw new Error('the sums gave no sheet')
  const { sheet } = working
  const { figures } = sheet
  // As if the sums had found less in the same heap then.
  const then = figures.blocks.map((block) =>
    block.kind === 'figures'
      ? { ...block, figures: block.figures.map((one) => ({ ...one, value: 30 })) }
      : block,
  )
  const { id } = await keepSheet(person.member, {
    ...{ id: v4(), name: 'Heap of old', note: '', calculation: sheet.calculation, address: sheet.address },
    ...{ system: sheet.system, recipe: null, edition: 'of-then', sums: 1, digest: sheet.versions.digest },
    figures: { ...figures, blocks: then },
  })
  const { page, trouble } = await open(person, true)
  await page.goto(`/account/sheets/${id}`)
  expect((await figuresOn(page))[0]).toBe('30 %')
  const rows = page.locator('#today tbody tr')
  expect(await rows.count()).toBe(1)
  for (const part of ['Voids', '30 %', '34 %']) expect(await rows.textContent()).toContain(part)
  expect(await page.locator('#today').textContent()).toContain('Edition of the content: of-then then')
  expect(await lookOver(page, 'kept-differs')).toEqual([])
  await follow(page, () => page.getByRole('link', { name: 'The same inputs, worked out today' }).click())
  expect((await figuresOn(page))[0]).toBe('34 %')
  expect(trouble).toEqual([])
  await page.context().close()
})

it('an address that is none keeps nothing and says so', async () => {
  const { page } = await open(await makePerson(), true)
  for (const of of ['https://elsewhere.example/work-out/sand', '/cases', '/work-out/sand']) {
    await page.goto(`/account/sheets/new?${new URLSearchParams({ of })}`)
    expect(await page.locator('#keep').count(), of).toBe(0)
    expect(await page.locator('h1').textContent()).toBe('There is nothing to keep yet')
  }
  await page.context().close()
})

it('a kept sheet stands in an entry with its figures, also once its owner has deleted it', async () => {
  const person = await makePerson()
  const { page, trouble } = await open(person, true)
  const address = await kept(page, SAND, 'Heap for the quarry lane sand')
  const figures = await figuresOn(page)
  // One more try finds the address taken by the first.
  const title = `Quarry lane sand ${v4().slice(0, 8)}`
  const slug = title.toLowerCase().replaceAll(' ', '-')
  const draft = await begin(page, 'kind=material')
  const id = address.slice(address.lastIndexOf('/') + 1)
  await page.goto(`/write/${draft}/worked`)
  expect(await lookOver(page, 'kept-step')).toEqual([])
  await writeSteps(page, draft, {
    material: { title, summary: 'Sharp and yellow.', role: 'aggregate', standing: 'in-use' },
    worked: { 'sheets.0.sheet': id, 'sheets.0.of': 'Its voids, heap of the first load.' },
    check: LAST,
  })
  await page.goto(address)
  await page.check('#delete-sheet [name=sure]')
  await page.click('#delete-sheet button')
  await page.waitForURL('**/account/sheets')
  await decide((await makePerson({ roles: ['reviewer'] })).member, {
    ...verdictOn({ slug, number: 1 }),
  })
  await page.goto(`/materials/${slug}`)
  const section = page.locator('#worked-on')
  const text = (await section.textContent()) ?? ''
  for (const part of [...figures, 'Heap for the quarry lane sand', 'Its voids, heap of the first load.'])
    expect(text).toContain(part)
  expect(await lookOver(page, 'kept-basis')).toEqual([])
  expect(trouble).toEqual([])
  await page.context().close()
})
