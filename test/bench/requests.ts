/**
 * Requests per second and p95 of the recipe page against a bare page of the same framework with one query,
 * both built, in one run on this machine:
 *
 *   DATABASE_URL=postgresql://… npx tsx test/bench/requests.ts [recipe-slug] [count]
 *
 * The database holds the demo; the load comes from this machine too and is bounded by `count`.
 */
import autocannon from 'autocannon'
import { quantileSorted } from 'd3-array'
import { BARE, makeReady, ROOT, startNext } from './next-server.ts'

const CONNECTIONS = 10
const WARM_UP = 300

const databaseUrl = process.env.DATABASE_URL
if (!databaseUrl) throw new Error('Set DATABASE_URL to a database that holds the demo.')
const count = Number(process.argv[3] ?? 3000)

makeReady()
const site = await startNext(ROOT, databaseUrl)
const bare = await startNext(BARE, databaseUrl)
try {
  const slug = process.argv[2] ?? (await firstRecipe(site.url))
  const pages = [
    ['bare page, one query', bare.url],
    [`recipe page (${slug})`, `${site.url}/recipes/${slug}`],
    [`the same recipe as JSON`, `${site.url}/api/v1/recipes/${slug}`],
  ] as const
  const measured = []
  for (const [name, url] of pages) measured.push({ name, ...(await measure(url)) })
  const base = measured[0]?.perSecond ?? Number.NaN
  console.table(measured.map((one) => ({ ...one, 'share of bare': (one.perSecond / base).toFixed(2) })))
} finally {
  await Promise.all([site.stop(), bare.stop()])
}

async function firstRecipe(url: string): Promise<string> {
  const { recipes } = (await (await fetch(`${url}/api/v1/recipes?limit=1`)).json()) as {
    recipes: { slug: string }[]
  }
  const slug = recipes[0]?.slug
  if (!slug) throw new Error('The database holds no recipe: load the demo first.')
  return slug
}

async function measure(url: string) {
  await load(url, WARM_UP)
  const { result, times } = await load(url, count)
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${url}: ${result.non2xx} refusals, ${result.errors} errors`)
  return {
    perSecond: Math.round(count / ((result.finish.getTime() - result.start.getTime()) / 1000)),
    'p50 ms': round(quantileSorted(times, 0.5)),
    'p95 ms': round(quantileSorted(times, 0.95)),
    'p99 ms': round(quantileSorted(times, 0.99)),
  }
}

/** The load itself, with the time of every answer in ms, sorted. */
function load(url: string, amount: number) {
  return new Promise<{ result: autocannon.Result; times: number[] }>((resolve, reject) => {
    const times: number[] = []
    const running = autocannon({ url, connections: CONNECTIONS, amount }, (error, result) =>
      error ? reject(error) : resolve({ result, times: times.sort((a, b) => a - b) }),
    )
    running.on('response', (_client, _status, _bytes, time) => times.push(time))
  })
}

function round(ms: number | undefined): number {
  return Number((ms ?? Number.NaN).toFixed(1))
}
