import { workJob } from '#lib/mortar/job.ts'
import { jobKernel } from '#lib/mortar/job-kernel.ts'
import { jobOutputNames } from '#lib/mortar/job-layout.ts'
import { planJob } from '#lib/mortar/job-plan.ts'
import type { JobInput } from '#lib/mortar/job-types.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { spreadVector } from '#lib/mortar/spread.ts'
import { variables } from '#lib/mortar/variables.ts'
import { lime, RANGED_LIME, RANGED_SAND, sand } from '../mortar/core-fixtures.ts'
import { medianUs, perDrawUs, row } from './clock.ts'

/**
 * Times the core sums: `npx tsx test/bench/job.ts`. Prints the median of many runs, in microseconds, and
 * how the arithmetic of one draw compares with the same arithmetic written flat, by hand, for one recipe.
 */

const between = (low: number, typical: number, high: number) => ({ low, typical, high })

const job = (sands: number): JobInput => ({
  ingredients: [lime(1, 'lump-quicklime'), ...Array.from({ length: sands }, () => sand(3 / sands))],
  materials: { lime: RANGED_LIME, sand: RANGED_SAND },
  method: 'hot-mixed-used-hot',
  work: {
    kind: 'pointing',
    areaM2: 24,
    unitLengthMm: 215,
    unitHeightMm: 65,
    jointMm: between(8, 10, 12),
    depthMm: between(20, 25, 40),
  },
  lossPercent: between(5, 10, 20),
  limeState: 'putty',
  sandMoisturePercent: between(3, 5, 7),
})

/** One lime lump, putty on site, one damp sand, pointing: every formula of a sheet in a row. */
function flat(x: Float64Array, out: Float64Array): void {
  const net =
    ((x[0] as number) - (x[1] as number)) *
    (1 -
      ((x[2] as number) * (x[3] as number)) /
        (((x[2] as number) + (x[4] as number)) * ((x[3] as number) + (x[4] as number)))) *
    (x[5] as number)
  const mortar = net * (1 + (x[6] as number))
  const quicklime = ((x[7] as number) * (x[8] as number)) / 1000
  const hydrate = quicklime * (1 + (x[9] as number) * 0.32125)
  const solids = (1 - 1000 / (x[10] as number)) / (1 - 1000 / (x[11] as number))
  const dry = ((x[12] as number) * (x[13] as number)) / 1000
  const free = hydrate * (1 / solids - 1) + dry * (x[14] as number)
  const made =
    ((hydrate / (x[11] as number) + dry / (x[15] as number)) * 1000 + free) / (1 - (x[16] as number))
  const times = mortar / made
  const moisture = x[17] as number
  const t =
    moisture <= (x[19] as number)
      ? 1 - moisture / (x[19] as number)
      : (moisture - (x[19] as number)) / ((x[20] as number) - (x[19] as number))
  const bulking = moisture >= (x[20] as number) ? 0 : (x[18] as number) * (1 - t * t)
  const putty = (hydrate * times) / solids
  const brought = dry * times * moisture + putty - hydrate * times
  const short = Math.max(0, free * times - brought)
  out[0] = net
  out[1] = mortar
  out[2] = putty
  out[3] = (1000 * putty) / (x[10] as number)
  out[4] = dry * times * (1 + moisture)
  out[5] = (x[12] as number) * times * (1 + bulking)
  out[6] = free * times
  out[7] = short * (x[21] as number)
  out[8] = short
  out[9] = made
}

const FLAT_INPUT = Float64Array.from([
  24, 0, 215, 65, 10, 25, 0.1, 1, 850, 0.9, 1350, 2240, 3, 1520, 0.06, 2650, 0.05, 0.05, 0.28, 0.05, 0.2, 0.8,
])

/** Another 1,024 draws about the same numbers, so that no part of a sum can be kept from one to the next. */
const drawsAbout = (typical: Float64Array): Float64Array[] =>
  Array.from({ length: 1024 }, (_, i) =>
    typical.map((value, k) => value * (1 + 0.01 * Math.sin(i * (k + 1)))),
  )

function drawnUs(typical: Float64Array, calculate: (x: Float64Array) => void): number {
  const drawn = drawsAbout(typical)
  const x = typical.slice()
  return perDrawUs((i) => {
    x.set(drawn[i & 1023] as Float64Array)
    calculate(x)
  })
}

function kernelUs(): number {
  const vars = variables()
  const plan = planJob(job(1), vars)
  const kernel = jobKernel(plan)
  const out = new Float64Array(jobOutputNames(plan).length)
  const typical = Float64Array.from(vars.ranges, (range) => range.typical)
  return drawnUs(typical, (x) => kernel(x, out, 0))
}

function flatUs(): number {
  const out = new Float64Array(10)
  return drawnUs(FLAT_INPUT, (x) => flat(x, out))
}

/** 10,000 draws of the flat sum, drawn and gathered as ours are. */
function flatSheetUs(): number {
  const names = Array.from(FLAT_INPUT, (_, k) => `flat.${k}`)
  const ranges = Array.from(FLAT_INPUT, (typical) => between(0.98 * typical, typical, 1.02 * typical))
  const outputs = Array.from({ length: 10 }, (_, k) => `out.${k}`)
  return medianUs(() => spreadVector(names, ranges, outputs, flat), 30)
}

const [kernel, byHand] = [kernelUs(), flatUs()]
row('one draw, flat by hand', byHand)
row('one draw, our kernel', kernel, `ratio ${(kernel / byHand).toFixed(1)}; aim 2`)
row(
  'job sheet without ranges',
  medianUs(() => workJob({ ...job(1), draws: 1 }), 200),
)
const [sheet, flatSheet] = [medianUs(() => workJob(job(1)), 30), flatSheetUs()]
row('10,000 draws, flat by hand', flatSheet)
row('job sheet, 10,000 draws', sheet, `ratio ${(sheet / flatSheet).toFixed(1)}; aim 20,000`)
row(
  'proportions, 10,000 draws',
  medianUs(() => proportions(job(1)), 30),
)
for (const sands of [1, 2, 4, 8])
  row(
    `job sheet, 10,000 draws, ${sands + 1} ingredients`,
    medianUs(() => workJob(job(sands)), 15),
  )
