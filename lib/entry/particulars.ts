import { z } from 'zod'
import { text } from './fields.ts'

/** What a decision says beyond its words. */
export const particulars = z.strictObject({
  /** Words on single fields of the body, by their path. */
  fields: z
    .array(z.strictObject({ field: z.string().max(160), words: text(600) }))
    .max(60)
    .optional(),
  /** Number of the deed on the same entry that it strikes. */
  deed: z.number().int().positive().optional(),
})
export type Particulars = z.infer<typeof particulars>
