import { type Counted, estimateCurve, estimateIncidence, estimateTurnbull } from '#lib/evidence/index.ts'
import { randomOf } from '#lib/evidence/random.ts'
import { medianUs, row } from './clock.ts'

/**
 * Times Turnbull's estimate: `npm run bench -- turnbull`. Beside it a plain loop that reads the same intervals
 * once, and one step of the textbook's EM, which asks of every interval which stretches it holds.
 */

const random = randomOf(20261125)
const unit = () => (random(2 ** 31) + 0.5) / 2 ** 31
const waiting = (mean: number) => -Math.log(unit()) * mean

/** Distinct intervals of walls that wear at random and are visited at random, days. */
function visited(count: number): Counted[] {
  const found = new Map<string, Counted>()
  while (found.size < count) {
    const worn = waiting(4000)
    const last = unit() * 8000
    let from = 0
    let to: number | null = null
    while (to === null) {
      const visit = from + waiting(1200)
      if (visit > last) break
      if (visit >= worn) to = visit
      else from = visit
    }
    const interval = { from: Math.round(from), to: to === null ? null : Math.round(to) }
    found.set(`${interval.from} ${interval.to}`, interval)
  }
  return [...found.values()]
}
const exactDays = (count: number): Counted[] =>
  Array.from({ length: count }, () => {
    const [worn, last] = [waiting(4000), unit() * 8000]
    return worn <= last ? { from: worn, to: worn } : { from: last, to: null }
  })

/** Reads every interval once. */
function readOnce(from: Float64Array, to: Float64Array): number {
  let sum = 0
  for (let i = 0; i < from.length; i++) sum += Math.log(1 + (to[i] as number) - (from[i] as number))
  return sum
}

/** One step of EM as textbooks write it: every interval against every stretch. */
function stepPlainly(from: Float64Array, to: Float64Array, places: Float64Array): Float64Array {
  const mass = new Float64Array(places.length).fill(1 / places.length)
  const next = new Float64Array(places.length)
  for (let i = 0; i < from.length; i++) {
    let held = 0
    for (let j = 0; j < places.length; j++)
      if ((places[j] as number) > (from[i] as number) && (places[j] as number) <= (to[i] as number))
        held += mass[j] as number
    for (let j = 0; j < places.length; j++)
      if ((places[j] as number) > (from[i] as number) && (places[j] as number) <= (to[i] as number))
        next[j] = (next[j] as number) + (mass[j] as number) / held
  }
  return next
}

for (const count of [100, 1000, 10_000]) {
  const intervals = visited(count)
  const from = Float64Array.from(intervals, (each) => each.from)
  const to = Float64Array.from(intervals, (each) => each.to ?? 1e9)
  const places = Float64Array.from(intervals.slice(0, 500), (each) => each.to ?? 1e9)
  const times = count > 5000 ? 9 : 40
  const plain = medianUs(() => readOnce(from, to), 200)
  const estimate = medianUs(() => estimateTurnbull(intervals), times)
  const { iterations, excess } = estimateTurnbull(intervals)
  row(`plain loop over ${count} intervals`, plain)
  row(
    `Turnbull on ${count} distinct intervals`,
    estimate,
    `ratio ${(estimate / plain).toFixed(0)}, ${iterations} steps (${(estimate / plain / iterations).toFixed(1)} each), excess ${excess.toExponential(1)}`,
  )
  row(
    'one textbook step of EM, 500 stretches at most',
    medianUs(() => stepPlainly(from, to, places), count > 5000 ? 3 : 20),
  )
}

const exact = exactDays(10_000)
row(
  'Turnbull on 10000 exact days',
  medianUs(() => estimateTurnbull(exact), 5),
)
const caused = visited(10_000).map((each) => ({
  ...each,
  cause: each.to === null ? null : (['a', 'b', 'c'][random(3)] as string),
}))
row(
  'three competing causes on 10000 intervals',
  medianUs(() => estimateIncidence(caused), 3),
)
for (const [walls, grid, buildings] of [
  [200, 1, 150],
  [10_000, 30, 5000],
  [100_000, 91, 200],
] as const) {
  const rows = visited(Math.min(walls, 20_000)).flatMap(({ from, to }) =>
    Array.from({ length: Math.ceil(walls / 20_000) }, () => ({
      from: Math.floor(from / grid) * grid,
      to: to === null ? null : Math.ceil(to / grid) * grid,
      cluster: random(buildings),
    })),
  )
  const days = Array.from({ length: 41 }, (_, k) => k * 182)
  row(
    `curve with band, ${walls} walls on ${grid} days, ${buildings} buildings`,
    medianUs(() => estimateCurve(rows, { days }), 3),
  )
}
