import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { follow, openBrowser, openPage } from './browser.ts'
import { PAGES, SITE } from './pages.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

async function withPage(path: string, look: (page: Page) => Promise<void>) {
  const { page, trouble } = await openPage(browser, { baseURL: SITE, javaScriptEnabled: false })
  await page.goto(path)
  await look(page)
  expect(trouble).toEqual([])
  await page.context().close()
}

const job = (fields: Record<string, string>, path: string = PAGES.job) =>
  `${path}?${new URLSearchParams({ use: 'pointing-rubble', area: '24', ...fields })}`

const submit = (page: Page) => follow(page, () => page.click('.job-form button[type=submit]:not([name])'))

describe('The job form', () => {
  it('keeps what was typed, names the field, the value and what would do, and starts there', async () => {
    await withPage(job({ area: 'wide', depth: '25' }), async (page) => {
      const error = 'Area of the face: “wide” is not a number. Give digits, such as 24, 0.5 or 1 1/2.'
      expect(await page.inputValue('input[name=area]')).toBe('wide')
      expect(await page.inputValue('input[name=depth]')).toBe('25')
      expect(await page.textContent('#field-area-error')).toBe(error)
      expect(await page.getAttribute('#field-area', 'aria-invalid')).toBe('true')
      expect(await page.getAttribute('#field-area', 'aria-describedby')).toContain('field-area-error')
      expect(await page.getAttribute('#faults a', 'href')).toBe('#field-area')
      expect(await page.locator(':focus').getAttribute('id')).toBe('faults')
      expect(await page.locator('#sheet').count()).toBe(0)
    })
  })

  it('says what is missing, too large, or out of order, with the limit in its unit', async () => {
    await withPage(job({ area: '' }), async (page) =>
      expect(await page.textContent('#field-area-error')).toContain('nothing was given'),
    )
    await withPage(job({ openings: '30' }), async (page) =>
      expect(await page.textContent('#field-openings-error')).toBe(
        'Area of openings: 30 is too large. Give less than 24 m².',
      ),
    )
    await withPage(job({ depth: '30–20' }), async (page) =>
      expect(await page.textContent('#field-depth-error')).toContain('out of order'),
    )
    await withPage(job({ depth: '0' }), async (page) =>
      expect(await page.textContent('#field-depth-error')).toContain('above zero'),
    )
  })

  it('takes no choice for another when the address holds one that is not offered', async () => {
    await withPage(job({ use: 'cake', lime: 'snow', sand: 'dust', units: 'ells' }), async (page) => {
      expect(await page.locator('#faults li').count()).toBe(4)
      expect(await page.textContent('#field-use-error')).toBe(
        'Kind of work: “cake” is not one that can be chosen.',
      )
      expect(await page.locator('#sheet').count()).toBe(0)
    })
  })

  it('states limits in the unit that it asks in', async () => {
    await withPage(job({ units: 'us', depth: '50' }), async (page) =>
      expect(await page.textContent('#field-depth-error')).toBe(
        'Depth to be filled: 50 is too large. Give 39.37 in or less.',
      ),
    )
  })

  it('asks which of two an ambiguous number is, and goes on with the answer', async () => {
    await withPage(job({ area: '1,500' }), async (page) => {
      expect(await page.textContent('#field-area-error')).toContain('can be read in two ways')
      expect(await page.locator('.job-ask label').allInnerTexts()).toEqual(['1500 m²', '1.5 m²'])
      await page.check('input[name=area-mark][value=decimal]')
      await submit(page)
      expect(await page.inputValue('input[name=area]')).toBe('1,500')
      expect(await page.textContent('#field-area-echo')).toBe('Read as 1.5 m²')
      expect(await page.locator('#sheet').count()).toBe(1)
    })
  })

  it('echoes what it read from a comma, a fraction and a range', async () => {
    await withPage(job({ area: '24,5', openings: '1 1/2', depth: '20–30' }), async (page) => {
      expect(await page.textContent('#field-area-echo')).toBe('Read as 24.5 m²')
      expect(await page.textContent('#field-openings-echo')).toBe('Read as 1.5 m²')
      expect(await page.textContent('#field-depth-echo')).toBe('Read as 20–30 mm')
    })
  })

  it('changes its fields with the kind of work', async () => {
    await withPage(PAGES.job, async (page) => {
      await page.selectOption('select[name=use]', 'roof-bedding')
      expect(await page.isVisible('button[name=show]')).toBe(true)
      await follow(page, () => page.click('button[name=show]'))
      expect(await page.locator('input[name=length]').count()).toBe(1)
      expect(await page.locator('input[name=area]').count()).toBe(0)
    })
  })

  it('converts what was typed when other units are chosen, and refuses to where it cannot be read', async () => {
    const typed = { depth: '25.4', loss: '0', 'joint-share': '20', heap: '10–20' }
    await withPage(job({ area: '9.290304', ...typed }), async (page) => {
      await page.selectOption('select[name=in]', 'us')
      await submit(page)
      // 0.3048 m to the foot and 25.4 mm to the inch (NIST SP 811); 10–20 °C are 50–68 °F.
      expect(await page.inputValue('input[name=area]')).toBe('100')
      expect(await page.inputValue('input[name=depth]')).toBe('1')
      expect(await page.inputValue('input[name=heap]')).toBe('50–68')
      expect(await page.textContent('#sheet')).toContain('1.67 ft³')
      const { searchParams } = new URL(page.url())
      expect([searchParams.get('units'), searchParams.get('in')]).toEqual(['us', null])
    })
    await withPage(job({ area: 'wide', ...typed, in: 'us' }), async (page) => {
      expect(await page.inputValue('select[name=in]')).toBe('metric')
      expect(await page.inputValue('input[name=area]')).toBe('wide')
      expect(await page.inputValue('input[name=depth]')).toBe('25.4')
    })
  })

  it('takes no sand that is to be measured for dry while nothing was measured', async () => {
    await withPage(job({ depth: '25', sand: 'measured', show: 'fields' }), async (page) => {
      expect(await page.locator('#sheet').count()).toBe(0)
      expect(await page.textContent('#field-moisture-error')).toContain('nothing was given')
    })
  })

  it('calls a sheet worked from examples where one was typed in, and there alone', async () => {
    const example = 'Worked from the examples typed in advance'
    await withPage(job({ area: '', depth: '25', show: 'fields' }), async (page) =>
      expect(await page.textContent('#sheet')).toContain(example),
    )
    await withPage(job({ depth: '25', show: 'fields' }), async (page) =>
      expect(await page.textContent('#sheet')).not.toContain(example),
    )
  })

  it('gives the same wall in feet and inches', async () => {
    const metric = job({ area: '9.290304', depth: '25.4', loss: '0', 'joint-share': '20' })
    const us = job({ area: '100', depth: '1', loss: '0', 'joint-share': '20', units: 'us' })
    // 9.290304 m² · 0.2 · 25.4 mm = 47.19 L = 100 ft² · 0.2 · 1/12 ft = 1.667 ft³: NIST SP 811, 0.3048 m to the foot.
    await withPage(metric, async (page) => expect(await page.textContent('#sheet')).toContain('47.2 L'))
    await withPage(us, async (page) => {
      const sheet = await page.textContent('#sheet')
      expect(sheet).toContain('1.67 ft³')
      expect(sheet).toMatch(/Water[^.]*?[\d.]+ US gal/)
    })
    // The same work a hundred times as large: 166.7 ft³ = 6.173 yd³, 3 ft to the yard.
    const large = job({ area: '10000', depth: '1', loss: '0', 'joint-share': '20', units: 'us' })
    await withPage(large, async (page) => expect(await page.textContent('#sheet')).toContain('6.17 yd³'))
  })

  it('prints no price for materials where only labour was priced', async () => {
    await withPage(job({ hours: '8', rate: '30' }), async (page) => {
      const sheet = await page.textContent('#sheet')
      expect(sheet).toContain('Cost of labour')
      expect(sheet).not.toContain('Cost of packs with a price')
    })
  })

  it('takes several works in one job, adds and takes them out without losing what was typed', async () => {
    await withPage(
      job({ depth: '25', loss: '10', 'joint-share': '20', mixer: '90', money: 'crowns' }),
      async (page) => {
        await page.fill('input[name=area]', '1,500')
        await follow(page, () => page.click('button[value=more]'))
        expect(await page.inputValue('input[name=area]')).toBe('1,500')
        expect(await page.inputValue('input[name=mixer]')).toBe('90')
        expect(await page.inputValue('input[name=money]')).toBe('crowns')
        await page.fill('input[name=area]', '24')
        await page.selectOption('select[name=use-2]', 'plaster')
        await follow(page, () => page.click('#work-2 button[value=fields]'))
        await page.fill('input[name=area-2]', '10')
        await page.fill('input[name=coat1-2]', '12')
        await page.fill('input[name=loss-2]', '5')
        await follow(page, () => page.click('button[value=more]'))
        expect(await page.inputValue('input[name=coat1-2]')).toBe('12')
        await follow(page, () => page.click('button[value=drop-3]'))
        await submit(page)
        // 24 m² · 0.2 · 25 mm = 120 L, 132 with 10 % lost; 10 m² · 12 mm = 120 L, 126 with 5 % lost.
        const rows = page.locator('#sheet table', { hasText: 'Mortar by work' }).locator('tbody tr')
        // By what its cells hold: of a sheet that is not laid out yet, as below the screen, the inner text is empty.
        const cells = (row: number) => rows.nth(row).locator('th, td').allTextContents()
        expect(await rows.count()).toBe(2)
        expect((await cells(0)).slice(0, 3)).toEqual([
          'Work 1, Pointing rubble',
          expect.stringMatching(/^120 L\b/),
          expect.stringMatching(/^132 L\b/),
        ])
        expect((await cells(1)).slice(0, 3)).toEqual([
          'Work 2, Plaster on a solid wall',
          expect.stringMatching(/^120 L\b/),
          expect.stringMatching(/^126 L\b/),
        ])
        expect(await page.textContent('#sheet .facts')).toContain('258 L')
        await follow(page, () => page.click('button[value=drop-1]'))
        expect(await page.inputValue('input[name=coat1]')).toBe('12')
        expect(await page.locator('select[name^=use]').count()).toBe(1)
      },
    )
  })

  it('says in which work something is to be mended', async () => {
    const two = { depth: '25', 'use-2': 'plaster', 'area-2': '-3', 'coat1-2': '12', 'use-3': 'cake' }
    await withPage(job(two), async (page) => {
      expect(await page.locator('#faults li').allInnerTexts()).toEqual([
        expect.stringContaining('Work 2, Area of the face: -3 is not above zero'),
        expect.stringContaining('Work 3, Kind of work: “cake” is not one'),
        expect.stringContaining('Work 3, Area of the face: nothing was given'),
      ])
      expect(await page.getAttribute('#field-area-2', 'aria-invalid')).toBe('true')
    })
  })

  it('works out the sheet when Enter is pressed', async () => {
    await withPage(job({ depth: '25', 'joint-share': '20' }), async (page) => {
      await page.fill('input[name=area]', '50')
      await follow(page, () => page.press('input[name=area]', 'Enter'))
      expect(new URL(page.url()).searchParams.get('show')).toBeNull()
      expect(await page.textContent('#sheet')).toContain('250 L')
    })
  })

  it('lists what was assumed, and takes one’s own figure in its place', async () => {
    await withPage(job({ depth: '25' }), async (page) => {
      const row = page.locator('#taken tr', { hasText: 'Pit sand: bulk density' })
      expect(await row.count()).toBe(1)
      expect(await page.textContent('#taken')).toContain('Loss, of the mortar in place')
      const link = await row.locator('a', { hasText: 'Your own' }).getAttribute('href')
      expect(link).toBe('#field-own-sand-pit-bulk-density')
      const before = await page.textContent('#sheet table')
      await page.click('#own summary')
      await page.fill(`${link}`, '1300')
      await page.fill('#field-assumed-air', '3–8')
      await submit(page)
      expect(await page.textContent('#field-own-sand-pit-bulk-density-echo')).toBe('Read as 1300 kg/m³')
      expect(await row.count()).toBe(0)
      expect(await page.textContent('.job-inputs')).toContain('Pit sand: bulk density: 1300 kg/m³')
      expect(await page.textContent('#taken')).not.toContain('Air in fresh mortar')
      expect(await page.textContent('#sheet table')).not.toBe(before)
      expect(new URL(page.url()).searchParams.get('own-sand-pit-bulk-density')).toBe('1300')
    })
  })

  it('refuses one’s own figure where nature does not allow it, and names the material', async () => {
    await withPage(job({ 'own-lime-fat-free-ca-o': '300' }), async (page) => {
      expect(await page.textContent('#faults')).toContain(
        'Fat lime: free lime: 300 is too large. Give 100 % or less.',
      )
      expect(await page.getAttribute('#own', 'open')).not.toBeNull()
    })
  })

  it('keeps figures in the browser when told to, offers them elsewhere, and forgets them', async () => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE })
    const own = 'input[name=own-lime-fat-putty-density]'
    await page.goto(job({ depth: '25' }))
    await page.click('#own > summary')
    await page.fill(own, '1320')
    await page.fill('input[name=pack-lime-fat]', '20')
    await page.getByRole('button', { name: 'Keep these' }).click()
    await page.getByText('Kept in this browser').waitFor()

    await page.goto(job({ depth: '30' }))
    await page.click('#own > summary')
    await page.getByText('This browser has kept figures').waitFor()
    expect(await page.inputValue(own)).toBe('')
    await page.getByRole('button', { name: 'Put them in' }).click()
    expect(await page.inputValue(own)).toBe('1320')
    expect(await page.inputValue('input[name=pack-lime-fat]')).toBe('20')
    await page.getByRole('button', { name: 'Forget them' }).click()
    await page.getByText('Forgotten').waitFor()
    await page.goto(job({ depth: '30' }))
    await page.click('#own > summary')
    await page.getByRole('button', { name: 'Keep these' }).waitFor()
    expect(await page.getByText('This browser has kept figures').count()).toBe(0)
    expect(trouble).toEqual([])
    await page.context().close()
  })

  it('gives no sheet for a known hazard until someone says why, and then prints both', async () => {
    const hazard = job({ use: 'render' }, PAGES['job-hazard'])
    await withPage(hazard, async (page) => {
      expect(await page.locator('#sheet').count()).toBe(0)
      expect(await page.textContent('main')).toContain('No sheet without a reason')
      await page.check('input[name=override]')
      await page.fill('textarea[name=reason]', 'Recording what was lost')
      await submit(page)
      expect(await page.textContent('#sheet')).toContain(
        'Wanted all the same, because: Recording what was lost',
      )
      expect(await page.locator('#sheet .notice-hazard').count()).toBe(1)
    })
  })
})

describe('The job sheet with a script', () => {
  const opened = async (path: string, look: (page: Page, trouble: string[]) => Promise<void>) => {
    const { page, trouble } = await openPage(browser, { baseURL: SITE })
    await page.goto(path, { waitUntil: 'networkidle' })
    await look(page, trouble)
    await page.context().close()
  }
  const figures = async (page: Page) =>
    /figures [0-9a-f]{10}/.exec((await page.textContent('#sheet')) ?? '')?.[0]
  const besidesWorking = (page: Page) => page.locator('#sheet > :not(#working)').allTextContents()

  it('follows what is typed with the very figures that the button gives, and the address with it', async () => {
    await opened(job({ depth: '25', loss: '10', 'joint-share': '20' }), async (page, trouble) => {
      await page.fill('input[name=area]', '50')
      // 50 m² · 0.2 · 25 mm = 250 L, 275 with 10 % lost.
      await page.locator('#sheet', { hasText: '275 L' }).waitFor()
      expect(await page.textContent('#field-area-echo')).toBe('Read as 50 m²')
      await expect.poll(() => new URL(page.url()).searchParams.get('area')).toBe('50')
      const [live, said] = [await figures(page), await besidesWorking(page)]
      expect(live).toBeDefined()
      expect(said.join('')).toContain('275 L')
      // A live sheet has its working only once it is opened; the button's has it closed.
      await page.click('#working summary')
      await page.locator('#working table').first().waitFor()
      const whole = await page.textContent('#sheet')
      await submit(page)
      expect(await figures(page)).toBe(live)
      expect(await besidesWorking(page)).toEqual(said)
      expect(await page.textContent('#sheet')).toBe(whole)
      expect(trouble).toEqual([])
    })
  })

  it('shows no figures for what cannot be read, says so at the field, and takes them up again', async () => {
    await opened(job({ depth: '25', 'joint-share': '20' }), async (page, trouble) => {
      await page.fill('input[name=area]', 'wide')
      await page.locator('.job-live #faults').waitFor()
      expect(await page.locator('#sheet').count()).toBe(0)
      expect(await page.textContent('#field-area-error')).toContain('“wide” is not a number')
      expect(await page.getAttribute('#field-area', 'aria-invalid')).toBe('true')
      expect(await page.locator(':focus').getAttribute('name')).toBe('area')
      await page.fill('input[name=area]', '50')
      await page.locator('#sheet', { hasText: '250 L' }).waitFor()
      expect(await page.locator('#field-area-error').count()).toBe(0)
      expect(await page.getAttribute('#field-area', 'aria-invalid')).toBeNull()
      expect(trouble).toEqual([])
    })
  })

  it('says that the sheet is the one before where it cannot be worked out, and tries again with a signal', async () => {
    await opened(job({ depth: '25', 'joint-share': '20' }), async (page) => {
      const before = await figures(page)
      await page.route('**/job?*', (route) => route.abort())
      await page.fill('input[name=area]', '50')
      await page.getByText('Could not be worked out anew').waitFor()
      expect(await figures(page)).toBe(before)
      await page.unroute('**/job?*')
      await page.evaluate(() => window.dispatchEvent(new Event('online')))
      await page.locator('#sheet', { hasText: '250 L' }).waitFor()
    })
  })

  it('shows the fields of another kind of work by itself, with the focus and all that was typed where it was', async () => {
    await opened(job({ depth: '25', 'joint-share': '20', mixer: '90' }), async (page, trouble) => {
      expect(await page.isVisible('button[value=fields]')).toBe(false)
      await page.focus('select[name=use]')
      await page.selectOption('select[name=use]', 'plaster')
      await page.locator('input[name=coat1]').waitFor()
      expect(await page.locator('input[name=depth]').count()).toBe(0)
      expect(await page.inputValue('input[name=area]')).toBe('24')
      expect(await page.inputValue('input[name=mixer]')).toBe('90')
      expect(await page.locator(':focus').getAttribute('name')).toBe('use')
      await page.locator('#sheet', { hasText: 'Plaster on a solid wall' }).waitFor()
      await expect.poll(() => new URL(page.url()).searchParams.get('use')).toBe('plaster')
      // Chosen by mistake: what stood in the fields of the first kind is still known.
      await page.selectOption('select[name=use]', 'pointing-rubble')
      await page.locator('input[name=depth]').waitFor()
      expect(await page.inputValue('input[name=depth]')).toBe('25')
      await expect.poll(() => new URL(page.url()).searchParams.get('depth')).toBe('25')
      // 24 m² · 0.2 · 25 mm = 120 L.
      await page.locator('#sheet .facts', { hasText: '120 L' }).waitFor()
      expect(trouble).toEqual([])
    })
  })

  it('asks for what was measured of the sand, and takes it', async () => {
    await opened(job({ depth: '25' }), async (page) => {
      await page.focus('select[name=sand]')
      await page.selectOption('select[name=sand]', 'measured')
      await page.locator('#field-moisture-error', { hasText: 'nothing was given' }).waitFor()
      expect(await page.locator(':focus').getAttribute('name')).toBe('sand')
      expect(await page.locator('.job-live-note').textContent()).toContain('One thing to mend')
      expect(await page.locator('.job-live [role=alert]').count()).toBe(0)
      await page.fill('input[name=moisture]', '5')
      await page.locator('#sheet', { hasText: 'Moisture found: 5 %' }).waitFor()
    })
  })

  it('adds and takes out works by itself, and goes back over both', async () => {
    await opened(job({ depth: '25', loss: '10', 'joint-share': '20' }), async (page, trouble) => {
      await page.fill('input[name=loss]', '12')
      await page.click('button[value=more]')
      await page.locator('select[name=use-2]:focus').waitFor()
      expect(await page.inputValue('input[name=loss]')).toBe('12')
      await page.selectOption('select[name=use-2]', 'plaster')
      await page.locator('input[name=coat1-2]').fill('12')
      await page.fill('input[name=loss-2]', '5')
      // 24 m² · 0.2 · 25 mm + 12 % = 134.4 L; 10 m² · 12 mm + 5 % = 126 L.
      await page.locator('#sheet .facts', { hasText: '260 L' }).waitFor()
      await page.click('button[value=drop-1]')
      await page.locator('#sheet .facts', { hasText: '126 L' }).waitFor()
      expect(await page.locator('select[name^=use]').count()).toBe(1)
      expect(await page.inputValue('input[name=coat1]')).toBe('12')
      expect(await page.locator(':focus').getAttribute('name')).toBe('use')
      await page.goBack()
      await page.locator('#sheet .facts', { hasText: '260 L' }).waitFor()
      expect(await page.inputValue('input[name=depth]')).toBe('25')
      expect(await page.inputValue('input[name=coat1-2]')).toBe('12')
      await page.goForward()
      await page.locator('#sheet .facts', { hasText: '126 L' }).waitFor()
      await expect.poll(() => page.locator('select[name^=use]').count()).toBe(1)
      expect(trouble).toEqual([])
    })
  })

  it('leaves alone what is typed while an answer is on its way, caret and all', async () => {
    await opened(job({ depth: '25', 'joint-share': '20' }), async (page) => {
      let answer = () => {}
      const held = new Promise<void>((resolve) => {
        answer = resolve
      })
      let asked = () => {}
      const onWay = new Promise<void>((resolve) => {
        asked = resolve
      })
      await page.route('**/job?*', async (route) => {
        asked()
        await held
        await route.continue().catch(() => undefined)
      })
      await page.selectOption('select[name=use]', 'plaster')
      await onWay
      await page.focus('input[name=area]')
      await page.keyboard.press('Home')
      await page.keyboard.type('3')
      answer()
      await page.locator('input[name=coat1]').waitFor()
      const area = page.locator('input[name=area]')
      expect(await area.inputValue()).toBe('324')
      expect(
        await area.evaluate((one: HTMLInputElement) => [one === document.activeElement, one.selectionStart]),
      ).toEqual([true, 1])
      await page.locator('#sheet', { hasText: 'Area of the face: 324 m²' }).waitFor()
    })
  })

  it('adds the work that was asked for also where somebody types on before the answer comes', async () => {
    await opened(job({ depth: '25', 'joint-share': '20' }), async (page) => {
      let isFirst = true
      let asked = () => {}
      const onWay = new Promise<void>((resolve) => {
        asked = resolve
      })
      await page.route('**/job?*', async (route) => {
        // The first is never answered: what is typed meanwhile takes its place.
        if (!isFirst) return route.continue()
        isFirst = false
        asked()
      })
      await page.click('.job-form button[value=more]')
      await onWay
      await page.focus('input[name=area]')
      await page.keyboard.press('Home')
      await page.keyboard.type('3')
      await page.locator('select[name=use-2]').waitFor()
      const area = page.locator('input[name=area]')
      expect(await area.inputValue()).toBe('324')
      expect(await area.evaluate((one) => one === document.activeElement)).toBe(true)
      await page.goBack()
      await page.locator('select[name=use-2]').waitFor({ state: 'detached' })
    })
  })

  it('brings the working, left out while it is closed, when it is opened', async () => {
    await opened(job({ depth: '25', 'joint-share': '20' }), async (page) => {
      await page.fill('input[name=area]', '50')
      await page.locator('#sheet', { hasText: '250 L' }).waitFor()
      expect(await page.locator('#working table').count()).toBe(0)
      await page.click('#working summary')
      await page.locator('#working table').first().waitFor()
      await page.fill('input[name=area]', '60')
      await page.locator('#sheet', { hasText: '300 L' }).waitFor()
      expect(await page.locator('#working').getAttribute('open')).not.toBeNull()
      expect(await page.locator('#working table').count()).toBeGreaterThan(0)
    })
  })

  it('calls no edit of this page a change by others, and still tells of an earlier revision', async () => {
    const old = job({
      depth: '25',
      'joint-share': '20',
      r: '1',
      ed: '000000000000',
      sums: '1',
      is: '0000000000',
    })
    await opened(old, async (page) => {
      const notices = page.locator('.job-notices')
      expect(await notices.textContent()).toContain('At least one printed figure differs')
      await page.fill('input[name=area]', '50')
      await page.locator('#sheet', { hasText: '250 L' }).waitFor()
      expect(await notices.textContent()).not.toContain('Something changed')
      expect(await notices.textContent()).toContain('This sheet follows revision 1')
      await page.reload({ waitUntil: 'networkidle' })
      expect(await notices.textContent()).not.toContain('Something changed')
    })
  })

  it('keeps in the address what cannot be read yet', async () => {
    await opened(job({ depth: '25' }), async (page) => {
      await page.fill('input[name=area]', 'wide')
      await page.locator('.job-live #faults').waitFor()
      await page.reload()
      expect(await page.inputValue('input[name=area]')).toBe('wide')
      expect(await page.inputValue('input[name=depth]')).toBe('25')
    })
  })

  it('converts what is typed with the units, in Spanish as in English, and back', async () => {
    const spanish = job(
      { area: '9,290304', depth: '25,4', loss: '0', 'joint-share': '20' },
      `/es${PAGES.job}`,
    )
    await opened(spanish, async (page, trouble) => {
      await page.selectOption('select[name=in]', 'us')
      await page.locator('#sheet', { hasText: '1,67 ft³' }).waitFor()
      expect(await page.inputValue('input[name=area]')).toBe('100')
      await page.fill('input[name=depth]', '2')
      // 2 × 1.667 ft³ = 3.33 ft³ = 94.4 L.
      await page.locator('#sheet', { hasText: '3,33 ft³' }).waitFor()
      await page.getByText('Calculado de nuevo').waitFor({ state: 'attached' })
      await page.selectOption('select[name=in]', 'metric')
      await page.locator('#sheet', { hasText: '94,4 L' }).waitFor()
      expect(await page.inputValue('input[name=area]')).toBe('9,29')
      expect(await page.inputValue('input[name=depth]')).toBe('50,8')
      expect(new URL(page.url()).pathname).toBe(`/es${PAGES.job}`)
      expect(trouble).toEqual([])
    })
  })

  it('keeps figures in the browser in the units that the form has come to ask in', async () => {
    await opened(job({ depth: '25' }), async (page) => {
      await page.selectOption('select[name=in]', 'us')
      await page.locator('.field-control:has(#field-area)', { hasText: 'ft²' }).waitFor()
      await page.click('#own > summary')
      await page.fill('input[name=own-lime-fat-putty-density]', '82')
      await page.getByRole('button', { name: 'Keep these' }).click()
      await page.getByText('Kept in this browser').waitFor()
      await page.goto(job({ depth: '25' }))
      await page.click('#own > summary')
      await page.getByRole('button', { name: 'Keep these' }).waitFor()
      expect(await page.getByRole('button', { name: 'Put them in' }).count()).toBe(0)
    })
  })
})
