/**
 * How fast finding is, and how it grows: 200 mixed questions and 50 look-ups of 1,000, 10,000 and 100,000 generated
 * cases, beside SQL written by hand for each question alone and an in-memory search library on the same documents:
 *
 *   npm run bench -- find [most cases, default 100000] [only]
 *
 * Loading a million takes some 20 minutes and 10 GB of disk. With FIND_SERVER=postgresql://…/postgres the cases are
 * kept in databases of that server (putlog_find_1000, …) and later runs measure them as they are.
 */
import { placesForOnce, placesOn } from './find-places.ts'
import { type FindReport, measureFind } from './find-run.ts'

const most = Number(process.argv[2] ?? 100_000)
const only = process.argv[3] === 'only'
const sizes = only ? [most] : [1000, 10_000, 100_000, 1_000_000].filter((size) => size <= most)
const server = process.env.FIND_SERVER
const places = server === undefined ? await placesForOnce() : placesOn(server)
const reports: FindReport[] = []
try {
  for (const cases of sizes) {
    const url = await places.open(cases, console.log)
    const report = await measureFind(url, cases, {
      // The library holds every document in memory.
      inMemory: cases <= 100_000,
      // Counting every facet by hand takes seconds at a million: a few questions of each sort tell enough.
      byHand: cases <= 10_000 ? 200 : cases <= 100_000 ? 20 : 5,
      say: console.log,
    })
    reports.push(report)
    print(report)
  }
  if (reports.length > 1) printGrowth(reports)
} finally {
  await places.close()
}

function print({ cases, rows, compared, differing, memoryMb }: FindReport): void {
  console.log(
    `${compared} answers held against those by hand, ${differing.length} differ; ${memoryMb} MB resident`,
  )
  for (const { query, ours, hand } of differing.slice(0, 3))
    console.log(JSON.stringify({ query, ours, hand }).slice(0, 2000))
  console.table(
    rows.map(({ sort, who, queries, p50, p95, times }) => ({
      ...{ cases, sort, who, queries, 'p50 ms': fixed(p50), 'p95 ms': fixed(p95) },
      ...(times !== undefined && { 'times by hand, p50': fixed(times.p50), p95: fixed(times.p95) }),
    })),
  )
}

/** How many times longer the most cases take than ten thousand. */
function printGrowth(reports: readonly FindReport[]): void {
  const [from, to] = [reports.find(({ cases }) => cases === 10_000), reports.at(-1)]
  if (from === undefined || to === undefined || from === to) return
  const rows = to.rows.flatMap(({ sort, who, p50, p95 }) => {
    const before = from.rows.find((one) => one.sort === sort && one.who === who)
    if (before === undefined) return []
    return [{ sort, who, 'p50 times': fixed(p50 / before.p50), 'p95 times': fixed(p95 / before.p95) }]
  })
  console.log(`from ${from.cases} to ${to.cases} cases:`)
  console.table(rows)
}

function fixed(figure: number): number {
  return Number(figure.toFixed(2))
}
