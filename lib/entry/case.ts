import { z } from 'zod'
import { carried, harm } from './common.ts'
import { day, partialDate, parts, revisionRef, slug, text } from './fields.ts'
import {
  ASPECTS,
  DRIVING_RAIN,
  FROST,
  GROUND,
  MEASURED_STATES,
  MEASURES,
  SALTS,
  STRUCTURES,
  USES,
  WALL_TYPES,
  WORK_ENDS,
} from './terms.ts'
import { workedOnList } from './worked-on.ts'

export const CASE_SHAPE = 1

const place = z
  .strictObject({
    /** ISO 3166-1 alpha-2. */
    country: z.string().regex(/^[A-Z]{2}$/),
    region: text(80),
    /** A parish or settlement; never an address. */
    locality: text(80).optional(),
    /** Degrees, rounded to 0.1 (about 10 km) unless the owner agreed to more. */
    latitude: z.number().min(-90).max(90).optional(),
    longitude: z.number().min(-180).max(180).optional(),
    ownerAgreedPosition: z.boolean().optional(),
  })
  .refine(
    ({ latitude, longitude, ownerAgreedPosition }) =>
      ownerAgreedPosition === true || [latitude, longitude].every((d) => d === undefined || isTenth(d)),
    { path: ['latitude'], error: 'too-precise' },
  )

const isTenth = (degrees: number) => Math.abs(degrees * 10 - Math.round(degrees * 10)) < 1e-9

/** What was found in a mortar: parts by the analysis named, none of it computed here. */
const sample = z.strictObject({
  id: slug,
  location: text(160),
  analysis: z.enum(['none', 'eye-and-hand', 'acid-dissolution', 'thin-section', 'laboratory-other']),
  finding: text(600).optional(),
})

const mortarFound = z.strictObject({
  id: slug,
  where: text(160),
  phase: text(120).optional(),
  description: text(600),
  samples: z.array(sample).max(12),
})

/** What went into the mixer, as against what the recipe says. */
const mixed = z.strictObject({
  ingredients: z
    .array(
      z.strictObject({
        material: slug,
        parts,
        by: z.enum(MEASURES),
        state: z.enum(MEASURED_STATES),
        /** Facts on what was mixed, if known. Never a headline, filter or comparison. */
        supplier: text(80).optional(),
        batch: text(80).optional(),
        certificate: text(120).optional(),
      }),
    )
    .max(12),
  waterL: z.number().nonnegative().max(10000).optional(),
  sandMoisturePercent: z.number().min(0).max(40).optional(),
  hottestC: z.number().min(0).max(400).optional(),
  hoursToUse: z.number().min(0).max(50000).optional(),
  note: text(400).optional(),
})

export const work = z
  .strictObject({
    id: slug,
    title: text(120),
    use: z.enum(USES),
    areaM2: z.number().positive().max(100000).optional(),
    started: partialDate,
    finished: partialDate,
    weather: text(300).optional(),
    protection: text(300).optional(),
    tools: text(300).optional(),
    recipe: revisionRef.optional(),
    /** Id of one of this case's mortars that the work replaced or matched. */
    mortar: slug.optional(),
    /** The work touched what holds the wall up. */
    structural: z.boolean().optional(),
    mixed: mixed.optional(),
    ended: z.strictObject({ how: z.enum(WORK_ENDS), on: partialDate, note: text(300).optional() }).optional(),
  })
  .refine((w) => w.started.slice(0, 4) <= w.finished.slice(0, 4), {
    path: ['finished'],
    error: 'before-start',
  })
export type Work = z.infer<typeof work>

/** One wall or one distinct area: its fabric, the mortars found in it, the works done to it. */
export const caseBody = z.strictObject({
  title: text(120),
  summary: text(800),
  place,
  structure: z.strictObject({
    type: z.enum(STRUCTURES),
    century: z.number().int().min(-10).max(21).optional(),
  }),
  fabric: z.strictObject({
    units: z
      .array(z.strictObject({ unit: slug, localName: text(80).optional(), note: text(200).optional() }))
      .min(1)
      .max(6),
    wall: z.enum(WALL_TYPES),
    thicknessMm: z.number().positive().max(10000).optional(),
  }),
  mortars: z.array(mortarFound).max(12),
  exposure: z.strictObject({
    drivingRain: z.enum(DRIVING_RAIN),
    frost: z.enum(FROST),
    salts: z.array(z.enum(SALTS)).max(5),
    ground: z.enum(GROUND),
    aspect: z.enum(ASPECTS),
    note: text(300).optional(),
  }),
  earlier: z
    .array(z.strictObject({ what: text(300), when: partialDate.optional(), condition: text(200).optional() }))
    .max(12),
  works: z.array(work).min(1).max(12),
  /** What the author stands to gain or lose; `none` is an answer too. */
  interests: text(300),
  harm: harm.optional(),
  recordedOn: day,
  /** Sheets that what is told here was worked out on. */
  sheets: workedOnList,
  invented: z.boolean(),
  ...carried,
})
export type CaseBody = z.infer<typeof caseBody>
