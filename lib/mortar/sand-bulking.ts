import { type Amount, readAmounts } from './amount.ts'
import { bulkingAt } from './bulking.ts'
import { given, type Step, working } from './explain.ts'
import { attempt, MortarFault, type Outcome } from './fault.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

/** A figure with its working. */
export interface Found {
  readonly value: Range
  readonly unit: string
  readonly steps: readonly Step[]
}

const height = { above: 0, max: 1e5, unit: 'mm' }
const percent = { min: 0, max: 100, unit: '%' }

/**
 * Bulking from the jar test: damp sand dropped loose into a straight-sided jar, its height read, then
 * flooded and stirred, and read again. % of the dry (flooded) volume.
 *
 * @example bulkingFromJar({ dampMm: 200, floodedMm: 160 }) // 25 %
 */
export const bulkingFromJar = (jar: { dampMm: Amount; floodedMm: Amount }): Outcome<Found> =>
  attempt(() => {
    const h = readAmounts(jar, { dampMm: height, floodedMm: height })
    const { dampMm, floodedMm } = h
    if (floodedMm.high > dampMm.low)
      throw new MortarFault({
        field: 'floodedMm',
        code: 'too-large',
        value: floodedMm.high,
        limit: dampMm.low,
        unit: 'mm',
      })
    const { bulking } = spread(h, (x) => ({ bulking: (100 * (x.dampMm - x.floodedMm)) / x.floodedMm }))
    return {
      value: bulking,
      unit: '%',
      steps: [
        given('h_d', 'jarDamp', dampMm, 'mm'),
        given('h_f', 'jarFlooded', floodedMm, 'mm'),
        {
          ...given('b', 'bulking', bulking, '%'),
          formula: '100 · (h_d − h_f) / h_f',
          numbers: working`100 · (${dampMm.typical} − ${floodedMm.typical}) / ${floodedMm.typical}`,
        },
      ],
    }
  })

/** A moisture, and what the sand does when damp: moistures in % of dry mass, the peak in % of dry volume. */
export interface BulkingInput {
  readonly moisturePercent: Amount
  readonly peakPercent: Amount
  readonly peakMoisturePercent: Amount
  readonly saturationPercent: Amount
}

/** Bulking at a moisture, % of the dry volume, from the sand's curve. Refuses moisture over saturation. */
export const bulkingByMoisture = (input: BulkingInput): Outcome<Found> =>
  attempt(() => {
    const r = readAmounts(input, {
      moisturePercent: percent,
      peakPercent: percent,
      peakMoisturePercent: { above: 0, max: 100, unit: '%' },
      saturationPercent: { above: 0, max: 200, unit: '%' },
    })
    refuseOver('moisturePercent', r.moisturePercent.high, r.saturationPercent.high)
    if (r.peakMoisturePercent.high >= r.saturationPercent.low)
      refuseOver('peakMoisturePercent', r.peakMoisturePercent.high, r.saturationPercent.low, true)
    const { bulking } = spread(r, (x) => ({
      bulking: bulkingAt(x.moisturePercent, x.peakPercent, x.peakMoisturePercent, x.saturationPercent),
    }))
    return {
      value: bulking,
      unit: '%',
      steps: [
        given('w', 'sandMoisture', r.moisturePercent, '%'),
        given('b_max', 'bulkingPeak', r.peakPercent, '%'),
        given('w_max', 'bulkingPeakMoisture', r.peakMoisturePercent, '%'),
        given('w_s', 'saturation', r.saturationPercent, '%'),
        {
          ...given('b', 'bulkingCurve', bulking, '%'),
          formula: 'b_max · (1 − t²); t = 1 − w / w_max up to w_max, then (w − w_max) / (w_s − w_max)',
        },
      ],
    }
  })

function refuseOver(field: string, value: number, limit: number, even = false): void {
  if (value > limit || (even && value === limit))
    throw new MortarFault({
      field,
      code: 'too-large',
      value,
      limit,
      ...(even && { exclusive: true }),
      unit: '%',
    })
}
