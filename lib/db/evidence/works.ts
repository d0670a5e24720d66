import { connections } from '../client.ts'

/** Columns of `"OutcomeIndex"` that are whole numbers; days of the calendar count from 1970. */
export const WORK_NUMBERS = [
  ...['document', 'building', 'baselineOn', 'lastOn', 'watchedDays'],
  ...['unitFrom', 'unitTo', 'jointFrom', 'jointTo', 'lossFrom', 'lossTo', 'endFrom', 'endTo'],
  ...['dryFrom', 'dryTo', 'againFrom', 'againTo', 'at0', 'at1', 'at2', 'at5', 'at10', 'at20'],
] as const
/** Those that are one of a few words. */
export const WORK_WORDS = [
  ...['mixed', 'reporter', 'leftOut', 'unitFate', 'jointFate', 'lossFate', 'endHow'],
  ...['lossDamaged', 'lastSeen', 'contradicted', 'invented', 'interested'],
] as const
/** Those that filters choose by: a word each, or several. */
export const WORK_SETS = ['use', 'recipe', 'family', 'method', 'rows', 'materials'] as const

const SELECTED: Readonly<Record<string, string>> = {
  document: 'd.id',
  baselineOn: `o."baselineOn" - date '1970-01-01'`,
  lastOn: `o."lastOn" - date '1970-01-01'`,
  rows: `array_to_string(o.rows, E'\\x1f')`,
  materials: `array_to_string(o.materials, E'\\x1f')`,
}
const COLUMNS = [...WORK_NUMBERS, ...WORK_WORDS, ...WORK_SETS]

/** Some works, column by column; null where a work has none. */
export interface WorkPiece {
  readonly rows: number
  /** Of a name among {@link WORK_NUMBERS}. */
  numbers(name: string): readonly (number | null)[]
  /** Of a name among {@link WORK_WORDS} or {@link WORK_SETS}; several words of a set are parted by U+001F. */
  texts(name: string): readonly (string | boolean | null)[]
  /** Ids of the works within their cases. */
  readonly works: readonly string[]
}

/** A visit that several people read: states of joint, unit and damp of each, parted by blanks; the writer's first. */
export interface SharedReading {
  readonly document: number
  readonly work: string
  /** Day since 1970. */
  readonly on: number
  readonly read: readonly string[]
}

/** So many works are read at once: reading them keeps others waiting for some milliseconds only. */
const PIECE = 4000

// One text of a row: the driver would take longer over forty columns than the database.
const SELECT = `SELECT json_build_array(${[
  ...COLUMNS.map((name) => SELECTED[name] ?? `o."${name}"`),
  'o.work',
].join()})::text AS work
  FROM "SearchDocument" d JOIN "OutcomeIndex" o ON o."caseEntryId" = d."entryId"`

/** All works of published cases, in pieces of one reading. */
export async function* allWorks(): AsyncGenerator<WorkPiece> {
  const connection = await connections().connect()
  try {
    await connection.query('BEGIN READ ONLY')
    await connection.query(`DECLARE works NO SCROLL CURSOR FOR ${SELECT}`)
    for (;;) {
      const { rows } = await connection.query<{ work: string }>(`FETCH ${PIECE} FROM works`)
      if (rows.length === 0) break
      yield pieceOf(rows)
    }
  } finally {
    // Ends the reading, whether it came to its end or not; a connection that is broken is thrown away.
    await connection.query('ROLLBACK').then(
      () => connection.release(),
      () => connection.release(true),
    )
  }
}

/** The works of these documents as they are now; documents that are gone have none. */
export async function worksOf(documents: readonly number[]): Promise<WorkPiece> {
  const { rows } = await connections().query<{ work: string }>(`${SELECT} WHERE d.id = ANY($1::int[])`, [
    [...documents],
  ])
  return pieceOf(rows)
}

function pieceOf(rows: readonly { readonly work: string }[]): WorkPiece {
  const read = JSON.parse(`[${rows.map(({ work }) => work).join()}]`) as unknown[][]
  const column = (name: string) => {
    const place = COLUMNS.indexOf(name as never)
    return read.map((row) => row[place])
  }
  return {
    rows: read.length,
    works: read.map((row) => row.at(-1) as string),
    numbers: (name) => column(name) as (number | null)[],
    texts: (name) => column(name) as (string | boolean | null)[],
  }
}

/** Visits that several people read, of these documents or of all. */
export async function sharedReadings(documents: readonly number[] | 'all'): Promise<SharedReading[]> {
  const { rows } = await connections().query<SharedReading>(
    `SELECT d.id AS document, v.work, v."on" - date '1970-01-01' AS "on",
      concat_ws(' ', v.joint, v.unit, v.damp) || v.others AS read
    FROM "VisitIndex" v JOIN "SearchDocument" d ON d."entryId" = v."caseEntryId"
    WHERE cardinality(v.others) > 0 ${documents === 'all' ? '' : 'AND d.id = ANY($1::int[])'}
    ORDER BY v."on", v.slug DESC`,
    documents === 'all' ? [] : [[...documents]],
  )
  return rows
}

/** Entries withdrawn from the whole record. */
export async function countWithdrawn(): Promise<{ cases: number; visits: number }> {
  const { rows } = await connections().query<{ cases: number; visits: number }>(
    `SELECT count(*) FILTER (WHERE kind = 'case')::int AS cases, count(*) FILTER (WHERE kind = 'visit')::int AS visits
    FROM "Entry" WHERE "withdrawnAt" IS NOT NULL AND kind IN ('case', 'visit')`,
  )
  return rows[0] ?? { cases: 0, visits: 0 }
}

/** Titles of published recipes by their slugs. */
export async function recipeTitles(slugs: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const { rows } = await connections().query<{ slug: string; title: string }>(
    'SELECT slug, title FROM "RecipeIndex" WHERE slug = ANY($1::text[])',
    [[...slugs]],
  )
  return new Map(rows.map(({ slug, title }) => [slug, title]))
}
