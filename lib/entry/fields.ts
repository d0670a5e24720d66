import { z } from 'zod'

/**
 * Characters that are never seen but change what is: controls (but tab and newline), bidi marks, zero-width; and
 * halves of a character, which no database can keep.
 */
const INVISIBLE = /(?![\t\n])[\p{Control}\p{Surrogate}\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/u

/** Public text of at most `max` characters; trimmed, never blank. */
export const text = (max: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(max)
    .refine((value) => !INVISIBLE.test(value), 'invisible-character')

/** `recipe-slug`, `table-id`: lower case, digits and hyphens. */
export const slug = z
  .string()
  .max(80)
  .regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'not-a-slug')

export const isSlug = (text: string): boolean => slug.safeParse(text).success

/** Id of a term: a slug, but that classes keep their capitals (`CC1`). */
export const termId = z
  .string()
  .max(80)
  .regex(/^[A-Za-z0-9]+(?:-[a-z0-9]+)*$/, 'unknown')

/** `table-id#row-id`. */
export const rowRef = z.string().regex(/^[a-z0-9-]+#[a-z0-9-]+$/, 'not-a-row')

/** `entry-slug@3`: one fixed revision of an entry. */
export const revisionRef = z.string().regex(/^[a-z0-9-]+@[1-9][0-9]*$/, 'not-a-revision')

/** `YYYY`, `YYYY-MM` or `YYYY-MM-DD`: as much of a date as is known. */
export const partialDate = z
  .string()
  .regex(/^\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/, 'not-a-date')
  .refine((value) => value.length < 10 || isDay(value), 'not-a-date')

/** `YYYY-MM-DD`, a day that exists. */
export const day = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/, 'not-a-day')
  .refine(isDay, 'not-a-day')

function isDay(value: string): boolean {
  const date = new Date(`${value}T00:00:00Z`)
  return !Number.isNaN(date.getTime()) && date.toISOString().slice(0, 10) === value
}

/** A source and the place in it. */
export const citation = z.strictObject({ source: slug, locator: text(120).optional() })
export type CitationField = z.infer<typeof citation>

/** Parts as stated: one figure, or a range; `typical` only where the source names one. */
export const parts = z
  .strictObject({
    low: z.number().positive().max(1e5),
    typical: z.number().positive().max(1e5).optional(),
    high: z.number().positive().max(1e5),
  })
  .refine(
    ({ low, typical, high }) => low <= high && (typical === undefined || (low <= typical && typical <= high)),
    'out-of-order',
  )
export type Parts = z.infer<typeof parts>
