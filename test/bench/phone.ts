/**
 * How the pages feel on a mid-range phone: Chromium slowed four times, on 1.6 Mbit/s with 150 ms to the site. Prints the
 * time to the largest paint, how much the layout moved, the script (gzip) beside a bare page of the same framework, and
 * the waits from a key to the next paint. A first visit: nothing is in the browser yet.
 *
 *   npm run bench -- phone [path …]
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import type { Browser, Page } from 'playwright-core'
import { CALCULATIONS } from '../../app/work-out/calculations.ts'
import { openBrowser } from '../site/browser.ts'
import { startServe } from '../support/serve.ts'
import { BARE, makeReady, startNext } from './next-server.ts'

const RUNS = 3
const PHONE = {
  viewport: { width: 360, height: 780 },
  deviceScaleFactor: 2,
  hasTouch: true,
  serviceWorkers: 'block',
} as const
const SLOWER = 4
const LINE = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 0.75e6 / 8 }

const RECIPE = '/recipes/hot-lime-for-rubble'
const READ = [
  '/',
  '/recipes',
  RECIPE,
  '/cases/quollbrook-barn',
  '/tables',
  '/tables/vitruvius-mortar',
  '/glossary',
]
const CALCULATED = Object.keys(CALCULATIONS).map((name) => `/work-out/${name}`)
/** What brings sums along that other pages of its calculation do without. */
const BLEND = '/work-out/sieve?what=blend&show=fields'
const WORKED = [`${RECIPE}/job`, ...CALCULATED, BLEND]
/** Pages that are typed in, each with a field of figures. */
const FIGURE = 'main form :is(input[type=text], textarea) >> visible=true'
const TYPED = [
  [`${RECIPE}/job?use=pointing-rubble`, 'main form input[name=area]'],
  ...[...CALCULATED, BLEND].map((path) => [path, FIGURE] as const),
] as const

/** Keys one after the other, then keys after pauses in which answers to what was typed come at different moments. */
const STEADY = Array.from('12.5 is too wide', (key) => [key, 150] as const)
const PAUSED = Array.from('12.3456789', (key, k) => [key, 400 + 75 * k] as const)

const asked = process.argv.slice(2)
const serving = await startServe({ DEMO: 'on' })
await serving.says(/^Ready on/m)
makeReady()
const bare = await startNext(BARE, readFileSync(join(serving.dataDir, 'postgres-url'), 'utf8'))
const browser = await openBrowser()
try {
  const base = await measured(browser, bare.url)
  const rows = [{ page: 'bare page', ...base, 'script above bare, B': 0 }]
  for (const path of asked.length > 0 ? asked : [...READ, ...WORKED]) {
    const one = await measured(browser, serving.url + path)
    rows.push({ page: path, ...one, 'script above bare, B': one['script, B'] - base['script, B'] })
  }
  console.table(rows)
  const typed: Record<string, string>[] = []
  for (const [path, field] of TYPED) typed.push({ page: path, ...(await typedIn(browser, path, field)) })
  console.table(typed)
} finally {
  await browser.close()
  await Promise.all([bare.stop(), serving.stop()])
}

interface Visit {
  readonly paint: number
  readonly moved: number
  readonly script: number
}

/** The middle one of some visits, each with an empty browser. */
async function measured(browser: Browser, url: string) {
  const visits: Visit[] = []
  for (let run = 0; run < RUNS; run++) visits.push(await visit(browser, url))
  const middle = (of: (one: Visit) => number) => visits.map(of).sort((a, b) => a - b)[RUNS >> 1] ?? Number.NaN
  return {
    'largest paint, ms': Math.round(middle(({ paint }) => paint)),
    'layout moved': Number(middle(({ moved }) => moved).toFixed(3)),
    'script, B': middle(({ script }) => script),
  }
}

async function onPhone<T>(browser: Browser, watch: (page: Page) => Promise<T>): Promise<T> {
  const context = await browser.newContext(PHONE)
  const page = await context.newPage()
  const line = await context.newCDPSession(page)
  await line.send('Network.enable')
  await line.send('Network.emulateNetworkConditions', LINE)
  await line.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  try {
    return await watch(page)
  } finally {
    await context.close()
  }
}

function visit(browser: Browser, url: string): Promise<Visit> {
  return onPhone(browser, async (page) => {
    const scripts: Promise<number>[] = []
    page.on('response', (answer) => {
      if (answer.request().resourceType() === 'script')
        scripts.push(answer.body().then((body) => gzipSync(body).length))
    })
    await page.addInitScript(() => {
      const seen = { paint: 0, moved: 0 }
      Object.assign(window, { seen })
      // No function here may have a name: the loader would ask the page for a helper of its own.
      new PerformanceObserver((list) => {
        for (const { startTime } of list.getEntries()) seen.paint = startTime
      }).observe({ type: 'largest-contentful-paint', buffered: true })
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries())
          seen.moved += (entry as PerformanceEntry & { value: number }).value
      }).observe({ type: 'layout-shift', buffered: true })
    })
    await page.goto(url, { waitUntil: 'networkidle' })
    const seen = await page.evaluate(() => {
      const { paint, moved } = (window as unknown as { seen: { paint: number; moved: number } }).seen
      // Where a page goes to a place by itself, the browser looks for no largest paint: the first stands for it.
      const [first] = performance.getEntriesByName('first-contentful-paint')
      return { paint: paint || (first?.startTime ?? Number.NaN), moved }
    })
    const sizes = await Promise.all(scripts)
    return { ...seen, script: sizes.reduce((sum, size) => sum + size, 0) }
  })
}

/** Types into a field, and tells how long the page took to paint after each key. */
function typedIn(browser: Browser, path: string, field: string) {
  return onPhone(browser, async (page) => {
    await page.goto(serving.url + path, { waitUntil: 'networkidle' })
    const box = page.locator(field).first()
    await box.tap()
    await page.evaluate(() => {
      const waits: number[] = []
      Object.assign(window, { waits })
      // What runs after the frame that follows a key runs after its paint.
      document.addEventListener(
        'keydown',
        ({ timeStamp }) =>
          requestAnimationFrame(() => {
            const { port1, port2 } = new MessageChannel()
            port1.onmessage = () => waits.push(performance.now() - timeStamp)
            port2.postMessage(null)
          }),
        true,
      )
    })
    const typed = async (keys: readonly (readonly [string, number])[]) => {
      await page.evaluate(() => (window as unknown as { waits: number[] }).waits.splice(0))
      await box.fill('')
      for (const [key, pause] of keys) {
        await page.keyboard.type(key)
        await page.waitForTimeout(pause)
      }
      await page.waitForFunction(
        (count) => (window as unknown as { waits: number[] }).waits.length >= count,
        keys.length,
      )
      const waits = await page.evaluate(() => (window as unknown as { waits: number[] }).waits)
      const sorted = waits.sort((a, b) => a - b)
      const within = (share: number) => Math.round(sorted[Math.ceil(share * sorted.length) - 1] ?? Number.NaN)
      return `${within(0.5)}, ${within(0.9)}, ${within(1)}`
    }
    return {
      'waits (half, nine in ten, all within), ms': await typed(STEADY),
      'as answers come, ms': await typed(PAUSED),
    }
  })
}
