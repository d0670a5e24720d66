import type { Browser, Page } from 'playwright-core'
import sharp from 'sharp'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb } from '#lib/db/client.ts'
import { listDrafts, ownDraft } from '#lib/db/drafts.ts'
import { discardDraft } from '#lib/workflow/draft-begin.ts'
import { restore, withdraw } from '#lib/workflow/withdraw.ts'
import { jpeg } from '../photos/pictures.ts'
import { joinSite, makePerson, type Person, signIn } from '../support/people.ts'
import { follow, openBrowser, openPage } from './browser.ts'
import { lookOver } from './look-over.ts'
import { firstCase, SITE } from './pages.ts'
import { openRelay, type Relay } from './relay.ts'
import { send } from './sending.ts'
import { begin, field, fill } from './writing.ts'

let browser: Browser
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

/** A busy machine may be long about it. */
const PATIENCE = { timeout: 60_000, interval: 100 }

/** A phone with a worker, and a signal that can be cut. What fails for want of a signal, or is refused, is no trouble. */
async function onSite(
  person: Person | null,
  walk: (page: Page, relay: Relay) => Promise<void>,
): Promise<void> {
  const relay = await openRelay(SITE)
  const options = {
    baseURL: relay.url,
    viewport: { width: 360, height: 780 },
    serviceWorkers: 'allow',
  } as const
  const { page, trouble } = await openPage(browser, options)
  try {
    if (person) await page.context().addCookies([(await signIn(person, relay.url)).cookie])
    await walk(page, relay)
    expect(trouble.filter((one) => !/ERR_|failed: |status of (?:40[149]|50[23])/.test(one))).toEqual([])
  } finally {
    await page.context().close()
    await relay.close()
  }
}

/** Until the worker answers for the page and holds these addresses. */
async function holds(page: Page, ...paths: string[]): Promise<void> {
  const held = () =>
    page.evaluate(async (addresses) => {
      const found = await Promise.all(addresses.map((one) => caches.match(one, { ignoreVary: true })))
      const lacking = addresses.filter((_, at) => found[at] === undefined)
      return [navigator.serviceWorker.controller?.state, ...lacking]
    }, paths)
  await expect.poll(held, PATIENCE).toEqual(['activated'])
}

const note = (page: Page) => page.locator('#kept-copy')
const isBack = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event('online')))

describe('What a home screen is told', () => {
  interface Manifest {
    readonly name: string
    readonly start_url: string
    readonly icons: readonly { readonly src: string; readonly sizes: string; readonly type: string }[]
  }

  it('is named by every page, and names pictures that are there in the size it says', async () => {
    const html = await (await fetch(SITE)).text()
    const [, address = ''] = /<link rel="manifest" href="([^"]+)"/.exec(html) ?? []
    const manifest = (await (await fetch(SITE + address)).json()) as Manifest
    expect(manifest).toMatchObject({ name: 'Putlog', start_url: '/' })
    for (const { src, sizes, type } of manifest.icons) {
      const answer = await fetch(SITE + src)
      expect([src, answer.headers.get('content-type')]).toEqual([src, type])
      const { width, height } = await sharp(Buffer.from(await answer.arrayBuffer())).metadata()
      if (sizes !== 'any') expect([src, `${width}x${height}`]).toEqual([src, sizes])
    }
    expect(manifest.icons.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']))
  })

  it('is a worker that is asked about each time', async () => {
    const { status, headers } = await fetch(`${SITE}/worker.js`)
    expect([status, headers.get('cache-control')]).toEqual([200, 'no-cache'])
    expect(headers.get('content-type')).toContain('text/javascript')
  })
})

describe('With no signal', () => {
  it('an opened job sheet can be read, says from when it is, and a page never opened says what is kept', async () => {
    await onSite(null, async (page, relay) => {
      const job = '/recipes/hot-lime-for-rubble/job'
      await page.goto(job)
      const title = await page.textContent('h1')
      expect(await note(page).count()).toBe(0)
      await holds(page, job, '/kept')
      await relay.cut()

      await page.goto(job)
      expect(await page.textContent('h1')).toBe(title)
      expect(await note(page).textContent()).toMatch(/Kept copy from .+; no signal\./)
      const { border, frame } = await page.evaluate(() => ({
        border: getComputedStyle(document.querySelector('#kept-copy .notice') as Element).borderTopStyle,
        frame: getComputedStyle(document.querySelector('.skip') as Element).position,
      }))
      expect([border, frame]).toEqual(['solid', 'absolute'])
      await page.emulateMedia({ media: 'print' })
      expect(await note(page).isVisible()).toBe(true)
      await page.emulateMedia({ media: 'screen' })

      await page.goto('/tables')
      expect(await note(page).textContent()).toContain('There is no signal')
      await page.locator(`.kept-list a[href="${job}"]`).waitFor()

      await relay.mend()
      await page.goto(job)
      expect(await note(page).count()).toBe(0)
    })
  })

  it('and with a site that is away, an opened page is shown as it was kept, and what was never opened says so', async () => {
    await onSite(null, async (page, relay) => {
      const guide = '/guides/quicklime-and-slaking'
      await page.goto(guide)
      const title = await page.textContent('h1')
      await holds(page, guide, '/kept')
      await relay.away()
      await page.goto(guide)
      expect(await page.textContent('h1')).toBe(title)
      expect(await note(page).textContent()).toMatch(/Kept copy from .+; the site cannot answer just now\./)
      const answer = await page.goto('/tables')
      expect([answer?.status(), await page.textContent('body')]).toEqual([502, 'away'])
      await relay.mend()
      await page.goto(guide)
      expect(await note(page).count()).toBe(0)
    })
  })

  it('an entry withdrawn since says so over its copy once there is a signal, and from then on', async () => {
    const { member } = await makePerson({ roles: ['steward'] })
    const slug = 'cement-render-over-earth'
    const order = () => ({ key: v4(), slug, words: 'To see what becomes of copies.' })
    await onSite(null, async (page, relay) => {
      const recipe = `/recipes/${slug}`
      await page.goto(recipe)
      await holds(page, recipe, '/kept')
      await relay.cut()
      await page.goto(recipe)
      expect(await note(page).textContent()).not.toContain('withdrawn')
      await withdraw(member, order())
      try {
        await relay.mend()
        await isBack(page)
        await note(page).getByText('was withdrawn since').waitFor()
        await relay.cut()
        await page.goto(recipe)
        expect(await note(page).textContent()).toContain('was withdrawn since')
      } finally {
        await restore(member, order())
      }
    })
  })
})

describe('What is kept for somebody who is signed in', () => {
  it('can be read with no signal, and is gone once they sign out', async () => {
    const person = await makePerson()
    await onSite(person, async (page, relay) => {
      const id = await begin(page, 'kind=recipe')
      const [what, parts] = [`/write/${id}/what`, `/write/${id}/ingredients`]
      await page.goto(what)
      // The other steps are kept with the one that was opened.
      await holds(page, what, parts, '/kept')
      await relay.cut()
      await page.goto(parts)
      expect(await note(page).textContent()).toContain('kept in this browser')

      await relay.mend()
      await page.goto('/account')
      await page.click('#sign-out button[type=submit]')
      await page.waitForURL(({ pathname }) => pathname === '/')
      const stores = () => page.evaluate(() => caches.keys())
      await expect.poll(stores, PATIENCE).not.toContainEqual(expect.stringContaining(person.key))
      await relay.cut()
      await page.goto(what)
      expect(await note(page).textContent()).toContain('There is no signal')
    })
  })
})

describe('A photo that only its owner may see', () => {
  it('is kept for nobody before a page said who reads, and then for its owner alone', async () => {
    const person = await makePerson()
    await onSite(null, async (page, relay) => {
      await page.goto('/about')
      await holds(page, '/about', '/kept')
      const signed = await signIn(person, relay.url)
      const photo = `/photos/${await send(signed.headers, await jpeg({ seed: 431 }))}/320.webp`
      await page.context().addCookies([signed.cookie])
      const look = () => page.evaluate(async (address) => (await fetch(address)).status, photo)
      /** Names of the stores that hold it. */
      const stores = () =>
        page.evaluate(async (address) => {
          const names = await caches.keys()
          const held = await Promise.all(names.map(async (name) => (await caches.open(name)).match(address)))
          return names.filter((_, at) => held[at] !== undefined)
        }, photo)
      expect(await look()).toBe(200)
      await page.goto('/about')
      await expect
        .poll(() => page.evaluate(() => caches.keys()), PATIENCE)
        .toContain(`putlog-pages-${person.key}`)
      expect(await stores()).toEqual([])
      expect(await look()).toBe(200)
      await expect.poll(stores, PATIENCE).toEqual([`putlog-photos-${person.key}`])
    })
  })
})

describe('What is typed into a draft with no signal', () => {
  const title = 'Typed on the scaffold'
  const typed = async (person: Person, id: string) => (await ownDraft(person.key, id))?.typed.title

  /** Types a title into a kept copy of a draft's first step; it waits in this browser. */
  async function typeAway(page: Page, relay: Relay): Promise<string> {
    const id = await begin(page, 'kind=recipe')
    const [what, parts] = [`/write/${id}/what`, `/write/${id}/ingredients`]
    await page.goto(what)
    await holds(page, what, parts, '/kept')
    await relay.cut()
    await page.goto(what)
    await expect.poll(() => note(page).textContent()).toContain('kept in this browser')
    await page.waitForSelector('#waiting', { state: 'attached' })
    await fill(page, { title })
    await expect.poll(() => page.textContent('#keep'), PATIENCE).toContain('not sent yet')
    await page.goto(parts)
    await expect.poll(() => page.textContent('#waiting'), PATIENCE).toContain('not sent yet')
    return id
  }

  it('stands in the form again, and goes up once when there is one', async () => {
    const person = await makePerson()
    await onSite(person, async (page, relay) => {
      const id = await typeAway(page, relay)
      await page.goto(`/write/${id}/what`)
      await expect.poll(() => field(page, 'title').inputValue(), PATIENCE).toBe(title)
      await relay.mend()
      await isBack(page)
      await expect.poll(() => page.textContent('#waiting'), PATIENCE).toContain('Sent')
      await expect.poll(() => page.evaluate(() => localStorage.length), PATIENCE).toBe(0)
      expect(await typed(person, id)).toBe(title)
      expect((await listDrafts(person.key)).drafts).toHaveLength(1)
      await page.goto(`/write/${id}/what`)
      expect(await field(page, 'title').inputValue()).toBe(title)
      expect(await page.locator('#kept').count()).toBe(0)
    })
  })

  it('waits while somebody else is signed in, and the page that was left open saves on once its writer is', async () => {
    const [person, other] = [await makePerson(), await makePerson()]
    await onSite(person, async (page, relay) => {
      const id = await typeAway(page, relay)
      await page.goto(`/write/${id}/what`)
      await expect.poll(() => field(page, 'title').inputValue(), PATIENCE).toBe(title)
      const states = () =>
        page.evaluate(() => Object.values(localStorage).map((text) => JSON.parse(text).about.state))
      await page.context().clearCookies()
      await page.context().addCookies([(await signIn(other, relay.url)).cookie])
      await relay.mend()
      await isBack(page)
      for (const place of ['#waiting', '#keep'])
        await expect.poll(() => page.textContent(place), PATIENCE).toContain('written by somebody else')
      const elsewhere = await page.context().newPage()
      await elsewhere.goto('/tables')
      await elsewhere.goto('/kept')
      await elsewhere.getByText('until its writer signs in').waitFor()
      expect([await states(), await typed(person, id)]).toEqual([['there'], undefined])

      await page.context().addCookies([(await signIn(person, relay.url)).cookie])
      await fill(page, { historicTerm: 'Typed on' })
      await expect.poll(() => page.textContent('#waiting'), PATIENCE).toContain('Sent')
      expect(await states()).toEqual([])
      expect((await ownDraft(person.key, id))?.typed).toMatchObject({ title, historicTerm: 'Typed on' })
    })
  })

  it('goes up from any page that is opened later, and the list of what waits says so', async () => {
    const person = await makePerson()
    await onSite(person, async (page, relay) => {
      const id = await typeAway(page, relay)
      await relay.mend()
      await page.goto('/kept')
      await page.locator('#begun').getByText('It has gone up').waitFor()
      expect(await page.evaluate(() => localStorage.length)).toBe(0)
      expect(await typed(person, id)).toBe(title)
    })
  })
})

describe('A draft that is begun with no signal', () => {
  const typed = async (person: Person, at = 0) => {
    const { drafts } = await listDrafts(person.key)
    const id = drafts[at]?.id
    return id === undefined ? undefined : (await ownDraft(person.key, id))?.typed
  }
  const waits = (page: Page) => page.evaluate(() => localStorage.length)
  const says = (page: Page) => expect.poll(() => page.textContent('#keep'), PATIENCE)
  let slug = ''
  beforeAll(async () => {
    slug = (await firstCase()).slice('/cases/'.length)
  })
  const visit = () => `/write/new?of=${slug}`
  const CASE = '/write/new?kind=case'

  /** Opens the page of a case while there is a signal, and goes where there is none. */
  async function goAway(page: Page, relay: Relay): Promise<void> {
    await page.goto(`/cases/${slug}`)
    await holds(page, `/cases/${slug}`, `/write/blank?of=${slug}`, '/write/blank?kind=case', '/kept')
    await relay.cut()
  }

  /** Begins a draft with no signal and types into its form; it waits in this browser. Resolves with its address. */
  async function beginAway(
    page: Page,
    begins: string,
    values: Readonly<Record<string, string>>,
  ): Promise<string> {
    await page.goto(begins)
    await page.waitForURL(/\/write\/blank\?.*key=/)
    await fill(page, values)
    await says(page).toContain('not sent yet')
    return page.url()
  }

  it('stands in its form again once that is opened anew, and goes up as one draft with all that was typed', async () => {
    const person = await makePerson()
    await onSite(person, async (page, relay) => {
      await goAway(page, relay)
      await page.goto(`/cases/${slug}`)
      await page.click(`a[href="${visit()}"]`)
      await page.waitForURL(/\/write\/blank\?.*key=/)
      expect(await note(page).textContent()).toContain('becomes a draft of yours')
      expect(await lookOver(page, 'blank-visit')).toEqual([])
      await fill(page, { on: '2026-05-17', 'observer.who': 'surveyor', 'observer.how': 'Typed at the wall' })
      await says(page).toContain('not sent yet')

      const later = await page.context().newPage()
      await page.close()
      await later.goto('/kept')
      const line = later.locator('#begun li a')
      await line.waitFor()
      expect(await lookOver(later, 'kept-begun')).toEqual([])
      await line.click()
      await expect.poll(() => field(later, 'observer.how').inputValue(), PATIENCE).toBe('Typed at the wall')
      expect(await field(later, 'observer.who').inputValue()).toBe('surveyor')
      await fill(later, { 'readings.0.instrument': 'Awl', 'harm.words': 'None seen' })
      await says(later).toContain('not sent yet')

      await relay.mend()
      await isBack(later)
      await says(later).toContain('It has gone up')
      await expect.poll(() => waits(later), PATIENCE).toBe(0)
      expect((await listDrafts(person.key)).drafts).toHaveLength(1)
      expect(await typed(person)).toMatchObject({
        ...{ case: slug, on: '2026-05-17', 'observer.who': 'surveyor', 'observer.how': 'Typed at the wall' },
        ...{ 'readings.0.instrument': 'Awl', 'harm.words': 'None seen' },
      })
      await follow(later, () => later.click('#keep a'))
      expect(new URL(later.url()).pathname).toMatch(/^\/write\/[0-9a-f-]{36}\/\w+$/)
      await later.goBack()
      expect(new URL(later.url()).pathname).toMatch(/^\/write\/[0-9a-f-]{36}\/seen$/)
      expect(await field(later, 'on').inputValue()).toBe('2026-05-17')
    })
  })

  it('stands at the work that it was asked for, and once discarded is not begun again by the page that is still open', async () => {
    const person = await makePerson()
    const lockup = 'currawong-marsh-lockup'
    await onSite(person, async (page, relay) => {
      await page.goto(`/cases/${lockup}`)
      await holds(page, `/write/blank?of=${lockup}`, '/kept')
      await relay.cut()
      const begins = `/write/new?kind=visit&of=${lockup}&work=south`
      const form = await beginAway(page, begins, { 'observer.how': 'From the ladder' })
      expect(new URL(form).searchParams.get('work')).toBe('south')
      expect(await field(page, 'work').inputValue()).toBe('south')
      await relay.mend()
      await isBack(page)
      await says(page).toContain('It has gone up')
      expect(await typed(person)).toMatchObject({ work: 'south', 'observer.how': 'From the ladder' })

      const [, id = ''] = /\/write\/([0-9a-f-]{36})\//.exec(page.url()) ?? []
      await discardDraft(person.member, id)
      await fill(page, { 'observer.how': 'From the ladder, twice' })
      await says(page).toContain('not there any more')
      await isBack(page)
      await page.goto('/kept')
      await page.locator('#begun').getByText('its draft was discarded').waitFor()
      expect((await listDrafts(person.key)).drafts).toEqual([])
    })
  })

  it('is one though two windows send it, and another one begun after it is a second', async () => {
    const person = await makePerson()
    await onSite(person, async (page, relay) => {
      await goAway(page, relay)
      const lost = await page.context().newPage()
      await relay.mend()
      await lost.goto(CASE)
      await page.context().setOffline(true)
      await lost.click('.write-begin button')
      await lost.waitForURL(/\/write\/blank\?kind=case/)
      await lost.close()
      await page.context().setOffline(false)
      await relay.cut()

      const typedFirst = {
        title: 'Byre by the ford',
        'works.0.title': 'Repointed',
        'exposure.frost': 'frequent',
      }
      const first = await beginAway(page, CASE, typedFirst)
      const [twin, second] = [await page.context().newPage(), await page.context().newPage()]
      await twin.goto(first)
      await expect.poll(() => field(twin, 'title').inputValue(), PATIENCE).toBe('Byre by the ford')
      expect(await field(twin, 'exposure.frost').inputValue()).toBe('frequent')
      await beginAway(second, CASE, { title: 'Kiln above it' })
      await relay.mend()
      await Promise.all([page, twin, second].map(isBack))
      for (const one of [page, twin, second]) await says(one).toContain('It has gone up')
      await expect.poll(() => waits(page), PATIENCE).toBe(0)
      const { drafts } = await listDrafts(person.key)
      expect(drafts.map(({ title, held }) => [title, held]).sort()).toEqual([
        ['Byre by the ford', false],
        ['Kiln above it', false],
      ])
      const at = drafts.findIndex(({ title }) => title === typedFirst.title)
      expect(await typed(person, at)).toMatchObject(typedFirst)
    })
  })

  it('waits for its writer who was signed out meanwhile, and is neither shown to nor sent as anybody else', async () => {
    const [person, other] = [await makePerson(), await makePerson()]
    await onSite(person, async (page, relay) => {
      await goAway(page, relay)
      const form = await beginAway(page, CASE, { title: 'Typed before the session ended' })
      await page.context().clearCookies()
      await relay.mend()
      await isBack(page)
      await says(page).toContain('You are signed out')

      await page.context().addCookies([(await signIn(other, relay.url)).cookie])
      await page.goto('/cautions')
      await page.goto('/kept')
      await page.getByText('until its writer signs in').waitFor()
      expect(await page.locator('#begun li').count()).toBe(0)
      await page.goto(form)
      await says(page).toContain('written by somebody else')
      expect(await page.locator('#step').isVisible()).toBe(false)
      expect([(await listDrafts(other.key)).drafts, await waits(page)]).toEqual([[], 1])

      await page.context().addCookies([(await signIn(person, relay.url)).cookie])
      await page.goto(form)
      await page.waitForURL(/\/write\/[0-9a-f-]{36}\/place$/)
      expect(await field(page, 'title').inputValue()).toBe('Typed before the session ended')
      expect([(await listDrafts(person.key)).drafts.length, await waits(page)]).toEqual([1, 0])
    })
  })

  it('to a case that was withdrawn meanwhile says so, and its text stays to be copied or thrown away', async () => {
    const { member } = await makePerson({ roles: ['steward'] })
    const person = await makePerson()
    const order = () => ({ key: v4(), slug, words: 'To see what becomes of a visit.' })
    await onSite(person, async (page, relay) => {
      await goAway(page, relay)
      const form = await beginAway(page, visit(), { 'observer.how': 'Nobody else' })
      await withdraw(member, order())
      try {
        await relay.mend()
        await isBack(page)
        await says(page).toContain('may have been withdrawn')
        await page.goto(form)
        await says(page).toContain('may have been withdrawn')
        expect(await field(page, 'observer.how').inputValue()).toBe('Nobody else')
        await page.goto('/kept')
        await page.click('#begun summary')
        expect(await waits(page)).toBe(1)
        await page.click('#begun details button')
        await expect.poll(() => page.locator('#begun').count(), PATIENCE).toBe(0)
        expect([await waits(page), (await listDrafts(person.key)).drafts]).toEqual([0, []])
      } finally {
        await restore(member, order())
      }
    })
  })

  it('without JavaScript is promised by nothing', async () => {
    const person = await makePerson()
    const { page } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
    await page.context().addCookies([(await signIn(person, SITE)).cookie])
    await page.goto(`/write/blank?of=${slug}`)
    expect(await page.locator('#step').isVisible()).toBe(false)
    expect(await page.locator('main').textContent()).toContain('takes JavaScript')
    expect(await page.locator(`main a[href="${visit()}&kind=visit"]`).isVisible()).toBe(true)
    await page.context().close()
  })
})

describe('A draft that is discarded in one window while another types', () => {
  it('leaves all that stands there in the browser, to begin another draft with', async () => {
    const person = await makePerson()
    await onSite(person, async (page) => {
      const id = await begin(page, 'kind=recipe')
      await page.goto(`/write/${id}/what`)
      await fill(page, { title: 'Saved before' })
      await expect.poll(() => page.textContent('#keep'), PATIENCE).toContain('Saved')
      const other = await page.context().newPage()
      await other.goto(`/write/${id}/check`)
      await other.click('.write-discard summary')
      await other.click('.write-discard button')
      await other.waitForURL('**/write')

      await fill(page, { historicTerm: 'Typed after' })
      await expect.poll(() => page.textContent('#keep'), PATIENCE).toContain('not there any more')
      await other.goto('/kept')
      await other.locator('#begun li a').waitFor()
      expect((await listDrafts(person.key)).drafts).toEqual([])
      await page.click('#keep a')
      const again = async () => {
        const [draft] = (await listDrafts(person.key)).drafts
        return draft && (await ownDraft(person.key, draft.id))?.typed
      }
      await expect.poll(again, PATIENCE).toMatchObject({ title: 'Saved before', historicTerm: 'Typed after' })
      await expect.poll(() => field(page, 'title').inputValue(), PATIENCE).toBe('Saved before')
      await expect.poll(() => page.evaluate(() => localStorage.length), PATIENCE).toBe(0)
    })
  })

  it('and the entry that it revised was withdrawn since, is shown what stood there all the same', async () => {
    const [person, { member }] = [await makePerson(), await makePerson({ roles: ['steward'] })]
    const slug = 'cement-render-over-earth'
    const order = () => ({ key: v4(), slug, words: 'To see what becomes of a correction.' })
    await onSite(person, async (page) => {
      const id = await begin(page, `from=${slug}`)
      await page.goto(`/write/${id}/what`)
      await discardDraft(person.member, id)
      await withdraw(member, order())
      try {
        await fill(page, { historicTerm: 'Typed after' })
        await expect.poll(() => page.textContent('#keep'), PATIENCE).toContain('not there any more')
        await follow(page, () => page.click('#keep a'))
        await expect.poll(() => field(page, 'historicTerm').inputValue(), PATIENCE).toBe('Typed after')
        await expect
          .poll(() => page.textContent('#keep'), PATIENCE)
          .toContain('is not there, or is not yours')
        expect((await listDrafts(person.key)).drafts).toEqual([])
      } finally {
        await restore(member, order())
      }
    })
  })
})
