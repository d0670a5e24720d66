import { z } from 'zod'
import { content } from '#lib/content/index.ts'
import { ping } from '#lib/db/health.ts'
import { Refusal } from '#lib/errors.ts'
import { SUMS_VERSION } from '#lib/mortar/version.ts'
import { readAhead } from '#lib/search/read-ahead.ts'
import { operation } from './operation.ts'

/** Is the site able to answer? For whoever watches the server. */
export const healthOperation = operation({
  id: 'readHealth',
  method: 'GET',
  path: '/api/health',
  summary: 'Whether the site can reach its database, and which edition and sums it runs',
  answer: z.object({ status: z.literal('ok'), edition: z.string(), sums: z.int().positive() }),
  async run() {
    if (!(await ping())) throw new Refusal('unavailable', 'The database does not answer.')
    // `serve` asks this of every site that it starts, before anyone else asks anything.
    readAhead()
    return { status: 'ok' as const, edition: content().edition, sums: SUMS_VERSION }
  },
})
