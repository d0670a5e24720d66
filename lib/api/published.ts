import { z } from 'zod'
import { slug } from '#lib/entry/fields.ts'

/** What every published entry carries beside its body, so that it can be cited and checked. */
export const published = {
  slug,
  revision: z.int().positive(),
  /** The revision published now; higher than `revision` where an earlier one was asked for. */
  latest: z.int().positive(),
  author: z.string(),
  submittedAt: z.iso.datetime(),
  publishedAt: z.iso.datetime(),
  note: z.string(),
  /** SHA-256 that chains this revision to the one before it. */
  digest: z.string(),
}

interface Dated {
  readonly slug: string
  readonly revision: number
  readonly latest: number
  readonly author: string
  readonly submittedAt: Date
  readonly publishedAt: Date
  readonly note: string
  readonly digest: string
}

/** The same in JSON. */
export const writePublished = (entry: Dated) => ({
  slug: entry.slug,
  revision: entry.revision,
  latest: entry.latest,
  author: entry.author,
  submittedAt: entry.submittedAt.toISOString(),
  publishedAt: entry.publishedAt.toISOString(),
  note: entry.note,
  digest: entry.digest,
})

/** Keyset paging: what the page before gave as `next`, and how many at most. */
export const paging = {
  after: z.string().max(120).optional(),
  limit: z.coerce.number().int().min(1).max(100).default(50),
}

/** A page of a list and, where more follow, the `after` of the next one. */
export const page = { total: z.int().nonnegative(), next: z.string().nullable() }
