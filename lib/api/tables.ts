import { z } from 'zod'
import { content } from '#lib/content/index.ts'
import { citation, parts, rowRef, slug } from '#lib/entry/fields.ts'
import { MEASURED_STATES, MEASURES, ROLES, STANDINGS, USES } from '#lib/entry/terms.ts'
import { BASES } from '#lib/mortar/range.ts'
import { operation } from './operation.ts'

const row = z.object({
  id: slug,
  ref: rowRef,
  table: slug,
  label: z.string(),
  region: z.string(),
  period: z.string(),
  /** Years; negative before our era. */
  from: z.int(),
  to: z.int(),
  uses: z.array(z.enum(USES)),
  measured: z.string(),
  ingredients: z.array(
    z.object({
      material: slug,
      role: z.enum(ROLES),
      /** Null where the source gives none. */
      parts: parts.nullable(),
      by: z.enum(MEASURES),
      state: z.enum(MEASURED_STATES),
    }),
  ),
  additions: z.string().optional(),
  notes: z.string().optional(),
  ambiguous: z.string().optional(),
  ancestor: rowRef.optional(),
  basis: z.enum(BASES),
  standing: z.enum(STANDINGS),
  standingReason: z.string().optional(),
  citation: citation.required(),
})

/** The tables of traditional proportions, every row with its source. */
export const tablesOperation = operation({
  id: 'listTables',
  method: 'GET',
  path: '/api/v1/tables',
  summary: 'The tables of traditional proportions, every row with its source, basis and standing',
  query: z.strictObject({ use: z.enum(USES).optional() }),
  answer: z.object({
    /** Changes whenever anything that figures are made from changes. */
    edition: z.string(),
    tables: z.array(
      z.object({ id: slug, title: z.string(), intro: z.array(z.string()), rows: z.array(row) }),
    ),
  }),
  async run({ query: { use } }) {
    const { edition, tables } = content()
    return {
      edition,
      tables: [...tables.values()].map(({ id, title, intro, rows }) => ({
        id,
        title,
        intro: [...intro],
        rows: rows
          .filter((one) => !use || one.uses.includes(use))
          .map((one) => ({ ...one, uses: [...one.uses], ingredients: [...one.ingredients] })),
      })),
    }
  },
})
