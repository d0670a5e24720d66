import { z } from 'zod'
import { caseBySlug } from '#lib/db/cases.ts'
import { caseBody } from '#lib/entry/case.ts'
import { slug } from '#lib/entry/fields.ts'
import { DAMP_STATES, JOINT_STATES, UNIT_STATES, USES, WALL_TYPES } from '#lib/entry/terms.ts'
import { visitBody } from '#lib/entry/visit.ts'
import { Refusal } from '#lib/errors.ts'
import { findCases, SORTS } from '#lib/search/index.ts'
import { casesQuery, filterIn } from './find-query.ts'
import { operation } from './operation.ts'
import { page, paging, published, writePublished } from './published.ts'

/** A case as lists tell it. */
export const caseSummary = z.object({
  slug,
  revision: z.int().positive(),
  title: z.string(),
  summary: z.string(),
  country: z.string().regex(/^[A-Z]{2}$/),
  region: z.string(),
  units: z.array(slug),
  wall: z.enum(WALL_TYPES),
  uses: z.array(z.enum(USES)),
  visits: z.int().nonnegative(),
  yearsWatched: z.number().nonnegative().nullable(),
  latest: z
    .object({
      on: z.iso.date(),
      joint: z.enum(JOINT_STATES),
      unit: z.enum(UNIT_STATES),
      damp: z.enum(DAMP_STATES),
    })
    .nullable(),
  invented: z.boolean(),
})

/** Published case records by words and every facet. */
export const casesOperation = operation({
  id: 'listCases',
  method: 'GET',
  path: '/api/v1/cases',
  summary: 'Published case records by words and facets; repeat a facet for several values of it',
  query: z.strictObject({ ...casesQuery, sort: z.enum(SORTS).optional(), ...paging }),
  answer: z.object({
    cases: z.array(caseSummary),
    /** False where the total covers only a part of very many. */
    exact: z.boolean(),
    ...page,
  }),
  async run({ query: { q, sort, after, limit, ...filter } }) {
    const found = await findCases({ text: q, filter: filterIn(filter), sort, after, limit })
    const { results, total, exact, next } = found
    return { cases: results.map(({ why: _, ...one }) => one), total, exact, next }
  },
})

/** One case record with its visits. */
export const caseOperation = operation({
  id: 'readCase',
  method: 'GET',
  path: '/api/v1/cases/{slug}',
  summary: 'One case record with its visits, by work and date',
  params: z.strictObject({ slug }),
  query: z.strictObject({ revision: z.coerce.number().int().positive().optional() }),
  answer: z.object({
    ...published,
    body: caseBody,
    visits: z.array(z.object({ ...published, body: visitBody })),
  }),
  async run({ params, query }) {
    const record = await caseBySlug(params.slug, query.revision)
    if (!record) throw new Refusal('not-found', 'No such case record is published.')
    return {
      ...writePublished(record),
      body: record.body,
      visits: record.visits.map((visit) => ({ ...writePublished(visit), body: visit.body })),
    }
  },
})
