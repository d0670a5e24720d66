import { z } from 'zod'
import { CARBON_METHOD, countCarbon } from '#lib/mortar/carbon.ts'
import { carbonate } from '#lib/mortar/cure.ts'
import { coefficientFrom } from '#lib/mortar/cure-coefficient.ts'
import { dryEarth } from '#lib/mortar/drying.ts'
import { assessFrost } from '#lib/mortar/frost.ts'
import { range, step } from '../shapes.ts'
import { above, ranged, share, sum } from './shapes.ts'

const faces = z.union([z.literal(1), z.literal(2)])
const kMmPerRootDay = above(50)
const depthMm = above(5000)
const nothing = { low: 0, typical: 0, high: 0 }
const kilos = ranged({ min: 0 })
const distanceKm = ranged({ min: 0, max: 50_000 })
const NIGHTS = ['frost', 'near-frost', 'cold', 'none', 'unknown'] as const

const cureOperation = sum(
  'carbonate',
  'Depth carbonated at given ages and the time to full depth, by x = k √t',
  z.strictObject({
    kMmPerRootDay,
    depthMm,
    faces,
    ages: z.array(z.number().min(0).max(400_000)).min(1).max(100),
  }),
  z.object({
    depths: z.array(z.object({ days: z.number(), mm: range, share: range })),
    fullDays: range,
    steps: z.array(step),
  }),
  carbonate,
)

const coefficientOperation = sum(
  'carbonation-coefficient',
  'The k of x = k √t from a depth measured at a known age',
  z.strictObject({ depthMm, days: above(400_000) }),
  z.object({ k: range, steps: z.array(step) }),
  coefficientFrom,
)

const dryingOperation = sum(
  'dry-earth',
  'Least time for an earth mortar or plaster to dry',
  z.strictObject({
    thicknessMm: above(2000),
    densityKgM3: above(3000),
    moistureAtStart: above(1),
    moistureAtEnd: share,
    lossKgM2Day: above(50),
    faces,
  }),
  z.object({ waterKgM2: range, days: range, steps: z.array(step) }),
  dryEarth,
)

const frostOperation = sum(
  'assess-frost',
  'Frost risk of new work from a run of daily lows',
  z.strictObject({
    dailyLowsC: z.array(z.number().min(-90).max(60).nullable()).min(1).max(3650),
    protectDays: ranged({ min: 1, max: 3650 }),
    coldLimitC: z.number().min(-10).max(20),
    marginK: z.number().min(0).max(10),
  }),
  z.object({
    nights: z.array(z.object({ day: z.int(), lowC: z.number().nullable(), risk: z.enum(NIGHTS) })),
    counts: z.record(z.enum(NIGHTS), z.int()),
    firstFrostDay: z.int().nullable(),
    daysNotCovered: z.int(),
    frostWithin: z.enum(['no-protection', 'longest', 'typical', 'shortest', 'not-known']),
  }),
  assessFrost,
)

const carbonOperation = sum(
  'count-carbon',
  'Carbon dioxide of a job’s mortar: calcination, fuel, other materials, transport, and what the lime takes back',
  z.strictObject({
    mortarL: above(),
    limes: z
      .array(
        z.strictObject({
          massKg: kilos,
          caoShare: share,
          mgoShare: share.default(nothing),
          fuelKgPerKg: ranged({ min: 0, max: 10 }).default(nothing),
          kilnDustShare: share.optional(),
          distanceKm: distanceKm.default(nothing),
        }),
      )
      .max(12),
    others: z
      .array(
        z.strictObject({
          massKg: kilos,
          gateKgPerKg: ranged({ min: -100, max: 1000 }),
          distanceKm: distanceKm.default(nothing),
        }),
      )
      .max(24),
    transportKgPerTkm: ranged({ min: 0, max: 100 }),
    uptakeShare: share,
    kMmPerRootDay,
    depthMm,
    years: z.array(z.number().min(0).max(2000)).max(100),
  }),
  z.object({
    method: z.literal(CARBON_METHOD),
    calcination: range,
    fuel: range,
    others: range,
    transport: range,
    released: range,
    uptake: z.array(z.object({ years: z.number(), takenKg: range, leftKg: range })),
    inTheEnd: z.object({ takenKg: range, leftKg: range }),
    perM3: range,
    steps: z.array(step),
  }),
  countCarbon,
)

export const timeSums = [
  cureOperation,
  coefficientOperation,
  dryingOperation,
  frostOperation,
  carbonOperation,
] as const
