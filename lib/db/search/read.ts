import type { DampState, JointState, UnitState } from '#lib/entry/terms.ts'
import type { CaseSummary } from '../cases.ts'
import { connections, db } from '../client.ts'

/** What a server keeps of each document in memory. */
export interface DocumentFacts {
  readonly id: number
  /** As `facetLine` wrote it. */
  readonly facets: string
  readonly years: number
  /** Milliseconds since 1970. */
  readonly publishedAt: number
  readonly latitude: number | null
  readonly longitude: number | null
}

/** What tells why a document was found. */
export interface DocumentText {
  readonly title: string
  readonly summary: string
  readonly body: string
  readonly stems: string
  readonly marks: readonly string[]
}

/** A document as a page of results shows it. */
export type FoundDocument = DocumentText & {
  readonly document: number
  readonly kind: string
  readonly slug: string
  readonly invented: boolean
}

/** A case as a page of results shows it; its text only where it was asked for. */
export type FoundCaseRow = CaseSummary & { readonly document: number } & Partial<DocumentText>

/** Rows together with the number of the last change that was committed when they were read. */
export interface AsOf<T> {
  readonly change: number
  readonly rows: readonly T[]
}

/** The number of the last change that is committed; 0 before any. Each publishing raises it. */
export async function latestChange(): Promise<number> {
  const { rows } = await connections().query<{ change: number }>(`SELECT ${CHANGE} AS change`)
  return rows[0]?.change ?? 0
}

const CHANGE = '(SELECT coalesce(max(number), 0)::float8 FROM "SearchChange")'

/** Rows of a selection in the order of the ids they were asked by, and the last change, in one round trip. */
async function readAsOf<T extends { document: number }>(
  selection: string,
  ids: readonly number[],
): Promise<AsOf<T>> {
  const { rows } = await connections().query<T & { change: number }>(
    `SELECT c.change, s.* FROM (SELECT ${CHANGE} AS change) c LEFT JOIN (${selection}) s ON true`,
    [ids],
  )
  const byId = new Map(rows.map((row) => [row.document, row]))
  return { change: rows[0]?.change ?? 0, rows: ids.flatMap((id) => byId.get(id) ?? []) }
}

/** Published cases by their documents; those that are gone are left out. */
export async function foundCases(ids: readonly number[], text?: 'with-text'): Promise<AsOf<FoundCaseRow>> {
  const { change, rows } = await readAsOf<CaseRow>(
    `SELECT d.id AS document, i.slug, i.revision, i.title, i.summary, i.country, i.region, i.units, i.wall, i.uses,
      i.visits, i."yearsWatched", i."latestOn"::text, i."latestJoint", i."latestUnit", i."latestDamp", i.invented
      ${text === undefined ? '' : ', d.body, d.stems, d.marks'}
    FROM "SearchDocument" d JOIN "CaseIndex" i ON i."entryId" = d."entryId" WHERE d.id = ANY($1::int[])`,
    ids,
  )
  return { change, rows: rows.map(asSummary) }
}

type CaseRow = Omit<FoundCaseRow, 'yearsWatched' | 'latest'> & {
  change: number
  yearsWatched: number
  latestOn: string | null
  latestJoint: JointState
  latestUnit: UnitState
  latestDamp: DampState
}

const asSummary = ({
  change: _,
  yearsWatched,
  latestOn,
  latestJoint,
  latestUnit,
  latestDamp,
  ...row
}: CaseRow): FoundCaseRow => ({
  ...row,
  yearsWatched: yearsWatched < 0 ? null : yearsWatched,
  latest: latestOn === null ? null : { on: latestOn, joint: latestJoint, unit: latestUnit, damp: latestDamp },
})

/** Published documents of any kind, without their text only where that is asked for; those that are gone are left out. */
export const foundDocuments = (ids: readonly number[], text?: 'without-text'): Promise<AsOf<FoundDocument>> =>
  readAsOf(
    `SELECT d.id AS document, d.kind, d.slug, d.title, d.summary,
      ${text === undefined ? 'd.body, d.stems, d.marks' : `'' AS body, '' AS stems, '{}'::text[] AS marks`},
      coalesce(c.invented, r.invented, l.invented, false) AS invented
    FROM "SearchDocument" d
    LEFT JOIN "CaseIndex" c ON c."entryId" = d."entryId"
    LEFT JOIN "RecipeIndex" r ON r."entryId" = d."entryId"
    LEFT JOIN "LibraryIndex" l ON l."entryId" = d."entryId"
    WHERE d.id = ANY($1::int[])`,
    ids,
  )

/** The documents that changed after a number, or `all` where that can no longer be told one by one. */
export async function changesSince(number: number): Promise<readonly number[] | 'all'> {
  const rows = await db().$queryRaw<{ number: number; document: number | null }[]>`
    SELECT c.number::float8, c.document FROM "SearchChange" c WHERE c.number > ${number}::bigint
    UNION ALL (SELECT c.number::float8, c.document FROM "SearchChange" c ORDER BY c.number LIMIT 1)`
  const oldest = rows.at(-1)
  const changed = rows.slice(0, -1).map(({ document }) => document)
  if (oldest === undefined || oldest.number > number + 1 || changed.length > 10_000) return 'all'
  const ids = changed.filter((id) => id !== null)
  return ids.length < changed.length ? 'all' : ids
}

const PIECE = 10_000

/** All documents, in pieces that are read in some 60 ms, each as one text: a million rows would take the driver long. */
export async function* allDocuments(): AsyncGenerator<DocumentFacts[]> {
  const [row] = await db().$queryRaw<{ last: number | null }[]>`SELECT max(id) AS last FROM "SearchDocument"`
  for (let from = 0; from <= (row?.last ?? -1); from += PIECE) {
    const [piece] = await db().$queryRaw<{ text: string | null }[]>`
      SELECT string_agg(concat_ws(E'\\x1d', id, years, (extract(epoch FROM "publishedAt") * 1000)::bigint,
        coalesce(latitude::text, ''), coalesce(longitude::text, ''), facets), E'\\x1c') AS text
      FROM "SearchDocument" WHERE id >= ${from} AND id < ${from + PIECE}`
    yield (piece?.text?.split('\x1c') ?? []).map(readFacts)
  }
}

function readFacts(text: string): DocumentFacts {
  const [id, years, publishedAt, latitude, longitude, facets = ''] = text.split('\x1d')
  const degrees = (given: string | undefined) => (given ? Number(given) : null)
  return {
    id: Number(id),
    years: Number(years),
    publishedAt: Number(publishedAt),
    latitude: degrees(latitude),
    longitude: degrees(longitude),
    facets,
  }
}

/** These documents as they are now; those that are gone are left out. */
export async function documentsNow(ids: readonly number[]): Promise<DocumentFacts[]> {
  const rows = await db().searchDocument.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, facets: true, years: true, publishedAt: true, latitude: true, longitude: true },
  })
  return rows.map((row) => ({ ...row, publishedAt: row.publishedAt.getTime() }))
}

/** The stored postings of these lexemes, block by block. */
export async function postingsOf(
  lexemes: readonly string[],
): Promise<{ lexeme: string; block: number; ids: Uint8Array }[]> {
  if (lexemes.length === 0) return []
  const { rows } = await connections().query<{ lexeme: string; block: number; ids: Uint8Array }>(
    'SELECT lexeme, block, ids FROM "SearchPosting" WHERE lexeme = ANY($1::text[])',
    [lexemes],
  )
  return rows
}

/** The document of a published entry. */
export async function documentOf(kind: string, slug: string): Promise<number | undefined> {
  const [row] = await db().searchDocument.findMany({ where: { kind, slug }, select: { id: true } })
  return row?.id
}

/** Those of the documents in which the stems stand in a row. */
export async function withPhrase(ids: readonly number[], stems: readonly string[]): Promise<number[]> {
  if (ids.length === 0) return []
  const rows = await db().$queryRaw<{ id: number }[]>`
    SELECT d.id FROM unnest(${[...ids]}::int[]) AS w(id) JOIN "SearchDocument" d ON d.id = w.id
    WHERE position(${` ${stems.join(' ')} `} in d.stems) > 0`
  return rows.map(({ id }) => id)
}
