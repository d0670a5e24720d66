import { z } from 'zod'
import { bulkingByMoisture, bulkingFromJar } from '#lib/mortar/sand-bulking.ts'
import { correctMoisture } from '#lib/mortar/sand-moisture.ts'
import { leanestProportion, voidsFromDensities, voidsFromWater } from '#lib/mortar/sand-voids.ts'
import { amount, range, step } from '../shapes.ts'
import { stated, sum } from './shapes.ts'

const steps = z.array(step)
const found = z.object({ value: range, unit: z.string(), steps })
const percent = amount({ min: 0, max: 100 })
const millilitres = amount({ above: 0, max: 1e6 })
const density = amount({ above: 0, max: 10_000 })

/** The sand in its heap: how it swells when damp, what it weighs, what lies between its grains. */
export const heapSums = [
  sum(
    'bulking-from-jar',
    'Bulking of damp sand from the heights of the jar test',
    z.strictObject({ dampMm: amount({ above: 0, max: 1e5 }), floodedMm: amount({ above: 0, max: 1e5 }) }),
    found,
    bulkingFromJar,
  ),
  sum(
    'bulking-by-moisture',
    'Bulking of a sand at a moisture, from its curve',
    z.strictObject({
      moisturePercent: percent,
      peakPercent: percent,
      peakMoisturePercent: amount({ above: 0, max: 100 }),
      saturationPercent: amount({ above: 0, max: 200 }),
    }),
    found,
    bulkingByMoisture,
  ),
  sum(
    'correct-moisture',
    'Between sand weighed dry and sand weighed damp, with the free water to leave out of the mix',
    z.strictObject({
      kg: amount({ min: 0, max: 1e9 }),
      weighed: z.enum(['dry', 'damp']),
      moisturePercent: percent,
      absorptionPercent: percent.optional(),
    }),
    z.object({ dryKg: range, dampKg: range, waterKg: range, freeWaterKg: range, steps }),
    (given) => correctMoisture(stated(given)),
  ),
  sum(
    'voids-from-water',
    'Voids of a sand by the water that fills them',
    z.strictObject({ sandMl: millilitres, waterMl: millilitres }),
    found,
    voidsFromWater,
  ),
  sum(
    'voids-from-densities',
    'Voids of a sand by its densities',
    z.strictObject({ bulkKgM3: density, particleKgM3: density }),
    found,
    voidsFromDensities,
  ),
  sum(
    'leanest-proportion',
    'The leanest proportion whose paste still fills the voids: a floor, not a target',
    z.strictObject({ voidsPercent: amount({ above: 0, max: 95 }), pasteL: amount({ above: 0, max: 10 }) }),
    found,
    leanestProportion,
  ),
] as const
