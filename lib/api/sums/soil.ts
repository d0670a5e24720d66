import { z } from 'zod'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { readJar, SOIL_PARTS } from '#lib/mortar/subsoil.ts'
import { amendSoil } from '#lib/mortar/subsoil-blend.ts'
import { readHydrometer } from '#lib/mortar/subsoil-hydrometer.ts'
import { limeOnSoil } from '#lib/mortar/subsoil-lime.ts'
import { readShrinkage } from '#lib/mortar/subsoil-shrinkage.ts'
import { readWetSieve } from '#lib/mortar/subsoil-sieve.ts'
import { range, step } from '../shapes.ts'
import { above, material, percent, ranged, sum } from './shapes.ts'

const length = z.number().min(0).max(5000)
const grams = z.number().min(0)
const density = above(5000)
const shares = z.array(z.object({ part: z.enum([...SOIL_PARTS, 'fines']), percent: range }))
const steps = z.array(step)

const jarOperation = sum(
  'read-jar',
  'Clay, silt and sand from the layers of a jar of soil and water',
  z.strictObject({
    sandMm: length,
    siltMm: length,
    clayMm: length,
    markMm: length,
    settled: z.strictObject({ sand: above(3000), silt: above(3000), clay: above(3000) }).optional(),
  }),
  z.object({ byVolume: shares, byMass: shares.nullable(), steps }),
  readJar,
)

const sieveOperation = sum(
  'read-wet-sieve',
  'Gravel, sand and fines from a soil washed through 2 mm and 63 µm',
  z.strictObject({
    dryG: z.number().positive(),
    gravelG: grams,
    sandG: grams,
    balanceG: grams.optional(),
  }),
  z.object({ shares, steps }),
  readWetSieve,
)

const hydrometerOperation = sum(
  'read-hydrometer',
  'Clay and silt from the readings of a 152H hydrometer in a litre',
  z.strictObject({
    massG: z.number().positive().max(200),
    finesPercent: percent,
    finesOnly: z.boolean(),
    particleDensityKgM3: ranged({ above: 1500, max: 5000 }),
    blankGL: ranged({ min: -10, max: 20 }),
    meniscusGL: z.number().min(0).max(5),
    readings: z
      .array(
        z.strictObject({
          minutes: z.number().positive().max(100_000),
          readingGL: z.number().min(0).max(60),
          celsius: z.number().min(5).max(35),
        }),
      )
      .min(2)
      .max(40),
    readingErrorGL: z.number().min(0).max(5).optional(),
  }),
  z.object({
    points: z.array(z.object({ minutes: z.number(), sizeMm: range, finer: range })),
    shares: shares.nullable(),
    steps,
  }),
  readHydrometer,
)

const amendOperation = sum(
  'amend-soil',
  'Sand or clayey soil to add to a soil for a wanted share of clay',
  z.strictObject({
    clayPercent: percent,
    additionClayPercent: percent,
    targetClayPercent: z.number().min(0).max(100),
    soilDensityKgM3: density,
    additionDensityKgM3: density,
  }),
  z.object({ perSoilByMass: range, perSoilByVolume: range, steps }),
  amendSoil,
)

const shrinkageOperation = sum(
  'read-shrinkage',
  'Shrinkage of soil bars in a box, with growing additions',
  z.strictObject({
    boxMm: z.number().positive().max(5000),
    bars: z
      .array(z.strictObject({ additionPerSoil: z.number().min(0).max(100), gapMm: length }))
      .min(1)
      .max(20),
    markMm: length,
    allowedPercent: z.number().min(0).max(100).optional(),
  }),
  z.object({
    bars: z.array(z.object({ additionPerSoil: z.number(), percent: range })),
    leastAddition: z.number().nullable(),
    steps,
  }),
  readShrinkage,
)

const limeOperation = sum(
  'lime-on-soil',
  'Lime on soil in each lime state, by mass and volume, from a dose in any of them; fibre too',
  z.strictObject({
    soilL: above(),
    soilDensityKgM3: density,
    percent: above(1000),
    by: z.enum(['mass', 'volume']),
    state: z.enum(LIME_STATES),
    lime: material,
    fibreKgM3: ranged({ min: 0, max: 200 }).optional(),
    fibreDensityKgM3: above(2000).optional(),
  }),
  z.object({
    soilKg: range,
    states: z.array(
      z.object({
        state: z.enum(LIME_STATES),
        massKg: range,
        volumeL: range,
        percentByMass: range,
        percentByVolume: range,
        soilPerLime: range,
      }),
    ),
    fibreKg: range.nullable(),
    fibreL: range.nullable(),
    steps,
  }),
  limeOnSoil,
)

export const soilSums = [
  jarOperation,
  sieveOperation,
  hydrometerOperation,
  amendOperation,
  shrinkageOperation,
  limeOperation,
] as const
