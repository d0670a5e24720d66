import type { Browser, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { closeDb } from '#lib/db/client.ts'
import { joinSite, makePerson, type Person, signIn } from '../support/people.ts'
import { openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { SITE } from './pages.ts'
import { begin, fill, judge, LAST, press, putOnRecord, startHere, writeSteps } from './writing.ts'

let browser: Browser
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

/** A page in somebody's own browser; without JavaScript every form still has to do. */
async function pageOf(person: Person | null, javaScriptEnabled: boolean): Promise<Page> {
  const { page } = await openPage(browser, {
    baseURL: SITE,
    javaScriptEnabled,
    viewport: { width: 360, height: 800 },
  })
  page.setDefaultTimeout(120_000)
  if (person) await page.context().addCookies([(await signIn(person, SITE)).cookie])
  return page
}

it.each([
  ['with JavaScript', true],
  ['without JavaScript', false],
])(
  'a case is written, returned, corrected, published, visited by another, disputed, answered, revised, compared and cited %s',
  async (_, script) => {
    const mark = v4().slice(0, 6)
    const [slug, title] = [`life-${mark}`, `Byre wall ${mark}`]
    const [author, visitor, reviewer] = await Promise.all([
      makePerson({ name: `Mason ${mark}` }),
      makePerson({ name: `Visitor ${mark}` }),
      makePerson({ name: `Reader ${mark}`, roles: ['reviewer'] }),
    ])
    const [mason, desk, other, guest] = await Promise.all([
      pageOf(author, script),
      pageOf(reviewer, script),
      pageOf(visitor, script),
      pageOf(null, script),
    ])
    // Both ways are walked; looking each page over once is enough.
    const look = async (page: Page, name: string) => {
      if (script) expect([name, await lookOver(page, `life-${name}`)]).toEqual([name, []])
    }

    const draft = await begin(mason, 'kind=case')
    await look(mason, 'place')
    await writeSteps(mason, draft, {
      place: {
        title,
        'place.country': 'EE',
        'place.region': 'Invented county',
        'structure.type': 'farm-building',
      },
      fabric: { 'fabric.units.0.unit': 'paekivi', 'fabric.wall': 'rubble-coursed' },
      work: {
        'works.0.title': 'Repointing',
        'works.0.use': 'pointing',
        'works.0.started': '2010-05',
        'works.0.finished': '2010-06',
        'works.0.areaM2': '1',
      },
      mortar: { 'mortars.0.where': 'Core', 'mortars.0.description': 'Soft and white.' },
      check: { ...LAST, 'entry.slug': slug },
    })
    expect((await guest.goto(`/entries/${slug}/versions`))?.status()).toBe(404)

    await judge(desk, title, {
      outcome: 'return',
      words: 'One square metre of a byre?',
      on: { 'works[repointing].areaM2': 'Is it not 12?' },
    })
    await look(desk, 'item')
    await putOnRecord(desk)
    await mason.goto('/notices')
    expect(await mason.locator('.index').textContent()).toContain('returned a version')
    await look(mason, 'notices')
    await mason.goto(`/write/${draft}`)
    expect(await mason.locator('main').textContent()).toContain('Area: Is it not 12?')
    await look(mason, 'came-back')
    await mason.getByRole('link', { name: 'Correct it' }).click()
    await mason.waitForURL('**/write/new?**')
    const corrected = await startHere(mason)
    expect(mason.url()).toContain(`${corrected}/work`)
    expect(await mason.locator('[id="field-works.0.areaM2-hint"]').textContent()).toContain('Is it not 12?')
    await look(mason, 'corrected')
    await writeSteps(mason, corrected, {
      work: { 'works.0.areaM2': '12' },
      check: { ...LAST, 'entry.note': 'The area, measured again.' },
    })
    await judge(desk, title, { outcome: 'publish', words: 'Read against the photographs.' })
    expect(await desk.locator('#changes .change').first().textContent()).toContain('12')
    await putOnRecord(desk)
    await guest.goto(`/cases/${slug}`)
    expect(await guest.locator('#cite').textContent()).toContain(`Mason ${mark}`)

    await other.goto(`/cases/${slug}`)
    await other.getByRole('link', { name: 'Add a visit' }).click()
    await other.waitForURL('**/write/new?**')
    const visit = await startHere(other)
    expect(await other.locator('main').textContent()).toContain(title)
    await fill(other, { on: '31.02.2019' })
    await press(other, 'next', /look=mend/)
    expect(await other.locator('.write-faults').textContent()).toContain(
      '“31.02.2019” is not in the calendar',
    )
    await look(other, 'seen')
    await writeSteps(other, visit, {
      seen: { on: '12.6.2019', joint: 'worn', unit: 'sound', damp: 'dry' },
      observer: { 'observer.who': 'other-practitioner', 'observer.how': 'From a ladder.' },
      check: { interests: 'None', 'rights.licence': 'on', 'entry.slug': `${slug}-v` },
    })
    await judge(desk, title, { outcome: 'publish', words: 'Joint and stone are both read.' })
    expect(await desk.locator('#changes').textContent()).toContain('Summer')
    await putOnRecord(desk)
    await mason.goto('/notices')
    expect(await mason.locator('.index').textContent()).toContain('Somebody else’s visit')
    await mason.goto(`/cases/${slug}`)
    await mason.getByRole('link', { name: 'Answer beside it' }).click()
    await mason.waitForURL('**/answer')
    await mason.fill('#answer [name=words]', 'The gutter had burst that week.')
    await mason.click('#answer button[type=submit]')
    await mason.waitForURL('**/versions')
    await guest.goto(`/cases/${slug}`)
    expect(await guest.locator('.answer').textContent()).toContain('The gutter had burst that week.')
    expect(await guest.getByRole('link', { name: 'Answer beside it' }).count()).toBe(0)

    await other.goto(`/entries/${slug}/dispute`)
    await other.fill('#dispute [name=words]', 'The mortar was repointed in 2012.')
    await other.click('#dispute button[type=submit]')
    await other.waitForURL('**/versions')
    await guest.goto(`/cases/${slug}`)
    await look(guest, 'disputed')
    expect(await guest.locator('.notice-caution').first().textContent()).toContain('Disputed')
    await desk.goto(`/review/disputes/${slug}`)
    await look(desk, 'dispute')
    await desk.fill('#rule [name=words]', 'The earlier work is in the record now.')
    await desk.click('form#rule button[type=submit]')
    await desk.waitForURL('**/review')

    const revised = await begin(other, `from=${slug}`)
    await other.goto(`/write/${revised}/check`)
    // The entry has its address, for good.
    expect(await other.locator('[name="entry.slug"]').count()).toBe(0)
    await writeSteps(other, revised, {
      check: {
        ...LAST,
        summary: 'A byre wall beside a ford, repointed once before in a harder mortar.',
        'entry.note': 'Says what was there.',
      },
    })
    await judge(desk, title, { outcome: 'publish', words: 'Agrees with the dispute.' })
    await putOnRecord(desk)

    await guest.goto(`/entries/${slug}/versions`)
    // Nobody but its author and the reviewers may read what was returned.
    expect(await guest.locator('[name=from] option').allTextContents()).toEqual(['3', '2'])
    await look(guest, 'versions')
    await guest.click('.compare-form button')
    await guest.waitForURL('**/compare?**')
    await look(guest, 'compare')
    expect(await guest.locator('.changes').textContent()).toContain('beside a ford')
    await guest.goto(`/entries/${slug}/cite?revision=3`)
    await look(guest, 'cite')
    const bibtex = await (await fetch(`${SITE}/entries/${slug}/cite/bibtex?revision=3`)).text()
    expect(bibtex).toContain(`@misc{${slug}-3,`)
    expect(bibtex).toContain(`author = {{Mason ${mark}} and {Visitor ${mark}}},`)
    expect((await guest.goto(`/entries/${slug}/versions/9`))?.status()).toBe(404)
    const history = await (await fetch(`${SITE}/api/v1/entries/${slug}/versions`)).json()
    expect(history).toMatchObject({
      published: 3,
      disputed: false,
      versions: [{ number: 3 }, { number: 2 }, { number: 1 }],
    })
    for (const page of [desk, mason, other, guest]) await page.context().close()
  },
  600_000,
)

it('publishing unread is refused, and nothing typed is lost', async () => {
  const mark = v4().slice(0, 6)
  const title = `Lime of a hill ${mark}`
  const [author, reviewer] = await Promise.all([makePerson(), makePerson({ roles: ['reviewer'] })])
  const [mason, desk] = await Promise.all([pageOf(author, false), pageOf(reviewer, true)])
  const draft = await begin(mason, 'kind=material')
  await writeSteps(mason, draft, {
    material: { title, summary: 'Slakes slowly.', role: 'lime', standing: 'in-use' },
    check: LAST,
  })
  await judge(desk, title, { outcome: 'return', words: 'Where from?' })
  await desk.selectOption('#judge [name=outcome]', 'publish')
  await desk.click('#judge button[type=submit]')
  await desk.waitForSelector('#judge .act-wrong')
  expect(await desk.inputValue('#judge [name=words]')).toBe('Where from?')
  for (const page of [desk, mason]) await page.context().close()
}, 300_000)
