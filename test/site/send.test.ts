import type { Browser, Page } from 'playwright-core'
import { v4 } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { closeDb, db } from '#lib/db/client.ts'
import { joinSite, makePerson, type Person, signIn } from '../support/people.ts'
import { openBrowser, openPage } from './browser.ts'
import { SITE } from './pages.ts'
import { begin, judge, LAST, putOnRecord, writeSteps } from './writing.ts'

/** Every kind that people write, from its first field to the record, by plain posts. */

let browser: Browser
let writer: Person
let page: Page
beforeAll(async () => {
  joinSite()
  browser = await openBrowser()
  writer = await makePerson()
  page = await pageOf(writer)
})
afterAll(async () => {
  await browser.close()
  await closeDb()
})

async function pageOf(person: Person): Promise<Page> {
  const { page } = await openPage(browser, {
    baseURL: SITE,
    javaScriptEnabled: false,
    viewport: { width: 360, height: 800 },
  })
  page.setDefaultTimeout(120_000)
  await page.context().addCookies([(await signIn(person, SITE)).cookie])
  return page
}

const SLOW = 300_000
const named = (words: string) => `${words} ${v4().slice(0, 6)}`

/** The last version of what one wrote under this title. */
async function sent(title: string) {
  const [found] = await db().$queryRaw<{ kind: string; state: string; number: number; body: object }[]>`
    SELECT e.kind::text AS kind, r.state::text AS state, r.number, r.body FROM "Revision" r
    JOIN "Entry" e ON e.id = r."entryId"
    WHERE r."authorKey" = ${writer.key} AND r.body ->> 'title' = ${title} ORDER BY r.number DESC LIMIT 1`
  return found
}

describe('sent through its form arrives', () => {
  it(
    'a source',
    async () => {
      const title = named('A treatise on lime')
      await writeSteps(page, await begin(page, 'kind=source'), {
        source: {
          type: 'book',
          title,
          'author.0.family': 'Nobody',
          'issued.year': '1850',
          'issued.circa': 'yes',
        },
        found: { language: 'en', note: 'A copy in an invented library.' },
        check: LAST,
      })
      expect(await sent(title)).toMatchObject({
        kind: 'source',
        state: 'submitted',
        body: { author: [{ family: 'Nobody' }], issued: { year: 1850, circa: true } },
      })
    },
    SLOW,
  )

  it(
    'a material with a figure and a sieving',
    async () => {
      const title = named('Sand of an invented pit')
      await writeSteps(page, await begin(page, 'kind=material'), {
        material: {
          title,
          summary: 'Sharp and yellow.',
          role: 'aggregate',
          like: 'pesek',
          'region.country': 'SI',
          standing: 'in-use',
        },
        figures: {
          'properties.0.property': 'bulkDensity',
          'properties.0.low': '1400',
          'properties.0.typical': '1500',
          'properties.0.high': '1600',
          'properties.0.basis': 'measured',
        },
        sieve: {
          'sieve.0.openingMm': '4',
          'sieve.0.passingPercent': '100',
          'sieve.1.openingMm': '0.5',
          'sieve.1.passingPercent': '42',
        },
        check: LAST,
      })
      expect(await sent(title)).toMatchObject({
        kind: 'material',
        state: 'submitted',
        body: {
          like: 'sand-not-stated',
          properties: [{ typical: 1500 }],
          sieve: [{}, { passingPercent: 42 }],
        },
      })
    },
    SLOW,
  )

  it(
    'a recipe adapted from another, which it remembers',
    async () => {
      const title = named('Hot lime, leaner')
      const draft = await begin(page, 'adapt=hot-lime-for-rubble@1')
      await writeSteps(page, draft, {
        what: { title },
        check: { ...LAST, 'entry.note': 'Leaner, for a sand with more fines.' },
      })
      const arrived = await sent(title)
      expect(arrived).toMatchObject({ kind: 'recipe', state: 'submitted', number: 1 })
      expect(arrived?.body).toMatchObject({ adaptedFrom: 'hot-lime-for-rubble@1', invented: false })
    },
    SLOW,
  )

  it(
    'a row for the tables, which two read before it is published',
    async () => {
      const title = named('Bedding of an invented quay')
      await writeSteps(page, await begin(page, 'kind=row'), {
        row: {
          title,
          uses: 'bedding-rubble',
          measured: 'Slaked lime to sand, by measure.',
          'ingredients.0.material': 'lubi',
          'ingredients.0.parts': '1',
          'ingredients.0.by': 'volume',
          'ingredients.0.state': 'slaked-not-stated',
          'ingredients.1.material': 'liiv',
          'ingredients.1.parts': '2–3',
          'ingredients.1.by': 'volume',
          'ingredients.1.state': 'dry',
        },
        stated: {
          region: 'An invented coast',
          period: 'Nineteenth century',
          from: '1840',
          to: '1860',
          'source.source': 'pliny-1857',
          'source.locator': 'p. 1',
          basis: 'memory',
          standing: 'historical-only',
          standingReason: 'Nobody builds such quays now.',
        },
        check: LAST,
      })
      for (const [state, words] of [
        ['submitted', 'The page says so.'],
        ['published', 'Read again: it does.'],
      ] as const) {
        const desk = await pageOf(await makePerson({ roles: ['reviewer'] }))
        await judge(desk, title, { outcome: 'publish', words })
        await putOnRecord(desk)
        await desk.context().close()
        expect(await sent(title)).toMatchObject({ kind: 'row', state })
      }
    },
    SLOW,
  )
})
