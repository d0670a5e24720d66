import { z } from 'zod'
import { checkCertificate } from '#lib/mortar/certificate.ts'
import { CERTIFICATE_ITEMS, type CertificateItem, LIME_CLASSES } from '#lib/mortar/certificate-limits.ts'
import {
  REACTIVITY_LIMITS,
  type ReactivityClass,
  SIZE_LIMITS,
  type SizeClass,
} from '#lib/mortar/certificate-quicklime.ts'
import { classifyLime } from '#lib/mortar/chemistry.ts'
import { burnStone } from '#lib/mortar/chemistry-stone.ts'
import { LIME_STATES } from '#lib/mortar/lime.ts'
import { BASES } from '#lib/mortar/range.ts'
import { analyseSample, FINES_KINDS } from '#lib/mortar/sample.ts'
import { rankNearest } from '#lib/mortar/sample-nearest.ts'
import { range, step } from '../shapes.ts'
import { above, material, percent, ranged, share, sum } from './shapes.ts'

const basis = z.enum(BASES)
const state = z.enum(LIME_STATES)
const reactivityClasses = Object.keys(REACTIVITY_LIMITS) as [ReactivityClass, ...ReactivityClass[]]
const sizeClasses = Object.keys(SIZE_LIMITS) as [SizeClass, ...SizeClass[]]
const items = Object.keys(CERTIFICATE_ITEMS) as [CertificateItem, ...CertificateItem[]]

const sampleOperation = sum(
  'analyse-sample',
  'Original proportions of a hardened mortar from acid dissolution, on each lime state, with what acid cannot tell',
  z.strictObject({
    sampleG: z.number().positive(),
    aggregateG: z.number().min(0),
    finesG: z.number().min(0),
    fines: z.enum(FINES_KINDS),
    balanceG: z.number().min(0).optional(),
    co2G: ranged({ min: 0 }).optional(),
    calcareousShare: share,
    carbonation: share,
    otherSolubleShare: share,
    lime: material,
    aggregate: material,
  }),
  z.object({
    hydrateG: range,
    caoG: range,
    carbonation: range,
    aggregateG: range,
    clayPercent: range.nullable(),
    ratios: z.array(z.object({ state, byMass: range, byVolume: range, limePercent: range })),
    doubts: z.array(z.string()),
    steps: z.array(step),
  }),
  analyseSample,
)

const nearestOperation = sum(
  'nearest-proportions',
  'Given rows in order of likeness to the ratios of a sample',
  z.strictObject({
    ratios: z
      .array(z.strictObject({ state, byVolume: above() }))
      .min(1)
      .max(4),
    rows: z
      .array(z.strictObject({ id: z.string().min(1).max(200), state, aggregatePerLime: above() }))
      .max(1000),
  }),
  z.array(z.object({ id: z.string(), state, leanness: z.number(), overlaps: z.boolean() })),
  ({ ratios, rows }) => ({ ok: true, value: rankNearest(ratios, rows) }),
)

const chemistryOperation = sum(
  'classify-lime',
  'Hydraulic and cementation indices of a lime from its oxides, its class under each named scheme, and its free lime',
  z.strictObject({
    sio2: percent,
    al2o3: percent,
    fe2o3: percent,
    cao: percent,
    mgo: percent,
    co2: percent.optional(),
    so3: percent.optional(),
    clayInStone: percent.optional(),
  }),
  z.object({
    candlotIndex: range,
    fullIndex: range,
    cementationIndex: range,
    freeCaO: range,
    freeHydrate: range,
    classes: z.array(
      z.object({
        scheme: z.string(),
        measure: z.string(),
        value: range,
        classes: z.array(z.string()),
        typical: z.string().nullable(),
        basis,
        source: z.string().optional(),
      }),
    ),
    steps: z.array(step),
  }),
  classifyLime,
)

const stoneOperation = sum(
  'burn-stone',
  'Silica with alumina, and Candlot’s index, of the lime that a limestone with so much clay makes',
  z.strictObject({ clayInStone: ranged({ min: 0, max: 99 }) }),
  z.object({ oxides: range, candlotIndex: range }),
  ({ clayInStone }) => burnStone(clayInStone),
)

const certificateOperation = sum(
  'check-certificate',
  'A lime’s test certificate against the single-result limits of EN 459-1, item by item; no verdict on the whole',
  z.strictObject({
    class: z.enum(LIME_CLASSES),
    reactivityClass: z.enum(reactivityClasses).optional(),
    sizeClass: z.enum(sizeClasses).optional(),
    results: z.partialRecord(z.enum(items), z.number()),
  }),
  z.array(
    z.object({
      item: z.enum(items),
      unit: z.string(),
      value: z.number().nullable(),
      kind: z.enum(['single-result', 'declared']),
      min: z.number().nullable(),
      max: z.number().nullable(),
      outcome: z.enum(['meets', 'breaks', 'not-verified', 'not-given']),
      unsure: z.enum(['memory', 'disputed']).nullable(),
      basis,
      source: z.string(),
    }),
  ),
  checkCertificate,
)

export const limeSums = [
  sampleOperation,
  nearestOperation,
  chemistryOperation,
  stoneOperation,
  certificateOperation,
] as const
