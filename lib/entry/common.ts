import { z } from 'zod'
import { text } from './fields.ts'

/** What the author grants when submitting, and whether everyone who can be told in the photos agreed. */
export const rights = z.strictObject({ licence: z.literal('CC-BY-4.0'), photos: z.boolean() })
export type Rights = z.infer<typeof rights>

/** A figure outside the plausible bounds that its author stands by, and why. */
export const override = z.strictObject({
  /** Path of the field in the body, such as `works.0.mixed.hottestC`. */
  field: text(160),
  reason: text(300),
})
export type Override = z.infer<typeof override>

/** What every kind of entry may carry beside what it tells of. */
export const carried = {
  rights: rights.optional(),
  overrides: z.array(override).max(20).optional(),
}

/** Damage that somebody puts down to a mortar or to the work; two reviewers read it where fabric is protected. */
export const harm = z.strictObject({
  /** The fabric is protected by law or by order. */
  protectedFabric: z.boolean(),
  words: text(600),
})
export type Harm = z.infer<typeof harm>

/** SHA-256 in lower-case hexadecimal. */
export const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'not-a-sha256')
