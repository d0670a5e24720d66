import { createHash } from 'node:crypto'
import { request } from 'node:http'
import type { Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb, db } from '#lib/db/client.ts'
import { ownDraft } from '#lib/db/drafts.ts'
import { erasePhotoIn, removePhotoFiles } from '#lib/workflow/photo-erase.ts'
import { heavy, jpeg, telephonePicture } from '#test/photos/pictures.ts'
import { joinSite, makePerson, signIn } from '#test/support/people.ts'
import { follow, openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'
import { announce, append, at, type Headers, outcome, piece, send } from './sending.ts'
import { begin, press } from './writing.ts'

/** A busy machine takes its time. */
const SLOW = { timeout: 60_000 }
let mason: Headers = {}
let other: Headers = {}
let reviewer: Headers = {}

beforeAll(async () => {
  joinSite()
  const person = async (...roles: ('contributor' | 'reviewer')[]) => {
    const { headers } = await signIn(await makePerson({ roles }))
    return headers
  }
  mason = await person('contributor')
  other = await person('contributor')
  reviewer = await person('reviewer')
})
afterAll(closeDb)

describe('an upload over HTTP', () => {
  it('brings 25 MB through in one request', async () => {
    const file = await heavy(24.9)
    const [key, sha256] = [v4(), createHash('sha256').update(file).digest('hex')]
    const begun = await announce(mason, { key, size: file.length, sha256 })
    expect([begun.status, begun.headers.get('location')]).toEqual([201, `/api/v1/photos/${key}`])
    const sent = await append(mason, key, 0, file)
    expect([sent.status, sent.headers.get('upload-offset')]).toEqual([200, String(file.length)])
    expect(await outcome(mason, key)).toMatchObject({ state: 'ready', offset: file.length, fault: null })
  })

  it('keeps what came before a cut, says where to go on, and refuses any other place', async () => {
    const file = await jpeg({ seed: 101 })
    const key = v4()
    await announce(mason, { key, size: file.length })
    await cutAfter(key, file.subarray(0, 30_000))
    const place = async () => {
      const told = await fetch(at(key), { method: 'HEAD', headers: mason })
      return [told.headers.get('upload-offset'), told.headers.get('upload-complete')]
    }
    await expect.poll(place, SLOW).toEqual(['30000', '?0'])
    const wrong = await append(mason, key, 0, file)
    expect([wrong.status, wrong.headers.get('upload-offset')]).toEqual([409, '30000'])
    await append(mason, key, 30_000, file.subarray(30_000))
    expect(await outcome(mason, key)).toMatchObject({ state: 'ready' })
  })

  /** Sends the head of a body and hangs up. */
  const cutAfter = (key: string, head: Uint8Array) =>
    new Promise<void>((resolve) => {
      const sending = request(at(key), {
        method: 'PATCH',
        headers: { ...mason, ...piece(0), 'Content-Length': '999999' },
      })
      sending.on('error', () => resolve())
      sending.write(head)
      setTimeout(() => sending.destroy(new Error('cut')), 500)
    })

  it('says in words what is wrong with a file', async () => {
    const key = v4()
    const words = Buffer.from('a wall of words')
    await announce(mason, { key, size: words.length })
    await append(mason, key, 0, words)
    expect(await outcome(mason, key)).toMatchObject({
      state: 'refused',
      fault: { code: 'photo-kind', detail: expect.stringContaining('not a JPEG, PNG or WebP') },
    })
    const large = { key: v4(), size: 30 * 1024 * 1024 }
    const refused = await announce(mason, large)
    expect(refused.status).toBe(422)
    expect(await refused.text()).toContain('more than 25 MB')
    const spanish = { ...mason, 'x-putlog-language': 'es' }
    expect(await (await announce(spanish, large)).text()).toContain('más de 25 MB')
    expect(await outcome(spanish, key)).toMatchObject({
      fault: { detail: expect.stringContaining('no es una imagen JPEG, PNG o WebP') },
    })
  })

  it('asks for a person who may, a page of ours, the type and the place', async () => {
    const told = { key: v4(), size: 10 }
    const statuses = [
      await announce({}, told),
      await announce(reviewer, told),
      await announce({ ...mason, 'sec-fetch-site': 'cross-site' }, told),
      await fetch(at(v4()), { headers: mason }),
      await fetch(at('no-key'), { headers: mason }),
      await fetch(at(told.key), { method: 'PATCH', headers: mason, body: 'x' }),
      await fetch(at(told.key), {
        method: 'PATCH',
        headers: { ...mason, 'Content-Type': 'application/partial-upload' },
        body: 'x',
      }),
    ].map(({ status }) => status)
    expect(statuses).toEqual([401, 403, 403, 404, 404, 415, 400])
  })

  it('is forgotten when given up', async () => {
    const key = v4()
    await announce(mason, { key, size: 10 })
    expect((await fetch(at(key), { method: 'DELETE', headers: mason })).status).toBe(204)
    expect((await fetch(at(key), { headers: mason })).status).toBe(404)
  })
})

describe('a plain form', () => {
  const back = (path: string) => new URLSearchParams({ back: path })

  it('takes photos without a script and leads back with what became of each', async () => {
    const form = new FormData()
    form.set('key', v4())
    form.append('photo', new Blob([new Uint8Array(await telephonePicture({ seed: 102 }))]), 'wall.jpg')
    form.append('photo', new Blob(['words']), 'wall.txt')
    form.append('photo', new Blob([]), 'empty.jpg')
    form.append('photo', new Blob([new Uint8Array(25 * 1024 * 1024 + 1)]), 'large.jpg')
    const answer = await fetch(`${SITE}/photos/add?${back('/write?step=photos#added')}`, {
      method: 'POST',
      headers: mason,
      body: form,
      redirect: 'manual',
    })
    expect(answer.status).toBe(303)
    expect(answer.headers.get('location')).toMatch(
      /^\/write\?step=photos&photo=[0-9a-f]{64}&photoFault=photo-kind&photoFault=photo-empty&photoFault=photo-too-large%7E%7E25#added$/,
    )
  })

  it('that is none, or is cut off, is refused', async () => {
    const post = (headers: Headers, body: string) =>
      fetch(`${SITE}/photos/add`, { method: 'POST', headers: { ...mason, ...headers }, body })
    const multipart = { 'Content-Type': 'multipart/form-data; boundary=x' }
    const cut = '--x\r\nContent-Disposition: form-data; name="photo"; filename="a.jpg"\r\n\r\nhalf'
    expect([(await post({}, 'words')).status, (await post(multipart, cut)).status]).toEqual([422, 422])
  })

  it('is refused in the language of its page, with the way back there', async () => {
    const refused = async (path: string, headers: Headers = {}) => {
      const body = new FormData()
      body.set('key', 'none')
      const answer = await fetch(`${SITE}/photos/add?${back(path)}`, { method: 'POST', headers, body })
      return [answer.status, await answer.text()]
    }
    const [status, page] = await refused('/es/photos?a="<b>')
    expect(status).toBe(401)
    expect(page).toContain('<html lang="es">')
    expect(page).toContain('Iniciar sesión primero.')
    expect(page).toContain('href="/es/photos?a=&#34;&#60;b&#62;"')
    expect(await refused('/es/photos', mason)).toEqual([
      422,
      expect.stringContaining('Al formulario le falta su clave.'),
    ])
    expect(await refused('/photos', mason)).toEqual([422, expect.stringContaining('The form lacks its key')])
  })

  it('leads to no other site, and says when no file was chosen', async () => {
    const form = new FormData()
    form.set('key', v4())
    const answer = await fetch(`${SITE}/photos/add?${back('//elsewhere.example/')}`, {
      method: 'POST',
      headers: mason,
      body: form,
      redirect: 'manual',
    })
    expect(answer.headers.get('location')).toBe('/account?photoFault=required')
  })
})

describe('a picture', () => {
  const get = (sha256: string, headers: Headers = {}, file = '320.webp') =>
    fetch(`${SITE}/photos/${sha256}/${file}`, { headers })

  it('is its sender’s and the reviewers’ until it is published, and gone once erased', async () => {
    const sha256 = await send(mason, await jpeg({ seed: 103, width: 640, height: 480 }))
    const seen = async () =>
      Promise.all([{}, other, mason, reviewer].map(async (who) => (await get(sha256, who)).status))
    expect(await seen()).toEqual([404, 404, 200, 200])
    expect((await get(sha256, mason)).headers.get('cache-control')).toBe('private, no-cache')
    const erasure = { sha256, by: 'steward-of-tests', reason: 'A face.', at: new Date() }
    await db().$transaction((tx) => erasePhotoIn(tx, erasure))
    await removePhotoFiles(sha256)
    expect(await seen()).toEqual([410, 410, 410, 410])
  })

  it('of a published visit is served to anyone, to be kept, and not sent twice', async () => {
    const { visits } = (await (await fetch(`${SITE}/api/v1/cases/quollbrook-barn`)).json()) as {
      visits: { body: { photos?: { sha256: string }[] } }[]
    }
    const sha256 = visits.flatMap(({ body }) => body.photos ?? [])[0]?.sha256 ?? ''
    const answer = await get(sha256)
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'image/webp',
      'cache-control': 'public, no-cache',
      'x-content-type-options': 'nosniff',
    })
    expect(answer.headers.get('set-cookie')).toBeNull()
    const tag = answer.headers.get('etag') ?? ''
    expect((await get(sha256, { 'If-None-Match': tag })).status).toBe(304)
    expect((await get(sha256, {}, 'kept.jpg')).headers.get('content-type')).toBe('image/jpeg')
    for (const file of ['999.webp', '320.gif', '..%2f..%2fkeys'])
      expect((await get(sha256, {}, file)).status).toBe(404)
  })
})

describe('one’s own photos', () => {
  it('are sent through a cut, refused by name, and deleted', async () => {
    const browser = await openBrowser()
    try {
      const { cookie } = await signIn(await makePerson({ roles: ['contributor'] }), SITE)
      const { page } = await openPage(browser, { baseURL: SITE })
      await page.context().addCookies([cookie])
      let pieces = 0
      await page.route('**/api/v1/photos/*', (route) => {
        if (route.request().method() === 'PATCH') pieces += 1
        // Of the second piece the answer is lost, as when a telephone leaves the cell.
        return pieces === 2 && route.request().method() === 'PATCH'
          ? route.abort('connectionreset')
          : route.continue()
      })
      await page.goto('/photos')
      const file = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer })
      const large = await heavy(2.5)
      await page
        .getByLabel('Choose photos')
        .setInputFiles([file('wall.png', large), file('words.jpg', Buffer.from('a wall of words'))])
      await page.getByText('this file is not a JPEG, PNG or WebP picture').waitFor()
      await page.getByRole('button', { name: 'Leave out: words.jpg' }).click()
      await expect.poll(() => page.locator('.photo-grid figure').count(), SLOW).toBe(1)
      expect(pieces).toBeGreaterThan(3)
      await page.getByRole('button', { name: 'Delete for good' }).click()
      await expect.poll(() => page.locator('.photo-grid figure').count(), SLOW).toBe(0)
      await expect.poll(() => focused(page), SLOW).toMatch(/^Deleted for good: the photo sent on /)
    } finally {
      await browser.close()
    }
  })

  it('are sent by a plain form where there is no script', async () => {
    const browser = await openBrowser()
    try {
      const { cookie } = await signIn(await makePerson({ roles: ['contributor'] }), SITE)
      const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
      await page.context().addCookies([cookie])
      await page.goto('/photos')
      const buffer = await jpeg({ seed: 104, width: 640, height: 480 })
      await page
        .getByLabel('Choose photos')
        .setInputFiles({ name: 'wall.jpg', mimeType: 'image/jpeg', buffer })
      await page.getByRole('button', { name: 'Send these photos' }).click()
      await page.getByText('Ready: 1 photo.').waitFor()
      expect(await page.locator('.photo-grid figure').count()).toBe(1)
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })
})

/** What the element that has the focus says. */
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? '')

describe('the pictures of a visit', () => {
  const small = (seed: number) => jpeg({ seed, width: 640, height: 480 })
  const chosen = (name: string, buffer: Buffer) => ({ name, mimeType: 'image/jpeg', buffer })
  const digests = (page: Page) =>
    page
      .locator('input[name^="photos."][name$=".sha256"]')
      .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value))

  /** A draft of a visit to a case of the demo, open at its pictures. */
  async function draftOf(javaScriptEnabled: boolean) {
    const browser = await openBrowser()
    const person = await makePerson({ roles: ['contributor'] })
    const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled })
    await page.context().addCookies([(await signIn(person, SITE)).cookie])
    const id = await begin(page, 'of=quollbrook-barn')
    await page.goto(`/write/${id}/photos`)
    const stored = async () => {
      const draft = await ownDraft(person.key, id)
      const typed = Object.entries(draft?.typed ?? {}).filter(([name]) => /^photos\.\d+\.sha256$/.test(name))
      return { held: draft?.held, shown: typed.map(([, sha]) => sha).sort() }
    }
    return { browser, page, trouble, id, stored }
  }

  it('stand in it once, from one window or two, and leave it with words and the focus beside them', async () => {
    const { browser, page, trouble, id, stored } = await draftOf(true)
    try {
      const other = await page.context().newPage()
      await other.goto(`/write/${id}/photos`)
      const [wall, joint] = [await small(111), await small(112)]
      await page.getByLabel('Choose photos').setInputFiles(chosen('wall.jpg', wall))
      await page.getByText('Ready: wall.jpg').waitFor()
      await page.getByLabel('Choose photos').setInputFiles(chosen('again.jpg', wall))
      await page.getByText('Already here: again.jpg').waitFor()
      const [ofWall = ''] = await digests(page)
      await expect.poll(stored, SLOW).toEqual({ held: null, shown: [ofWall] })
      expect(await digests(page)).toHaveLength(1)
      // The other window was open before and knows of none of them.
      await other
        .getByLabel('Choose photos')
        .setInputFiles([chosen('joint.jpg', joint), chosen('b.jpg', wall)])
      await other.getByText('Ready: b.jpg').waitFor()
      const both = [...(await digests(other))].sort()
      await expect.poll(stored, SLOW).toEqual({ held: null, shown: both })
      expect(both).toHaveLength(2)
      await page.reload()
      // As they came in, whatever their digests are.
      expect(await digests(page)).toEqual([ofWall, ...both.filter((sha) => sha !== ofWall)])

      await page.getByRole('button', { name: 'Remove Picture 2' }).click()
      await expect
        .poll(() => focused(page), SLOW)
        .toBe('Picture 2 was taken out of this visit. It stays among your photos.')
      expect(await digests(page)).toHaveLength(1)
      await page.getByLabel('Choose photos').setInputFiles(chosen('new.jpg', await small(113)))
      await page.getByText('Ready: new.jpg').waitFor()
      await page.getByRole('button', { name: 'Remove Picture 2' }).click()
      expect(await focused(page)).toBe('In this visit')
      await page.locator('.photo-said', { hasText: 'Picture 2 was taken out of this visit.' }).waitFor()
      await expect.poll(async () => (await stored()).shown.length, SLOW).toBe(1)
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })

  it('do the same without a script', async () => {
    const { browser, page, trouble, id, stored } = await draftOf(false)
    try {
      const send = async (...files: ReturnType<typeof chosen>[]) => {
        await page.locator('#plain-photo').setInputFiles(files)
        await follow(page, () => page.getByRole('button', { name: 'Send these pictures' }).click())
      }
      const wall = await small(114)
      await send(chosen('wall.jpg', wall), chosen('twice.jpg', wall))
      expect(await digests(page)).toHaveLength(1)
      await page.getByText('Sent before, and not kept twice: 1 photo.').waitFor()
      await press(page, 'stay', new RegExp(`/write/${id}/photos$`))
      await send(chosen('wall.jpg', wall))
      await page.getByText('Already in this visit: Picture 1.').waitFor()
      expect(await digests(page)).toHaveLength(1)
      await follow(page, () => page.getByRole('button', { name: 'Remove Picture 1' }).click())
      expect(await focused(page)).toContain('Picture 1 was taken out of this visit.')
      expect((await stored()).shown).toEqual([])
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })
})

describe('one spot on two days', () => {
  it('lies beside and over itself, by the keyboard and without a script', async () => {
    const browser = await openBrowser()
    try {
      const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
      await page.goto('/cases/quollbrook-barn#photos')
      await follow(page, () => page.getByRole('link', { name: 'Compare one spot on two days' }).click())
      await page.getByLabel('Later picture').selectOption({ label: '15 August 2010' })
      await follow(page, () => page.getByRole('button', { name: 'Show these two' }).click())
      const images = page.locator('main img')
      expect(await images.count()).toBe(4)
      const [first, second] = [images.nth(0), images.nth(1)]
      expect(await first.getAttribute('alt')).toContain('joints full')
      expect(await second.getAttribute('alt')).toContain('white crust')
      const later = page.locator('.photo-layers .photo:last-child')
      await expect.poll(() => opacityOf(later), SLOW).toBe('0.5')
      await page.getByRole('radio', { name: '50 %' }).focus()
      await page.keyboard.press('ArrowLeft')
      await expect.poll(() => opacityOf(later), SLOW).toBe('0.25')
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })

  const opacityOf = (part: import('playwright-core').Locator) =>
    part.evaluate((one) => getComputedStyle(one).opacity)
})
