import { z } from 'zod'

/** A refusal as JSON: problem details of RFC 9457, with the faults of single fields. */
export const problem = z.object({
  /** `about:blank` says that the status tells the whole kind of the problem. */
  type: z.literal('about:blank'),
  title: z.string(),
  status: z.int(),
  detail: z.string().optional(),
  errors: z
    .array(
      z.object({
        /** Path of the field, for example `work.areaM2`. */
        field: z.string(),
        code: z.string(),
        detail: z.string(),
        value: z.union([z.string(), z.number()]).optional(),
        limit: z.union([z.string(), z.number()]).optional(),
        /** The limit itself is refused too. */
        exclusive: z.literal(true).optional(),
        unit: z.string().optional(),
      }),
    )
    .optional(),
})
export type Problem = z.infer<typeof problem>
