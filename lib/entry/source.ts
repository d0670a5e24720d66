import { z } from 'zod'
import { carried } from './common.ts'
import { text } from './fields.ts'

export const SOURCE_SHAPE = 1

/** CSL types that a source may have: those whose locators we know how to check. */
export const SOURCE_TYPES = [
  'book',
  'article-journal',
  'article-magazine',
  'entry-encyclopedia',
  'report',
  'standard',
  'legislation',
  'webpage',
  'dataset',
  'manuscript',
] as const
export type SourceType = (typeof SOURCE_TYPES)[number]

const name = z
  .strictObject({ family: text(120).optional(), given: text(120).optional(), literal: text(200).optional() })
  .refine(({ family, literal }) => (family === undefined) !== (literal === undefined), {
    path: ['family'],
    error: 'one-name',
  })

/** A publication that figures rest on: the fields of CSL-JSON that content/sources uses, under the entry's slug. */
export const sourceBody = z.strictObject({
  type: z.enum(SOURCE_TYPES),
  title: text(300),
  author: z.array(name).max(20).optional(),
  issued: z
    .strictObject({ year: z.number().int().min(-3000).max(2100), circa: z.boolean().optional() })
    .optional(),
  publisher: text(200).optional(),
  publisherPlace: text(120).optional(),
  containerTitle: text(300).optional(),
  edition: text(80).optional(),
  volume: text(40).optional(),
  page: text(40).optional(),
  number: text(80).optional(),
  doi: z
    .string()
    .regex(/^10\.\d{4,9}\/\S+$/, 'not-a-doi')
    .max(200)
    .optional(),
  isbn: z
    .string()
    .regex(/^(97[89])?\d{9}[\dX]$/, 'not-an-isbn')
    .optional(),
  url: z
    .url({ protocol: /^https?$/, error: 'not-a-web-address' })
    .max(500)
    .optional(),
  language: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Z]{2})?$/, 'not-a-language')
    .optional(),
  /** Which copy was read, and how far it may be trusted. */
  note: text(600).optional(),
  /** What the author stands to gain or lose by it being cited. */
  interests: text(300).optional(),
  invented: z.boolean(),
  ...carried,
})
export type SourceBody = z.infer<typeof sourceBody>
