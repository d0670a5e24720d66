import { z } from 'zod'
import { caseBySlug, listCases } from '#lib/db/cases.ts'
import { caseBody } from '#lib/entry/case.ts'
import { slug } from '#lib/entry/fields.ts'
import { DAMP_STATES, JOINT_STATES, UNIT_STATES, USES, WALL_TYPES } from '#lib/entry/terms.ts'
import { visitBody } from '#lib/entry/visit.ts'
import { Refusal } from '#lib/errors.ts'
import { operation } from './operation.ts'
import { page, paging, published, writePublished } from './published.ts'
import { unitsWithin } from './units.ts'

const caseSummary = z.object({
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

/** Published case records, by country, stone or other unit, use, years watched and recipe. */
export const casesOperation = operation({
  id: 'listCases',
  method: 'GET',
  path: '/api/v1/cases',
  summary: 'Published case records, by country, unit, use, years watched and recipe',
  query: z.strictObject({
    country: z
      .string()
      .regex(/^[A-Z]{2}$/)
      .optional(),
    unit: slug.optional(),
    use: z.enum(USES).optional(),
    minYears: z.coerce.number().int().min(1).max(100).optional(),
    recipe: slug.optional(),
    ...paging,
  }),
  answer: z.object({ cases: z.array(caseSummary), ...page }),
  async run({ query: { country, unit, use, minYears, recipe, after, limit } }) {
    return listCases(
      {
        ...(country && { country }),
        ...(unit && { unit: unitsWithin(unit) }),
        ...(use && { use }),
        ...(minYears && { minYears }),
        ...(recipe && { recipe }),
      },
      { limit, ...(after && { after }) },
    )
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
