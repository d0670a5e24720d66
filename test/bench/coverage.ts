import { type Clustered, DAYS_PER_YEAR, estimateCurve, quantileOf } from '#lib/evidence/index.ts'
import { randomOf } from '#lib/evidence/random.ts'

/**
 * How often the 95 % bands hold the truth: `npm run bench -- coverage [runs]`. Walls wear at a known hazard, are
 * visited at random times for a random while, and the estimate is held against the curve they came from.
 * Nothing is asserted; 500 runs put a coverage near 95 % within about 2 %.
 */

const RUNS = Number(process.argv[2] ?? 500)
const YEARS = [2, 5, 10, 15]
/** A wall in ten goes in about two years, half in ten. */
const RATE_PER_YEAR = Math.LN2 / 10
const LOST_AFTER_YEARS = { least: 4, most: 22 }
const VISIT_GAP_YEARS = { least: 0.5, most: 5 }

interface Scene {
  readonly buildings: number
  readonly wallsEach: number
  /** Variance of what walls of one building share; 0: nothing. */
  readonly shared: number
}

const random = randomOf(20261125)
const unit = () => (random(2 ** 31) + 0.5) / 2 ** 31
const between = ({ least, most }: { least: number; most: number }) => least + unit() * (most - least)

/** Share standing after `years`, over buildings whose hazards differ by a gamma factor of that variance. */
const truth = (years: number, { shared }: Scene) =>
  shared === 0 ? Math.exp(-RATE_PER_YEAR * years) : (1 + shared * RATE_PER_YEAR * years) ** (-1 / shared)

/** A gamma factor with mean 1 and variance 1 (exponential) or 1/2 (the mean of two), or none. */
const factorOf = ({ shared }: Scene) => {
  if (shared === 0) return 1
  const parts = Math.round(1 / shared)
  let sum = 0
  for (let k = 0; k < parts; k++) sum -= Math.log(unit())
  return sum / parts
}

function visitWall(cluster: number, factor: number): Clustered {
  const wornYears = -Math.log(unit()) / (RATE_PER_YEAR * factor)
  const lastYears = between(LOST_AFTER_YEARS)
  let from = 0
  for (;;) {
    const visitYears = from + between(VISIT_GAP_YEARS)
    if (visitYears > lastYears) return days(cluster, from, null)
    if (visitYears >= wornYears) return days(cluster, from, visitYears)
    from = visitYears
  }
}

const days = (cluster: number, fromYears: number, toYears: number | null): Clustered => ({
  cluster,
  from: Math.round(fromYears * DAYS_PER_YEAR),
  to: toYears === null ? null : Math.round(toYears * DAYS_PER_YEAR),
})

const draw = (scene: Scene) =>
  Array.from({ length: scene.buildings }, (_, building) => {
    const factor = factorOf(scene)
    return Array.from({ length: scene.wallsEach }, () => visitWall(building, factor))
  }).flat()

const percent = (share: number) => `${(100 * share).toFixed(1)} %`.padStart(8)

function measure(scene: Scene): void {
  const { buildings, wallsEach, shared } = scene
  console.log(`\n${buildings} buildings of ${wallsEach}, shared variance ${shared}, ${RUNS} runs`)
  const found = YEARS.map(() => ({ held: 0, below: 0, above: 0, bias: 0, width: 0 }))
  let medians = 0
  const medianDay = yearsToHalf(scene) * DAYS_PER_YEAR
  for (let run = 0; run < RUNS; run++) {
    const days = Array.from({ length: 41 }, (_, k) => Math.round((k / 2) * DAYS_PER_YEAR))
    const curve = estimateCurve(draw(scene), { days, seed: run })
    YEARS.forEach((years, k) => {
      const point = curve.points[2 * years]
      const at = found[k]
      if (point === undefined || at === undefined) return
      const share = truth(years, scene)
      if (share < point.bandLow) at.below++
      else if (share > point.bandHigh) at.above++
      else at.held++
      at.bias += (point.low + point.high) / 2 - share
      at.width += point.bandHigh - point.bandLow
    })
    const { low, high } = quantileOf(curve, 0.5)
    if ((low ?? 0) <= medianDay && medianDay <= (high ?? Number.POSITIVE_INFINITY)) medians++
  }
  console.log('years   truth    bias of middle   band holds it   truth below   above   mean width')
  found.forEach(({ held, below, above, bias, width }, k) => {
    const years = YEARS[k] as number
    const cells = [truth(years, scene), bias / RUNS, held / RUNS, below / RUNS, above / RUNS, width / RUNS]
    console.log(`${String(years).padStart(5)} ${cells.map(percent).join('  ')}`)
  })
  console.log(`limits of the median hold it: ${percent(medians / RUNS)}`)
}

/** Years by which half of the walls have worn. */
function yearsToHalf({ shared }: Scene): number {
  return shared === 0 ? Math.LN2 / RATE_PER_YEAR : (2 ** shared - 1) / (shared * RATE_PER_YEAR)
}

for (const scene of [
  { buildings: 10, wallsEach: 1, shared: 0 },
  { buildings: 40, wallsEach: 1, shared: 0 },
  { buildings: 150, wallsEach: 1, shared: 0 },
  { buildings: 20, wallsEach: 4, shared: 1 },
])
  measure(scene)
