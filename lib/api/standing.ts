import { z } from 'zod'
import { standingOf } from '#lib/db/standing.ts'
import { slug } from '#lib/entry/fields.ts'
import { KINDS } from '#lib/entry/terms.ts'
import { operation } from './operation.ts'

/** Most entries asked about at once: what an address can hold of their slugs. */
export const MAX_ASKED = 40

const slugs = z.union([slug.transform((one) => [one]), z.array(slug).max(MAX_ASKED)])

/** How entries stand today, for whoever holds copies of them. */
export const standingOperation = operation({
  id: 'readStanding',
  method: 'GET',
  path: '/api/v1/standing',
  summary: `How up to ${MAX_ASKED} entries stand today: still published, withdrawn, or erased; those never published are left out`,
  query: z.strictObject({ slug: slugs }),
  answer: z.object({
    entries: z.array(
      z.object({
        slug,
        kind: z.enum(KINDS),
        state: z.enum(['published', 'withdrawn', 'erased']),
        revision: z.int().positive().nullable(),
      }),
    ),
  }),
  run: async ({ query }) => ({ entries: await standingOf(query.slug) }),
})
