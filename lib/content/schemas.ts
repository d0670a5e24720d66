import { z } from 'zod'
import { citation, slug } from '#lib/entry/fields.ts'
import { SOURCE_TYPES } from '#lib/entry/source.ts'
import { MEASURED_STATES, METHODS, ROLES, STANDINGS, USES } from '#lib/entry/terms.ts'
import { PROPERTY_UNITS, type PropertyName } from '#lib/mortar/material.ts'
import { BASES } from '#lib/mortar/range.ts'

const words = z.string().trim().min(1)
const year = z.number().int().min(-3000).max(2100)
/** BCP 47, the part we need: `fr`, `pt-BR`. */
const language = z.string().regex(/^[a-z]{2,3}(-[A-Z]{2})?$/, 'not a language tag such as fr or pt-BR')
/** What a thing is called elsewhere: one name, or names with the usual one first. */
const labels = z.record(language, z.union([words, z.array(words).min(1)]))
/** What a term means in Spanish. */
const spanishTerm = z.strictObject({ definition: words })
/** Terms keep the spelling of their list: country codes and compass points are capitals. */
const termId = z.string().regex(/^[A-Za-z0-9]+(-[a-z0-9]+)*$/, 'not an id such as rubble-random')

export const sourceSchema = z.strictObject({
  id: slug,
  type: z.enum(SOURCE_TYPES),
  title: words,
  author: z
    .array(z.strictObject({ family: words.optional(), given: words.optional(), literal: words.optional() }))
    .optional(),
  issued: z
    .strictObject({
      'date-parts': z.array(z.array(z.number().int()).min(1).max(3)).min(1).max(2),
      circa: z.boolean().optional(),
    })
    .optional(),
  publisher: words.optional(),
  'publisher-place': words.optional(),
  'container-title': words.optional(),
  edition: words.optional(),
  volume: words.optional(),
  page: words.optional(),
  number: words.optional(),
  DOI: z
    .string()
    .regex(/^10\.\d{4,9}\/\S+$/, 'not a DOI such as 10.1000/182')
    .optional(),
  ISBN: z
    .string()
    .regex(/^(97[89])?\d{9}[\dX]$/, 'not an ISBN without hyphens')
    .optional(),
  URL: z.url({ protocol: /^https?$/, error: 'not a web address' }).optional(),
  language: language.optional(),
  note: words.optional(),
})

export const tableFront = z.strictObject({
  title: words,
  source: slug.optional(),
  region: words.optional(),
  period: words.optional(),
  from: year.optional(),
  to: year.optional(),
  use: z.array(z.enum(USES)).min(1).optional(),
  measured: words.optional(),
  basis: z.enum(BASES).optional(),
  standing: z.enum(STANDINGS).optional(),
  reason: words.optional(),
})

const property = (unit: string) =>
  z
    .strictObject({
      low: z.number(),
      typical: z.number(),
      high: z.number(),
      unit: z.literal(unit, `must be ${unit}`),
      basis: z.enum(BASES),
      source: words.optional(),
      note: words.optional(),
    })
    .refine(
      ({ low, typical, high }) => low <= typical && typical <= high,
      'low, typical and high are out of order',
    )
    .refine(
      ({ basis, source }) => source !== undefined || ['memory', 'practice', 'measured'].includes(basis),
      'a figure that is not from memory, practice or measurement names its source',
    )

const propertyNames = Object.keys(PROPERTY_UNITS) as PropertyName[]

export const materialSchema = z.strictObject({
  label: words,
  role: z.enum(ROLES),
  description: words,
  names: z.record(language, z.array(words).min(1)).default({}),
  properties: z
    .strictObject(
      Object.fromEntries(
        propertyNames.map((name) => [name, property(PROPERTY_UNITS[name]).optional()]),
      ) as Record<PropertyName, z.ZodOptional<ReturnType<typeof property>>>,
    )
    .default({}),
  cautions: z.array(slug).default([]),
  standing: z.enum(STANDINGS).default('in-use'),
  standingReason: words.optional(),
})

/** What is told of a kind of stone, brick or earth, each in one unit. */
export const TERM_FIGURES = {
  'compressive-strength': 'MPa',
  'bulk-density': 'kg/m3',
  'open-porosity': '%',
} as const

const termFigure = z
  .strictObject({
    what: z.enum(['compressive-strength', 'bulk-density', 'open-porosity']),
    /** One figure alone is both. */
    low: z.number().positive(),
    high: z.number().positive(),
    /** Only where the source gives one. */
    average: z.number().positive().optional(),
    basis: z.enum(BASES),
    source: words.optional(),
    note: words.optional(),
    es: z.strictObject({ note: words }).optional(),
  })
  .refine(
    ({ low, average = low, high }) => low <= average && average <= high,
    'low, average and high are out of order',
  )
  .refine(
    ({ basis, source }) => source !== undefined || basis === 'memory',
    'a figure that is not from memory names its source',
  )

export const vocabularySchema = z.strictObject({
  title: words,
  /** Where the list comes from and how far it may be trusted. */
  note: words.optional(),
  es: z.strictObject({ title: words, note: words.optional() }).optional(),
  terms: z
    .array(
      z.strictObject({
        id: termId,
        label: words,
        also: z.array(words).optional(),
        definition: words.optional(),
        broader: termId.optional(),
        uri: z.url({ protocol: /^https?$/, error: 'not a web address' }).optional(),
        es: spanishTerm.optional(),
        labels: labels.optional(),
        source: words.optional(),
        reserved: z.boolean().optional(),
        figures: z.array(termFigure).min(1).optional(),
      }),
    )
    .min(1),
})

export const cautionFront = z.strictObject({
  title: words,
  notice: words,
  sources: z.array(citation).default([]),
  /** Place among the cautions, the gravest first. */
  order: z.number().int().min(1),
  appliesTo: z.strictObject({
    materials: z.array(slug).default([]),
    roles: z.array(z.enum(ROLES)).default([]),
    uses: z.array(z.enum(USES)).default([]),
    methods: z.array(z.enum(METHODS)).default([]),
    exceptStates: z.array(z.enum(MEASURED_STATES)).default([]),
  }),
  /** The same in Spanish, with a paragraph for each of the page's: a warning is of no use unread. */
  es: z.strictObject({ title: words, notice: words, body: z.array(words).min(1) }),
})

export const glossarySchema = z.strictObject({
  terms: z
    .array(
      z.strictObject({
        id: slug,
        term: words,
        also: z.array(words).default([]),
        definition: words,
        see: z.array(slug).default([]),
        es: spanishTerm.optional(),
        labels: labels.optional(),
      }),
    )
    .min(1),
})

export const guideFront = z.strictObject({
  title: words,
  summary: words,
  order: z.number().int().min(1),
  sources: z.array(citation).default([]),
  cautions: z.array(slug).default([]),
})

/** Of the same guide in another language: all else is that of the English. */
export const guideWordsFront = z.strictObject({ title: words, summary: words })
