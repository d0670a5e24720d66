import { exactly } from '#lib/mortar/range.ts'
import { analyseSample, type SampleInput } from '#lib/mortar/sample.ts'
import { SAMPLE_INPUTS, sampleSum } from '#lib/mortar/sample-sum.ts'
import { type BlendInput, blendSands } from '#lib/mortar/sieve-blend.ts'
import { curveOf, limeOf } from '../mortar/analysis-fixtures.ts'
import { medianUs, perDrawUs, row } from './clock.ts'

/**
 * Times a sample analysis and a blend: `npx tsx test/bench/analysis.ts`. Prints the median of many runs,
 * and how one draw of the analysis compares with the same arithmetic written flat.
 */

const between = (low: number, typical: number, high: number) => ({ low, typical, high })
const property = (typical: number) => ({ ...exactly(typical), unit: 'kg/m3', basis: 'read' as const })

const EXACT: SampleInput = {
  sampleG: 20,
  aggregateG: 15,
  finesG: 0.6,
  fines: 'aggregate',
  calcareousShare: exactly(0.02),
  carbonation: exactly(0.95),
  otherSolubleShare: exactly(0.005),
  lime: limeOf({ freeCaO: 0.9 }),
  aggregate: { bulkDensity: property(1600) },
}
const RANGED: SampleInput = {
  ...EXACT,
  balanceG: 0.01,
  calcareousShare: between(0, 0.02, 0.05),
  carbonation: between(0.8, 0.95, 1),
  otherSolubleShare: between(0, 0.005, 0.02),
  aggregate: { bulkDensity: { ...property(1600), low: 1500, high: 1700 } },
}

/** The whole analysis of a pure reading in one row of formulas, masses in g, densities in kg/m³. */
function flat(x: Float64Array, out: Float64Array): void {
  const filler = (x[1] as number) + (x[2] as number)
  const rock = (filler * (x[4] as number)) / (1 - (x[4] as number))
  const hydrate =
    ((x[0] as number) - filler - (x[6] as number) * (x[0] as number) - rock) /
    (1 + 0.35083 * (x[5] as number))
  const quicklime = (hydrate * 0.75686) / (x[7] as number)
  const slaked = quicklime * (1 + 0.32126 * (x[7] as number))
  const putty = (slaked * (1 - 1000 / (x[12] as number))) / (1 - 1000 / (x[11] as number))
  const total = filler + rock
  const volume = total / (x[13] as number)
  out[0] = (x[0] as number) - filler
  out[1] = rock
  out[2] = hydrate
  out[3] = (100 * (x[2] as number)) / (total + slaked)
  out[4] = total / quicklime
  out[5] = (volume * (x[8] as number)) / quicklime
  out[6] = (volume * (x[9] as number)) / quicklime
  out[7] = (100 * quicklime) / (quicklime + total)
  out[8] = total / slaked
  out[9] = (volume * (x[10] as number)) / slaked
  out[10] = (100 * slaked) / (slaked + total)
  out[11] = total / putty
  out[12] = (volume * (x[11] as number)) / putty
}

const INPUT = Float64Array.from([20, 15, 0.6, 0, 0.02, 0.95, 0.005, 0.9, 850, 1200, 480, 1350, 2240, 1600])
const drawUs = (sum: (x: Float64Array, out: Float64Array) => void) => {
  const x = INPUT.slice(0, SAMPLE_INPUTS.length)
  const out = new Float64Array(20)
  return perDrawUs((i) => {
    x[0] = 20 + (i & 7) / 100
    sum(x, out)
  })
}

const OPENINGS = [4.75, 2.36, 1.18, 0.6, 0.3, 0.15]
const SANDS = [
  [100, 100, 95, 80, 40, 10],
  [100, 85, 55, 30, 10, 2],
  [100, 98, 85, 60, 22, 8],
  [100, 70, 40, 20, 8, 3],
  [100, 100, 100, 95, 60, 20],
  [90, 60, 30, 15, 5, 1],
  [100, 95, 90, 40, 10, 4],
  [100, 100, 90, 70, 50, 30],
]
const blend = (sands: number, half: number): BlendInput => ({
  sands: SANDS.slice(0, sands).map((passing) => ({
    curve: curveOf(OPENINGS, passing).map(({ openingMm, passing: { typical } }) => ({
      openingMm,
      passing: between(Math.max(0, typical - half), typical, Math.min(100, typical + half)),
    })),
  })),
  target: OPENINGS.map((openingMm, i) => ({ openingMm, passing: [100, 94, 78, 58, 27, 9][i] ?? 0 })),
})

const reading = { fines: 'aggregate', co2Measured: false } as const
const sum = (x: Float64Array, out: Float64Array) => sampleSum(x, out, reading)
// The first round is for the compiler.
drawUs(flat)
drawUs(sum)
const [byHand, ours] = [drawUs(flat), drawUs(sum)]
row('one draw of a sample, flat by hand', byHand)
row('one draw of a sample, our sum', ours, `ratio ${(ours / byHand).toFixed(1)} (aim 2)`)
row(
  'sample analysis without ranges',
  medianUs(() => analyseSample(EXACT), 400),
)
row(
  'sample analysis, 10,000 draws',
  medianUs(() => analyseSample(RANGED), 60),
)
for (const sands of [2, 3, 4, 8]) {
  row(
    `blend of ${sands} sands without ranges`,
    medianUs(() => blendSands(blend(sands, 0)), 100),
  )
  row(
    `blend of ${sands} sands, 400 draws`,
    medianUs(() => blendSands(blend(sands, 2)), 15),
  )
}
