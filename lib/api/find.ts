import { z } from 'zod'
import { FOUND_KINDS } from '#lib/entry/facets.ts'
import { slug } from '#lib/entry/fields.ts'
import { findAll, likeCases, regionCounts, suggest } from '#lib/search/index.ts'
import { caseSummary } from './cases.ts'
import { casesQuery, filterIn, wallIn, wallQuery } from './find-query.ts'
import { operation } from './operation.ts'
import { page, paging } from './published.ts'

const why = z.object({
  typed: z.string(),
  how: z.string(),
  matched: z.string(),
  field: z.string(),
  excerpt: z.array(z.object({ text: z.string(), marked: z.boolean() })).optional(),
  /** Of the excerpt, where it is known: people's words tell none. */
  language: z.string().optional(),
})

/** One search over the record and content. */
export const findOperation = operation({
  id: 'find',
  method: 'GET',
  path: '/api/v1/find',
  summary: 'Cases, recipes, table rows, materials, sources, terms and guides by words, the best first',
  query: z.strictObject({
    q: z.string().max(300),
    kind: z.enum(FOUND_KINDS).optional(),
    ...paging,
  }),
  answer: z.object({
    results: z.array(
      z.object({
        kind: z.enum(FOUND_KINDS),
        id: z.string(),
        /** Whether it is an entry of the record rather than content. */
        entry: z.boolean(),
        invented: z.boolean(),
        title: z.string(),
        summary: z.string(),
        why: z.array(why),
      }),
    ),
    counts: z.record(z.enum(FOUND_KINDS), z.int().nonnegative()),
    /** False where the counts cover only a part of very many. */
    exact: z.boolean(),
    ...page,
  }),
  async run({ query: { q, kind, after, limit } }) {
    const { results, counts, exact, total, next } = await findAll({ text: q, kind, after, limit })
    return { results: results.map(copied), counts, exact, total, next }
  },
})

/** Names, titles, places and words that begin as was typed. */
export const suggestOperation = operation({
  id: 'suggest',
  method: 'GET',
  path: '/api/v1/find/suggest',
  summary: 'What may be meant by the words typed so far',
  query: z.strictObject({ q: z.string().max(300).default('') }),
  answer: z.object({
    suggestions: z.array(z.object({ text: z.string(), kind: z.string(), id: z.string() })),
  }),
  run: async ({ query: { q } }) => ({ suggestions: await suggest(q) }),
})

/** Cases by their likeness to a wall. */
export const likeOperation = operation({
  id: 'likeCases',
  method: 'GET',
  path: '/api/v1/find/like',
  summary: 'Cases by their likeness to a wall, the likest first, with the points of each part',
  query: z.strictObject({ ...wallQuery, from: slug.optional(), ...paging }),
  answer: z.object({
    cases: z.array(
      caseSummary.extend({
        likeness: z.object({
          points: z.int(),
          of: z.int(),
          parts: z.array(
            z.object({
              part: z.string(),
              points: z.int(),
              of: z.int(),
              values: z.array(z.string()),
            }),
          ),
        }),
      }),
    ),
    ...page,
  }),
  async run({ query: { from, after, limit, ...wall } }) {
    const { results, total, next } = await likeCases(wallIn(wall), { except: from, after, limit })
    return { cases: results.map(copied), total, next }
  },
})

/** Cases by region. */
export const regionsOperation = operation({
  id: 'countRegions',
  method: 'GET',
  path: '/api/v1/find/regions',
  summary: 'How many cases stand in each region, and the middle of those whose position is recorded',
  query: z.strictObject(casesQuery),
  answer: z.object({
    regions: z.array(
      z.object({
        country: z.string(),
        region: z.string(),
        count: z.int().positive(),
        latitude: z.number().nullable(),
        longitude: z.number().nullable(),
      }),
    ),
  }),
  run: async ({ query: { q, ...filter } }) => ({
    regions: await regionCounts({ text: q, filter: filterIn(filter) }),
  }),
})

/** An answer is the caller's own; what search remembers is not. */
const copied = <T>(value: T): Mutable<T> => structuredClone(value) as Mutable<T>
type Mutable<T> = T extends readonly (infer I)[]
  ? Mutable<I>[]
  : T extends object
    ? { -readonly [K in keyof T]: Mutable<T[K]> }
    : T
