import type { Client } from 'pg'
import { broaderPairs, termsWithin } from '#lib/content/term-tree.ts'
import type { CaseFilter } from '#lib/db/case-filter.ts'
import { DRIVING_RAIN, FROST, WALL_TYPES } from '#lib/entry/terms.ts'
import type { WallAsked } from '#lib/search/index.ts'
import { frostNearness, rainNearness, unitNearness, WEIGHTS, wallNearness } from '#lib/search/likeness.ts'
import { readText } from '#lib/search/read-text.ts'
import type { Query } from './find-queries.ts'

/** What both sides answer, so that they can be held against one another. */
export interface Answer {
  readonly total: number
  /** Documents of the first page, in order. */
  readonly first: readonly number[]
  /** Counts by facet, or by region, as one text. */
  readonly counts: string
}

const COLUMNS = {
  wall: 'wall',
  country: 'country',
  region: 'region',
  rain: 'rain',
  frost: 'frost',
  ground: 'ground',
  structure: 'structure',
  joint: 'joint',
  unitState: '"unitState"',
  damp: 'damp',
  disputed: 'disputed',
} as const
const ARRAYS = {
  unit: 'units',
  use: 'uses',
  family: 'families',
  method: 'methods',
  salt: 'salts',
  recipe: 'recipes',
  row: 'rows',
  quality: 'quality',
} as const

/** Facets that are counted; materials are left out, since only content knows which of them bind. */
export const HAND_FACETS = [...Object.keys(COLUMNS), ...Object.keys(ARRAYS)].sort()

/** What a page of results shows of a case. */
const SHOWN = `id, slug, revision, title, summary, country, region, units, wall, uses, visits, years, "latestOn"::text,
  joint, "unitState", damp, invented`

/** Asks one question; made ready outside the time that is taken. */
export type Asking = (client: Client) => Promise<Answer>

/**
 * One question as SQL that somebody would write for it alone, with its values as parameters: the rows of the first
 * page as they are shown, for words with their text and the lines that hold them, the total, and every facet's
 * counts where they were asked for. It guesses no misspelt word, does not say by which synonym a page was found,
 * looks for nothing in content and does not ask whether the record has changed; our reading of the text (synonyms
 * and scores) is given to it ready made.
 */
export function byHand(query: Query): Asking {
  const { slug, wall, sort, filter } = query
  if (slug !== undefined) return (client) => lookUp(client, slug)
  if (wall !== undefined) return likeness(wall)
  return sort === 'map' ? map(filter ?? {}) : list(query)
}

async function lookUp(client: Client, slug: string): Promise<Answer> {
  const { rows } = await client.query<{ slug: string; visits: object[] }>(LOOK_UP, [slug])
  return { total: rows[0]?.visits.length ?? -1, first: [], counts: rows[0]?.slug ?? '' }
}

const PUBLISHED = `e.slug, r.number, r.body, r."authorKey", r."createdAt", r.note, r.digest, d.at
  FROM "Entry" e JOIN "Revision" r ON r.id = e."publishedRevisionId"
  JOIN "Decision" d ON d."revisionId" = r.id AND d.outcome = 'publish'`

const LOOK_UP = `SELECT c.*, (SELECT coalesce(json_agg(v), '[]') FROM (
    SELECT ${PUBLISHED} JOIN "VisitIndex" i ON i."entryId" = e.id WHERE i."caseEntryId" = c.id ORDER BY i.work, i."on"
  ) v) AS visits FROM (SELECT e.id, ${PUBLISHED} WHERE e.slug = $1 AND e.kind = 'case') c`

function list({ text, filter = {}, sort }: Query): Asking {
  const given = new Given()
  const words = text === undefined ? undefined : textOf(text, given, 'ranked')
  const where = [...(words ? [words.where] : []), ...conditions(filter, given)].join(' AND ') || 'true'
  const order = words ? `${words.score} DESC, years DESC, id` : 'years DESC, id'
  const page = `SELECT ${SHOWN}${words ? ', body' : ''}, count(*) OVER ()::int AS total
    FROM hand WHERE ${where} ORDER BY ${order} LIMIT 20`
  const held = new RegExp(`.*(?:${text?.split(' ').join('|')}).*`, 'gi')
  const counting = sort === 'text' ? undefined : countsOf(text, filter)
  return async (client) => {
    const { rows } = await client.query<{ id: number; total: number; body?: string }>(page, given.values)
    const shown = rows.map((row) => ({
      ...row,
      lines: row.body?.match(held)?.map((line) => line.slice(0, 200)),
    }))
    return {
      total: rows[0]?.total ?? 0,
      first: shown.map(({ id }) => id),
      counts: counting === undefined ? '' : await counting(client),
    }
  }
}

/** Every facet's counts, each without the choice made in it. */
function countsOf(text: string | undefined, filter: CaseFilter): (client: Client) => Promise<string> {
  const asked = new Given()
  const counted = text === undefined ? undefined : textOf(text, asked)
  const under = (facet: string) =>
    [...(counted ? [counted.where] : []), ...conditions(filter, asked, facet)].join(' AND ') || 'true'
  const parts = [
    ...Object.entries(COLUMNS).map(
      ([facet, column]) =>
        `SELECT '${facet}' AS facet, ${column} AS id, count(*)::int AS count FROM hand WHERE ${under(facet)} AND ${column} IS NOT NULL GROUP BY ${column}`,
    ),
    ...Object.entries(ARRAYS).map(([facet, column]) =>
      facet === 'unit'
        ? `SELECT 'unit', t.over, sum(t.count)::int FROM (SELECT DISTINCT s.items, s.count, b.over FROM (SELECT units AS items, count(*) AS count FROM hand WHERE ${under(facet)} GROUP BY units) s, unnest(s.items) AS item JOIN (VALUES ${PAIRS}) AS b(unit, over) ON b.unit = item) t GROUP BY t.over`
        : `SELECT '${facet}', item, sum(s.count)::int FROM (SELECT ${column} AS items, count(*) AS count FROM hand WHERE ${under(facet)} GROUP BY ${column}) s, unnest(s.items) AS item GROUP BY item`,
    ),
  ]
  const sql = parts.join(' UNION ALL ')
  return async (client) => {
    const { rows } = await client.query<{ facet: string; id: string; count: number }>(sql, asked.values)
    return countsText(rows.map(({ facet, id, count }) => [`${facet} ${id}`, count]))
  }
}

function map(filter: CaseFilter): Asking {
  const given = new Given()
  const where = conditions(filter, given).join(' AND ') || 'true'
  const sql = `SELECT region, count(*)::int AS count, avg(latitude), avg(longitude) FROM hand WHERE ${where} GROUP BY region`
  return async (client) => {
    const { rows } = await client.query<{ region: string; count: number }>(sql, given.values)
    return {
      total: rows.reduce((sum, { count }) => sum + count, 0),
      first: [],
      counts: countsText(rows.map(({ region, count }) => [region, count])),
    }
  }
}

/** Each part's points come with the row, so that the likeness can be explained. */
function likeness(wall: WallAsked): Asking {
  const given = new Given()
  const unit = wall.unit?.[0] ?? 'stone'
  const units = broaderPairs('units').flatMap(([one, over]) => (one === over ? [one] : []))
  const near = units
    .map((one) => `(${given.add(one)}, ${given.add(unitNearness(unit, one))}::float8)`)
    .join(', ')
  const cases = (column: string, scale: readonly string[], share: (value: string) => number) =>
    `CASE ${column} ${scale.map((value) => `WHEN '${value}' THEN ${share(value)}`).join(' ')} ELSE 0 END`
  const { rain = '', frost = '' } = wall.exposure ?? {}
  const salts = given.add(wall.salts ?? [])
  const points = [
    `floor(0.5 + ${WEIGHTS.unit} * (SELECT (max(n.near) + avg(n.near)) / 2 FROM unnest(units) AS u JOIN near n ON n.unit = u))`,
    `floor(0.5 + ${WEIGHTS.wall}::float8 * ${cases('wall', WALL_TYPES, (value) => wallNearness(wall.wall ?? '', value))})`,
    `CASE WHEN uses @> ARRAY[${given.add(wall.use)}] THEN ${WEIGHTS.use} ELSE 0 END`,
    `floor(0.5 + ${WEIGHTS.exposure} * (${cases('rain', DRIVING_RAIN, (value) => rainNearness(rain, value) / 2)}::float8 + ${cases('frost', FROST, (value) => frostNearness(frost, value) / 2)}::float8))`,
    `CASE WHEN country = ${given.add(wall.place?.country)} THEN ${WEIGHTS.climate} ELSE 0 END`,
    `CASE WHEN cardinality(salts) = 0 AND cardinality(${salts}::text[]) = 0 THEN ${WEIGHTS.salts}
      WHEN cardinality(salts) = 0 OR cardinality(${salts}::text[]) = 0 THEN 0
      ELSE floor(0.5 + ${WEIGHTS.salts}::float8 * (SELECT count(*) FROM unnest(salts) s WHERE s = ANY(${salts}::text[]))
        / (SELECT count(DISTINCT s) FROM unnest(salts || ${salts}::text[]) s)) END`,
  ]
  const sql = `WITH near(unit, near) AS (VALUES ${near}),
    scored AS (SELECT h.*, ARRAY[${points.join(', ')}]::int[] AS parts FROM hand h),
    summed AS (SELECT *, (SELECT sum(p) FROM unnest(parts) p) AS points FROM scored)
    SELECT ${SHOWN}, salts, rain, frost, parts, points, count(*) OVER ()::int AS total FROM summed
    WHERE points > 0 ORDER BY points DESC, years DESC, id LIMIT 20`
  return async (client) => {
    const { rows } = await client.query<{ id: number; total: number }>(sql, given.values)
    return { total: rows[0]?.total ?? 0, first: rows.map(({ id }) => id), counts: '' }
  }
}

/** Parameters in the order they are named. */
class Given {
  readonly values: unknown[] = []
  add(value: unknown): string {
    return `$${this.values.push(value)}`
  }
}

/** The text as one text-search query, and its score as the same sum that our ranking makes. */
function textOf(text: string, given: Given, ranked?: 'ranked'): { where: string; score: string } {
  const { clauses, whole } = readText(text)
  const quoted = (lexeme: string) => `'${lexeme.replaceAll("'", "''")}'`
  const asQuery = (ways: readonly { needs: readonly string[] }[]) =>
    ways.map(({ needs }) => `(${needs.map(quoted).join(' & ')})`).join(' | ')
  const where = `words @@ ${given.add(clauses.map(({ ways }) => `(${asQuery(ways)})`).join(' & '))}::tsquery`
  if (ranked === undefined) return { where, score: '0' }
  const scores = clauses.map(({ ways }) => {
    const levels = [...new Set(ways.map(({ score }) => score))].sort((a, b) => b - a)
    return `CASE ${levels
      .map(
        (level) =>
          `WHEN words @@ ${given.add(asQuery(ways.filter(({ score }) => score === level)))}::tsquery THEN ${level}`,
      )
      .join(' ')} ELSE 0 END`
  })
  const best = [...whole].sort((a, b) => b.score - a.score)
  const wholes = `CASE ${best.map(({ lexeme, score }) => `WHEN words @@ ${given.add(quoted(lexeme))}::tsquery THEN ${score}`).join(' ')} ELSE 0 END`
  return { where, score: [...scores, wholes].join(' + ') }
}

const PAIRS = broaderPairs('units')
  .map(([unit, over]) => `('${unit}', '${over}')`)
  .join(', ')

function conditions(filter: CaseFilter, given: Given, except?: string): string[] {
  const { minYears, maxYears, ...facets } = filter
  return [
    ...Object.entries(facets).flatMap(([facet, values]) => {
      if (facet === except || values === undefined) return []
      if (facet === 'unit')
        return [`units && ${given.add(values.flatMap((unit) => termsWithin('units', unit)))}::text[]`]
      const array = ARRAYS[facet as keyof typeof ARRAYS]
      return array
        ? [`${array} && ${given.add(values)}::text[]`]
        : [`${COLUMNS[facet as keyof typeof COLUMNS]} = ANY(${given.add(values)}::text[])`]
    }),
    ...(minYears === undefined || except === 'years' ? [] : [`years >= ${given.add(minYears)}`]),
    ...(maxYears === undefined || except === 'years' ? [] : [`years < ${given.add(maxYears + 1)}`]),
  ]
}

/** Counts in one order, as text. */
export const countsText = (counts: readonly (readonly [name: string, count: number])[]): string =>
  counts
    .map(([name, count]) => `${name} ${count}`)
    .sort()
    .join('\n')
