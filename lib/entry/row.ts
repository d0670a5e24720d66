import { z } from 'zod'
import { BASES } from '#lib/mortar/range.ts'
import { carried } from './common.ts'
import { citation, parts, slug, text } from './fields.ts'
import { MEASURED_STATES, MEASURES, ROLES, STANDINGS, USES } from './terms.ts'

export const ROW_SHAPE = 1

/** A proportion that a source states, proposed for the tables. Two reviewers read each. */
export const rowBody = z
  .strictObject({
    title: text(120),
    /** Id of the table of content/tables that it belongs in, where there is one. */
    table: slug.optional(),
    uses: z.array(z.enum(USES)).min(1).max(8),
    /** What was measured and in which state, in the writer's own words. */
    measured: text(300),
    ingredients: z
      .array(
        z.strictObject({
          material: slug,
          role: z.enum(ROLES),
          /** Absent where the source gives none. */
          parts: parts.optional(),
          by: z.enum(MEASURES),
          state: z.enum(MEASURED_STATES),
        }),
      )
      .min(1)
      .max(12),
    additions: text(400).optional(),
    notes: text(600).optional(),
    ambiguous: text(400).optional(),
    region: text(120),
    period: text(120),
    from: z.number().int().min(-3000).max(2100),
    to: z.number().int().min(-3000).max(2100),
    basis: z.enum(BASES),
    source: citation.required(),
    standing: z.enum(STANDINGS),
    standingReason: text(600).optional(),
    interests: text(300).optional(),
    invented: z.boolean(),
    ...carried,
  })
  .refine((body) => body.from <= body.to, { path: ['to'], error: 'before-start' })
  .refine((body) => body.standing === 'in-use' || body.standingReason !== undefined, {
    path: ['standingReason'],
    error: 'reason-needed',
  })
export type RowBody = z.infer<typeof rowBody>
