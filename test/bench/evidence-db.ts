/**
 * Figures for a filter: `npm run bench -- evidence-db [most visits, default 100000] [only]`. Prints for each filter how
 * long the whole answer takes and what of it is asking the database, counting in memory and estimating; the longest
 * time for which nobody else was answered; and how that compares with a plain loop over the same intervals.
 *
 * With EVIDENCE_SERVER=postgresql://…/postgres the visits are kept in databases of that server and later runs measure
 * them as they are; a million loads in about a minute.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { compareGroups } from '#lib/api/evidence-compare.ts'
import { forgetAnswers } from '#lib/api/evidence-kept.ts'
import { gatherEvidence, readEvidence } from '#lib/api/evidence-read.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { closeDb } from '#lib/db/client.ts'
import { latestChange } from '#lib/db/search/read.ts'
import { Refusal } from '#lib/errors.ts'
import { END_POINTS, type EndPoint } from '#lib/evidence/index.ts'
import { forgetRecord } from '#lib/search/record.ts'
import { evidenceChoices, type Scope, type Selected, selectWorks } from '#lib/search/works.ts'
import { forgetWorks } from '#lib/search/works-known.ts'
import { openPlaces } from './evidence-load.ts'

const TIMES = 15
const END: EndPoint = 'unit-damaged'
const FILTERS: Readonly<Record<string, CaseFilter>> = {
  'whole record': {},
  'one family of eight': { family: ['air-lime'] },
  'one stone of three': { unit: ['granite'] },
  'three facets': { unit: ['limestone'], country: ['EE'], frost: ['frequent'] },
  'one recipe of 2000': { recipe: ['recipe-7'] },
}
const scopeFor = (filter: CaseFilter): Scope => ({ filter, asOf: '2026-01-01' })

const most = Number(process.argv[2] ?? 100_000)
const sizes =
  process.argv[3] === 'only' ? [most] : [10_000, 100_000, 1_000_000].filter((size) => size <= most)
const places = await openPlaces(process.env.EVIDENCE_SERVER)
const wholes = new Map<string, Map<number, number>>()
try {
  for (const visits of sizes) {
    process.env.DATABASE_URL = await places.open(visits)
    await readAgain()
    const rows = []
    for (const [name, filter] of Object.entries(FILTERS)) {
      const row = await measure(scopeFor(filter))
      wholes.set(name, (wholes.get(name) ?? new Map()).set(visits, row['p50 ms']))
      rows.push({ visits, name, ...row })
    }
    console.table(rows)
    await measureRest()
    await closeDb()
  }
  for (const [name, own] of sizes.length > 1 ? wholes : []) {
    const [first, last] = [sizes[0] ?? 0, sizes.at(-1) ?? 0]
    const times = (own.get(last) ?? 0) / (own.get(first) ?? 1)
    console.log(`${name}: from ${first} to ${last} visits ${times.toFixed(1)} times as long`)
  }
} finally {
  await closeDb()
  await places.close()
}

/** What a server does once after its start. */
async function readAgain(): Promise<void> {
  forgetRecord()
  forgetWorks()
  forgetAnswers()
  const before = process.memoryUsage()
  const begun = performance.now()
  const block = await longestBlock(untilRead)
  const took = performance.now() - begun
  globalThis.gc?.()
  const more = (process.memoryUsage().rss - before.rss) / 2 ** 20
  console.log(
    `read once after a start: ${Math.round(took)} ms, ${Math.round(more)} MB more, longest block ${block} ms`,
  )
}

/** A question is refused while reading takes long; here it is asked again. */
async function untilRead(): Promise<void> {
  for (;;)
    try {
      return await selectWorks([scopeFor({})], () => undefined)
    } catch (error) {
      if (!(error instanceof Refusal)) throw error
    }
}

async function measure(scope: Scope) {
  const whole = await timed(async () => {
    forgetAnswers()
    await readEvidence(scope, [END])
  })
  const ask = await timed(latestChange)
  const count = await timed(() => selectWorks([scope], ([own]) => gatherEvidence(own as Selected, [END])))
  forgetAnswers()
  const block = await longestBlock(() => readEvidence(scope, [END]))
  const four = await timed(async () => {
    forgetAnswers()
    await readEvidence(scope, END_POINTS)
  }, 3)
  const kept = await timed(() => readEvidence(scope, END_POINTS))
  const { works, distinct, plain } = await plainLoop(scope)
  return {
    works,
    'distinct intervals': distinct,
    'p50 ms': whole.p50,
    'p95 ms': whole.p95,
    'mean cpu ms': whole.cpu,
    ask: ask.p50,
    count: count.p50,
    estimate: Math.max(0, Math.round((whole.p50 - count.p50 - ask.p50) * 10) / 10),
    'longest block': block,
    'four end points': four.p50,
    'asked again': kept.p50,
    'times plain loop': Math.round(whole.p50 / plain),
  }
}

/** The simplest that could be made of the same works: one loop that adds each interval up by its years. */
async function plainLoop(scope: Scope) {
  const { intervals, distinct } = await selectWorks([scope], ([own]) => {
    const { works, rows } = own as Selected
    const { unitFrom, unitTo } = works.numbers
    const { fates } = gatherEvidence(own as Selected, [END])
    return {
      intervals: Array.from(rows, (row) => ({ from: unitFrom[row] ?? 0, to: unitTo[row] ?? 0 })),
      distinct: fates[0]?.fates.fates.rows.length ?? 0,
    }
  })
  const { p50 } = await timed(async () => {
    const reached = new Float64Array(64)
    const seen = new Float64Array(64)
    for (const { from, to } of intervals) {
      const last = Math.min(63, Math.floor(Math.max(from, to) / 365.25))
      for (let year = 0; year <= last; year++) seen[year] = (seen[year] ?? 0) + 1
      if (to > 0) reached[last] = (reached[last] ?? 0) + 1
    }
    return reached
  })
  return { works: intervals.length, distinct, plain: Math.max(0.01, p50) }
}

/** Two groups side by side, and what the page's lists of choices take. */
async function measureRest(): Promise<void> {
  const groups = ['air-lime', 'earth'].map((family) => ({
    key: family,
    scope: scopeFor({ family: [family] }),
  }))
  const compare = async () => {
    forgetAnswers()
    await compareGroups(groups, END)
  }
  const two = await timed(compare, 5)
  const block = await longestBlock(compare)
  const choices = await timed(evidenceChoices)
  console.log(
    `two families compared: ${two.p50} ms (longest block ${block} ms); lists of choices: ${choices.p50} ms`,
  )
}

/** Milliseconds over some runs, the first left out. */
async function timed(run: () => Promise<unknown>, times = TIMES) {
  await run()
  const taken: number[] = []
  const before = process.cpuUsage()
  for (let k = 0; k < times; k++) {
    const begun = performance.now()
    await run()
    taken.push(performance.now() - begun)
  }
  const { user, system } = process.cpuUsage(before)
  taken.sort((a, b) => a - b)
  const at = (share: number) => Math.round((taken[Math.ceil(share * times) - 1] ?? 0) * 10) / 10
  // On a busy machine the processor's time tells more than the clock's.
  return { p50: at(0.5), p95: at(0.95), cpu: Math.round((user + system) / 1000 / times) }
}

/** The longest time in milliseconds for which a timer had to wait while this ran. */
async function longestBlock(run: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 1 })
  delay.enable()
  await run()
  // The last block is told only after it.
  await new Promise((resolve) => setTimeout(resolve, 5))
  delay.disable()
  return Math.round(delay.max / 1e6)
}
