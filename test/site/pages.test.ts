import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser, openPage, type Watched } from './browser.ts'
import { lost } from './fits.ts'
import { lookCloser } from './look-closer.ts'
import { lookAround, takePicture } from './look-over.ts'
import { unheard } from './names.ts'
import { firstCase, PAGES, SITE } from './pages.ts'

let browser: Browser
/** One page for all: what they share is fetched once. */
let watched: Watched
beforeAll(async () => {
  browser = await openBrowser()
  watched = await openPage(browser, { baseURL: SITE })
})
afterAll(() => browser.close())

/** Opens a page; tells what went wrong on the way and what is wrong with what is seen. */
async function faultsOf(path: string, look: () => Promise<string[]>): Promise<string[]> {
  const { page, trouble } = watched
  trouble.length = 0
  const response = await page.goto(path)
  // That the page itself is not there is what this one is for.
  const expected = response?.status() === 404 ? `404 (Not Found) ${response.url()}` : undefined
  const faults = await look()
  return [...trouble.filter((one) => expected === undefined || !one.endsWith(expected)), ...faults]
}

const look = async (name: string) => [
  ...(await lookAround(watched.page, name)),
  ...(await lookCloser(watched.page)),
]

describe('Breaks no policy, calls no other host, fits 320 to 1280 pixels, 200 % and paper, is heard as it is seen, and axe finds nothing', () => {
  it.each(Object.entries(PAGES))('on %s', async (name, path) => {
    expect(await faultsOf(path, () => look(name))).toEqual([])
  })

  it('on a case record', async () => {
    expect(await faultsOf(await firstCase(), () => look('case'))).toEqual([])
  })
})

describe('In Spanish, where words are longer', () => {
  it.each(Object.entries(PAGES))('%s fits 320 pixels and is heard as it is seen', async (_, path) => {
    const { page } = watched
    await page.setViewportSize({ width: 320, height: 900 })
    const look = async () => [...(await lost(page)), ...(await unheard(page))]
    expect(await faultsOf(`/es${path}`, look)).toEqual([])
  })
})

/** Pages with every kind of drawing. */
const DRAWN = [
  'home',
  'recipe',
  'job-works',
  'evidence',
  'compare',
  'map-country',
  'terms-of-joints',
] as const

describe('In colours that a reader has chosen for every page', () => {
  it.each(DRAWN)('%s draws in none but those, and shows where the focus is', async (name) => {
    const { page } = watched
    await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' })
    await page.goto(PAGES[name])
    await takePicture(page, `${name}-forced`)
    expect(await page.evaluate(foreignColours)).toEqual([])
    await page.keyboard.press('Tab')
    const { ring, paper, ...drawn } = await page.evaluate(() => {
      const at = document.activeElement ?? document.body
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(at)
      return {
        ring: outlineColor,
        paper: getComputedStyle(document.body).backgroundColor,
        stands: at !== document.body,
        ringed: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
      }
    })
    expect(drawn).toEqual({ stands: true, ringed: true })
    expect(ring).not.toBe(paper)
    await page.emulateMedia({ forcedColors: null, colorScheme: null })
  })
})

/** Runs in the page: what is drawn in colours that are not the reader's. */
function foreignColours(): string[] {
  const probe = document.body.appendChild(document.createElement('span'))
  const own = ['Canvas', 'CanvasText', 'LinkText', 'GrayText', 'Highlight', 'transparent'].map((name) => {
    probe.style.color = name
    return getComputedStyle(probe).color
  })
  probe.remove()
  const allowed = new Set([...own, 'none'])
  const shapes = document.querySelectorAll('svg :is(path, rect, circle, line, text)')
  const used = [...shapes].flatMap((shape) => {
    const { fill, stroke } = getComputedStyle(shape)
    return [fill, stroke].map((colour) => `${colour} on ${shape.tagName} ${shape.getAttribute('class')}`)
  })
  return [...new Set(used)].filter(
    (one) => !one.startsWith('url(') && !allowed.has(one.split(' on ')[0] ?? ''),
  )
}
