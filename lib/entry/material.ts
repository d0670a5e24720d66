import { z } from 'zod'
import { PROPERTY_UNITS, type PropertyName } from '#lib/mortar/material.ts'
import { BASES } from '#lib/mortar/range.ts'
import { carried } from './common.ts'
import { citation, slug, text } from './fields.ts'
import { laboratory } from './laboratory.ts'
import { ROLES, STANDINGS } from './terms.ts'
import { workedOnList } from './worked-on.ts'

export const MATERIAL_SHAPE = 1

const PROPERTIES = Object.keys(PROPERTY_UNITS) as [PropertyName, ...PropertyName[]]

/** One figure of a material, in the unit that lib/mortar keeps that property in. */
const figure = z
  .strictObject({
    property: z.enum(PROPERTIES),
    low: z.number(),
    typical: z.number(),
    high: z.number(),
    basis: z.enum(BASES),
    source: citation.optional(),
    note: text(300).optional(),
  })
  .refine(({ low, typical, high }) => low <= typical && typical <= high, {
    path: ['low'],
    error: 'out-of-order',
  })
  .refine(({ basis, source }) => source !== undefined || !['read', 'quoted', 'derived'].includes(basis), {
    path: ['source', 'source'],
    error: 'source-needed',
  })

/** One thing that goes into a mortar. The maker's name and batch belong to what was mixed, never here. */
export const materialBody = z
  .strictObject({
    title: text(120),
    summary: text(600),
    role: z.enum(ROLES),
    /** A material of content/materials that this is a local kind of. */
    like: slug.optional(),
    region: z.strictObject({
      country: z
        .string()
        .regex(/^[A-Z]{2}$/)
        .optional(),
      name: text(80).optional(),
    }),
    properties: z.array(figure).max(24),
    /** Percent passing by sieve opening in millimetres, for a sand or an earth. */
    sieve: z
      .array(
        z.strictObject({
          openingMm: z.number().positive().max(200),
          passingPercent: z.number().min(0).max(100),
        }),
      )
      .max(20)
      .optional(),
    laboratory: laboratory.optional(),
    /** Sheets that what is told here was worked out on. */
    sheets: workedOnList,
    standing: z.enum(STANDINGS),
    standingReason: text(600).optional(),
    interests: text(300).optional(),
    invented: z.boolean(),
    ...carried,
  })
  .refine((body) => body.standing === 'in-use' || body.standingReason !== undefined, {
    path: ['standingReason'],
    error: 'reason-needed',
  })
export type MaterialBody = z.infer<typeof materialBody>
