import { z } from 'zod'
import { carried } from './common.ts'
import { citation, parts, revisionRef, rowRef, slug, text } from './fields.ts'
import { laboratory } from './laboratory.ts'
import { FAMILIES, MEASURED_STATES, MEASURES, METHODS, ROLES, STANDINGS, USES } from './terms.ts'
import { workedOnList } from './worked-on.ts'

export const RECIPE_SHAPE = 1

export const ingredient = z.strictObject({
  /** Id of a material in content/materials. */
  material: slug,
  role: z.enum(ROLES),
  parts,
  by: z.enum(MEASURES),
  state: z.enum(MEASURED_STATES),
  note: text(200).optional(),
})
export type Ingredient = z.infer<typeof ingredient>

/** A recipe: ingredients with parts, how each part was measured, how it was mixed, and for which uses. */
export const recipeBody = z
  .strictObject({
    title: text(120),
    summary: text(400),
    family: z.enum(FAMILIES),
    uses: z.array(z.enum(USES)).min(1).max(8),
    standing: z.enum(STANDINGS),
    /** Required unless in use: why it is history, or what it harms. */
    standingReason: text(600).optional(),
    /** Three separate things, never derived from one another. */
    historicTerm: text(60).optional(),
    chemistry: text(300).optional(),
    modernClass: text(60).optional(),
    ingredients: z.array(ingredient).min(1).max(12),
    method: z.enum(METHODS),
    /** How it is made and used, in paragraphs of plain text. */
    methodNotes: text(4000).optional(),
    /** Lithology or unit terms of content/vocabularies/units that the author used it on or wrote it for. */
    units: z.array(slug).max(12),
    follows: z.array(rowRef).max(12),
    sources: z.array(citation).max(12),
    region: z.strictObject({
      country: z
        .string()
        .regex(/^[A-Z]{2}$/)
        .optional(),
      name: text(80).optional(),
    }),
    period: text(60).optional(),
    adaptedFrom: revisionRef.optional(),
    laboratory: laboratory.optional(),
    /** Sheets that what is told here was worked out on. */
    sheets: workedOnList,
    interests: text(300).optional(),
    /** Demo content only: no such mason, no such wall. */
    invented: z.boolean(),
    ...carried,
  })
  .refine((body) => body.standing === 'in-use' || body.standingReason !== undefined, {
    path: ['standingReason'],
    error: 'reason-needed',
  })
export type RecipeBody = z.infer<typeof recipeBody>
