import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb } from '#lib/db/client.ts'
import { listDrafts, ownDraft } from '#lib/db/drafts.ts'
import { submitDraft } from '#lib/workflow/draft-submit.ts'
import { submit } from '#lib/workflow/submit.ts'
import { makeCase, makeSubmission, makeWork } from '../support/make.ts'
import { joinSite, makePerson, type Person, signIn } from '../support/people.ts'
import { openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { SITE } from './pages.ts'
import { begin, faultLines, field, fill, press } from './writing.ts'

const SLOW = { timeout: 30_000 }

/** A phone on a scaffold. */
const PHONE = { baseURL: SITE, viewport: { width: 360, height: 780 } }

let browser: Browser
let person: Person
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
  person = await makePerson()
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

/** A page of somebody who is signed in, until the test is over; nothing may have gone wrong on it. */
async function asWriter(
  options: BrowserContextOptions,
  write: (page: Page) => Promise<void>,
  expected: RegExp = /^$/,
): Promise<void> {
  const { page, trouble } = await openPage(browser, { ...PHONE, ...options })
  await page.context().addCookies([(await signIn(person, SITE)).cookie])
  await write(page)
  expect(trouble.filter((one) => !expected.test(one))).toEqual([])
  await page.context().close()
}

const typed = async (id: string) => (await ownDraft(person.key, id))?.typed ?? {}

/** Waits until the form says this of its saving. */
const says = (page: Page, words: RegExp) => expect.poll(() => page.textContent('#keep'), SLOW).toMatch(words)

/** Writes a case from its first field to the reviewers, as somebody does who makes mistakes. */
async function writeCase(page: Page, title: string): Promise<void> {
  await begin(page, 'kind=case')
  await fill(page, {
    title,
    'place.country': 'EE',
    'place.region': 'Saare county',
    'structure.type': 'farm-building',
    'structure.century': 'nineteen',
  })
  await press(page, 'next', /place\?look=mend/)
  expect(await page.locator(':focus').getAttribute('id')).toBe('faults')
  expect(await faultLines(page)).toEqual([
    'Century: “nineteen” is not a number. Give digits, such as 24, 0.5 or 1 1/2.',
  ])
  expect(await field(page, 'structure.century').inputValue()).toBe('nineteen')
  expect(await field(page, 'structure.century').getAttribute('aria-invalid')).toBe('true')
  await fill(page, { 'structure.century': '19' })
  await press(page, 'next', /fabric$/)
  await fill(page, {
    'fabric.units.0.unit': 'Kalkstein',
    'fabric.wall': 'rubble-random',
    'fabric.thicknessMm': '5000',
  })
  await press(page, 'next', /work$/)
  await fill(page, {
    'works.0.title': 'North face repointed',
    'works.0.use': 'pointing',
    'works.0.started': '6/2019',
    'works.0.finished': 'August 2019',
    'works.0.areaM2': '1,500',
  })
  await press(page, 'next', /work\?look=mend/)
  expect((await faultLines(page))[0]).toContain('can be read in two ways')
  await page.check('input[name="works.0.areaM2-mark"][value=decimal]')
  await press(page, 'next', /mortar$/)
  await fill(page, { 'works.0.recipe': 'hot lime for rubble' })
  await press(page, 'next', /exposure$/)
  // A step that can stay blank is left with nothing typed.
  await press(page, 'next', /earlier$/)
  await page.click('.write-steps a[href$="/mortar"]')
  await page.waitForURL(/mortar$/)
  expect(await page.textContent('[id="field-works.0.recipe-echo"]')).toMatch(/1 : \d.*putty/)
  await page.click('.write-steps a[href$="/check"]')
  await page.waitForURL(/check$/)
  await press(page, 'send', /check\?look=all/)
  expect(await faultLines(page)).toEqual([
    'Your interests: nothing was given, and it is needed.',
    'Licence: without it nothing can be published.',
  ])
  await fill(page, { interests: 'I did the work.', 'rights.licence': 'on' })
  await page.click('.write-form button[value=send]')
  await page.waitForSelector('[name="overrides.0.reason"]')
  expect((await faultLines(page))[0]).toContain('Thickness: 5000 mm. Usual is 90 mm to 3000 mm (practice).')
  await press(page, 'stay', /check$/)
  expect(await page.locator('[name="overrides.0.reason"]').count()).toBe(1)
  await fill(page, { 'overrides.0.reason': 'A tower: measured at the doorway.' })
  await press(page, 'send', /\/write\/[0-9a-f-]{36}$/)
  expect(await page.textContent('h1')).toBe('Sent')
}

describe('Writing a case on a phone', () => {
  it.each([
    ['without JavaScript', false],
    ['with it', true],
  ])('%s: every mistake is named where it is, nothing typed is lost, and it arrives', async (_, scripted) => {
    // Both have one title: the second gets an address of its own.
    const title = 'Barn, north gable'
    await asWriter({ javaScriptEnabled: scripted }, (page) => writeCase(page, title))
    const { drafts } = await listDrafts(person.key)
    const sent = drafts.find((draft) => draft.title === title)?.sent
    const slug = expect.stringMatching(/^barn-north-gable(-\d)?$/)
    expect(sent).toMatchObject({ number: 1, state: 'submitted', slug })
    if (scripted) expect(sent?.slug).not.toBe('barn-north-gable')
  })
})

describe('A slip, without JavaScript', () => {
  it.each([
    ['kind=recipe', 'ingredients', 'ingredients.0.parts', '3-2', 'runs from high to low'],
    ['kind=material', 'sieve', 'sieve.0.openingMm', '4mm', 'Leave the unit off'],
    ['kind=source', 'source', 'issued.year', '1850?', 'Give the number alone'],
    ['of=quollbrook-barn', 'seen', 'on', '31 February 2024', 'is not in the calendar'],
  ])('%s: is named with its field, kept, and one press away', async (query, step, name, text, words) => {
    await asWriter({ javaScriptEnabled: false }, async (page) => {
      const id = await begin(page, query)
      await page.goto(`/write/${id}/${step}`)
      await fill(page, { [name]: text })
      await press(page, 'next', /look=mend/)
      expect(await page.locator(':focus').getAttribute('id')).toBe('faults')
      const lines = await faultLines(page)
      expect([lines.length, lines[0]]).toEqual([1, expect.stringContaining(words)])
      expect(await field(page, name).inputValue()).toBe(text)
      await page.click('.write-faults a')
      expect(await page.locator(':focus').getAttribute('id')).toBe(`field-${name}`)
    })
  })
})

describe('A draft', () => {
  it('saves by itself while it is typed in, says so, and says beside a field what was read', async () => {
    await asWriter({}, async (page) => {
      const id = await begin(page, 'kind=case')
      await fill(page, { title: 'Kept', 'structure.century': 'twelve' })
      await page.waitForFunction(() => document.getElementById('keep')?.textContent?.startsWith('Saved at'))
      expect(await typed(id)).toMatchObject({ title: 'Kept', 'structure.century': 'twelve' })
      const live = page.locator('[id="live-structure.century"]')
      expect(await live.textContent()).toContain('“twelve” is not a number')
    })
  })

  it('keeps in the browser what is typed without a connection, and offers it back', async () => {
    await asWriter(
      {},
      async (page) => {
        const id = await begin(page, 'kind=recipe')
        await page.route('**/api/drafts/*', (route) => route.abort('internetdisconnected'))
        await fill(page, { title: 'Typed on the scaffold' })
        await page.waitForFunction(() =>
          document.getElementById('keep')?.textContent?.startsWith('No connection'),
        )
        expect(await typed(id)).not.toHaveProperty('title')
        await page.unroute('**/api/drafts/*')
        await page.goto(`/write/${id}/ingredients`)
        await page.waitForSelector('#kept')
        await page.click('#kept button >> nth=0')
        await page.waitForFunction(() => localStorage.length === 0 && !document.getElementById('kept'))
        await page.goto(`/write/${id}/what`)
        expect(await field(page, 'title').inputValue()).toBe('Typed on the scaffold')
        expect(await typed(id)).toMatchObject({ title: 'Typed on the scaffold' })
      },
      /ERR_INTERNET_DISCONNECTED|failed:/,
    )
  })

  it('outlives the session that it was written in, also without JavaScript', async () => {
    await asWriter({ javaScriptEnabled: false }, async (page) => {
      const id = await begin(page, 'kind=source')
      await fill(page, { title: 'A book on lime' })
      await page.context().clearCookies()
      await press(page, 'next', /sign-in/)
      await page.context().addCookies([(await signIn(person, SITE)).cookie])
      await page.goto(`/write/${id}/both`)
      expect(await page.textContent('.write-form')).toContain('A book on lime')
      await page.check('input[name=title][value="0"]')
      await page.click('.write-form button[type=submit]')
      await page.waitForURL(/check/)
      expect(await typed(id)).toMatchObject({ title: 'A book on lime' })
    })
  })

  it('open in two tabs shows both where both typed, and overwrites neither', async () => {
    await asWriter({ javaScriptEnabled: false }, async (page) => {
      const id = await begin(page, 'kind=material')
      const other = await page.context().newPage()
      await other.goto(`/write/${id}/material`)
      await fill(page, { title: 'Grey lime', summary: 'Slakes slowly.' })
      await press(page, 'next', /figures$/)
      await fill(other, { title: 'Grey stone lime', 'region.name': 'Invented hills' })
      await press(other, 'next', /both\?step=material$/)
      const shown = await other.textContent('.write-form')
      expect([shown?.includes('Grey lime'), shown?.includes('Grey stone lime')]).toEqual([true, true])
      expect(await typed(id)).toMatchObject({
        title: 'Grey lime',
        summary: 'Slakes slowly.',
        'region.name': 'Invented hills',
      })
    })
  })

  it('open in two windows says so, and leads to both texts before it goes on', async () => {
    await asWriter({}, async (page) => {
      const id = await begin(page, 'kind=material')
      const other = await page.context().newPage()
      await other.goto(`/write/${id}/material`)
      await fill(page, { title: 'Grey lime', summary: 'Slakes slowly.' })
      await says(page, /^Saved at/)
      await fill(other, { title: 'Grey stone lime', summary: 'Slakes in a day.' })
      await says(other, /both texts are kept. See both/)
      await fill(other, { 'region.name': 'Invented hills' })
      await expect.poll(() => typed(id), SLOW).toMatchObject({ 'region.name': 'Invented hills' })
      await says(other, /both texts are kept. See both/)
      // Whoever goes on without having looked is led there.
      await press(other, 'next', /both\?step=material$/)
      const shown = await other.textContent('.write-form')
      for (const text of ['Grey lime', 'Grey stone lime', 'Slakes slowly.', 'Slakes in a day.'])
        expect(shown).toContain(text)
      expect(await lookOver(other, 'write-both')).toEqual([])
      await other.check('input[name=title][value="0"]')
      await other.check('input[name=summary][value=all]')
      await other.click('.write-form button[type=submit]')
      await other.waitForURL(/\/material$/)
      expect(await typed(id)).toMatchObject({
        title: 'Grey stone lime',
        summary: 'Slakes slowly.\nSlakes in a day.',
        'region.name': 'Invented hills',
      })
      await says(page, /also changed in another window.* Show it as it stands/)
      await page.click('#keep a')
      await expect.poll(() => field(page, 'title').inputValue(), SLOW).toBe('Grey stone lime')
    })
  })

  it('typed in two windows without a connection, and both closed, comes back whole', async () => {
    await asWriter(
      {},
      async (page) => {
        const id = await begin(page, 'kind=material')
        const context = page.context()
        const windows = [await context.newPage(), await context.newPage()] as const
        for (const window of windows) await window.goto(`/write/${id}/material`)
        await context.setOffline(true)
        for (const [window, title] of [
          [windows[0], 'Grey lime'],
          [windows[1], 'Grey stone lime'],
        ] as const) {
          await fill(window, { title })
          await says(window, /^No connection/)
        }
        for (const window of windows) await window.close()
        await context.setOffline(false)
        await page.goto(`/write/${id}/figures`)
        await page.waitForSelector('#kept')
        await page.click('#kept button >> nth=0')
        await page.waitForURL(/both$/)
        const shown = await page.textContent('.write-form')
        expect([shown?.includes('Grey lime'), shown?.includes('Grey stone lime')]).toEqual([true, true])
        expect(await page.evaluate(() => localStorage.length)).toBe(0)
      },
      /ERR_INTERNET_DISCONNECTED|failed:/,
    )
  })

  it('sent in one window keeps what is typed in the other, and begins a further version with it', async () => {
    await asWriter({}, async (page) => {
      const id = await begin(page, 'kind=source')
      await submitDraft(person.member, {
        ...{ id, version: 1, slug: `sent-${id}`, note: 'First.' },
        body: { type: 'book', title: 'On lime', interests: 'none', invented: false },
      })
      await fill(page, { title: 'On lime, second edition' })
      await says(page, /sent elsewhere.* See it/)
      await page.click('#keep a')
      await page.waitForURL(/[0-9a-f]$/)
      expect(await page.textContent('#late')).toContain('On lime, second edition')
      expect(await lookOver(page, 'write-late')).toEqual([])
      await page.click('#late .write-begin button')
      await page.waitForURL(/both$/)
      expect(await page.textContent('.write-form')).toContain('On lime, second edition')
    })
  })

  it('beside a version that came between names each field as the form does, and what either changed alone', async () => {
    const slug = `between-${v4().slice(0, 8)}`
    const works = [makeWork({ use: 'pointing' }), makeWork({ id: 'south', title: 'South face' })]
    const send = (body: object, basedOn: number | null) =>
      submit(person.member, makeSubmission({ kind: 'case', slug, basedOn, body }))
    await send(makeCase({ works }), null)
    await asWriter({}, async (page) => {
      const id = await begin(page, `from=${slug}@1`)
      const [first = makeWork(), second = makeWork()] = works
      const theirs = { areaM2: 12, weather: 'Mild.' }
      await send(makeCase({ works: [first, { ...second, ...theirs }] }), 1)
      await page.goto(`/write/${id}/work`)
      await fill(page, { 'works.1.areaM2': '14', 'works.0.areaM2': '3' })
      await says(page, /^Saved at/)
      await page.goto(`/write/${id}/merge`)
      expect(await page.locator('legend').allInnerTexts()).toEqual(['Work 2: South face, Area'])
      expect(await page.textContent('#taken')).toMatch(/Work 2: South face, Weather.*Mild\./)
      expect(await page.textContent('#kept')).toMatch(/Work 1: Repointing, Area.*3 m²/)
      expect(await lookOver(page, 'write-merge')).toEqual([])
      // A field without a choice is asked about again, and not given to either.
      await page.locator('.write-form').evaluate((form) => form.setAttribute('novalidate', ''))
      await page.click('.write-form button[type=submit]')
      await page.waitForURL(/look=choose/)
      expect(await faultLines(page)).toEqual(['Work 2: South face, Area: choose which of the two stands.'])
      await page.check('.write-choice input[value=yours]')
      await page.click('.write-form button[type=submit]')
      await page.waitForURL(/check$/)
      expect(await typed(id)).toMatchObject({
        ...{ 'works.1.areaM2': '14', 'works.0.areaM2': '3', 'works.1.weather': 'Mild.' },
      })
    })
  })

  it('is not offered back where the server has it', async () => {
    await asWriter({}, async (page) => {
      const id = await begin(page, 'kind=recipe')
      await fill(page, { title: 'Typed once' })
      await page.waitForFunction(() => document.getElementById('keep')?.textContent?.startsWith('Saved at'))
      await page.evaluate((draft) => {
        const changes = { title: { was: '', is: 'Typed once' }, chemistry: { was: '', is: 'Typed offline' } }
        localStorage.setItem(`putlog-draft-${draft}`, JSON.stringify({ at: '2026-01-01T12:00:00Z', changes }))
      }, id)
      await page.goto(`/write/${id}/ingredients`)
      await page.waitForSelector('#kept')
      const kept = () => page.evaluate(() => Object.values(localStorage).join())
      expect(await kept()).not.toContain('Typed once')
      await page.click('#kept button >> nth=0')
      await page.waitForFunction(() => localStorage.length === 0 && !document.getElementById('kept'))
      expect(await typed(id)).toMatchObject({ title: 'Typed once', chemistry: 'Typed offline' })
    })
  })

  it('is nobody else’s to see', async () => {
    await asWriter({}, async (page) => {
      const id = await begin(page, 'kind=case')
      const stranger = await signIn(await makePerson(), SITE)
      const answer = await fetch(`${SITE}/write/${id}/place`, { ...stranger, redirect: 'manual' })
      expect(answer.headers.get('location')).toContain('/write?gone=1')
      const post = async (more: object) =>
        await fetch(`${SITE}/api/drafts/${id}`, {
          method: 'POST',
          headers: { ...stranger.headers, 'Content-Type': 'application/json' },
          body: JSON.stringify({ step: 'place', changes: { title: { was: '', is: 'Mine' } }, ...more }),
        })
      expect((await post({})).status).toBe(404)
      // Its writer's browser must not take that for a draft that was discarded.
      for (const more of [{ by: person.key }, { begin: { kind: 'case' } }])
        expect((await post(more)).status).toBe(409)
    })
  })
})

/** Pages that guests are not shown; those about an entry are looked over where a case lives its life. */
describe('The pages of members', () => {
  it('fit 320 to 1280 pixels and paper, light and dark, and axe finds nothing on them', async () => {
    person = await makePerson({ roles: ['contributor', 'reviewer', 'steward'] })
    await asWriter({}, async (page) => {
      const look = async (name: string, path: string) => {
        await page.goto(path)
        expect([path, await lookOver(page, `member-${name}`)]).toEqual([path, []])
      }
      for (const path of ['write', 'write/new?kind=case', 'review', 'due', 'photos', 'account', 'steward'])
        await look(path.replace(/\W+/g, '-'), `/${path}`)
      const recipe = await begin(page, 'kind=recipe')
      await fill(page, { title: 'Looked over', standing: 'historical-only' })
      await press(page, 'next', /ingredients$/)
      await look('ingredients', `/write/${recipe}/ingredients?more=ingredients`)
      await look('refused', `/write/${recipe}/check?look=all`)
      const visit = await begin(page, 'of=quollbrook-barn')
      for (const step of ['photos', 'measured']) await look(step, `/write/${visit}/${step}`)
    })
  })
})
