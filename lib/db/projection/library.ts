import { type BodyOf, readBody } from '#lib/entry/body.ts'
import type { LabResult } from '#lib/entry/laboratory.ts'
import type { CitationModel, LibraryIndexModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { citationRows } from './citations.ts'
import { publishedRows, sortable } from './source.ts'

/** What people add beside content: one list for the three, since they are listed and cited alike. */
export const LIBRARY_KINDS = ['material', 'source', 'row'] as const
export type LibraryKind = (typeof LIBRARY_KINDS)[number]

export interface LibraryRows {
  readonly library: LibraryIndexModel[]
  readonly citations: CitationModel[]
}

/** The index rows that these materials, sources or proposed rows must have, told from their bodies. */
export async function libraryRows(tx: Db, kind: LibraryKind, ids: readonly string[]): Promise<LibraryRows> {
  const sources = (await publishedRows(tx, kind, ids)).map((row) => ({
    ...row,
    ...TOLD[kind](row.body, row.shape),
  }))
  return {
    library: sources.map(
      ({ entryId, slug, revision, publishedAt, title, summary, role, like, invented }) => ({
        ...{ entryId, kind, slug, revision, title, sortTitle: sortable(title), summary },
        ...{ role, like, invented, publishedAt },
      }),
    ),
    citations: sources.flatMap(({ entryId, revision, cites }) => citationRows(entryId, revision, cites)),
  }
}

interface Told {
  readonly title: string
  readonly summary: string
  readonly role: string | null
  readonly like: string | null
  readonly invented: boolean
  readonly cites: readonly { source: string; locator: string | null }[]
}

const TOLD: Record<LibraryKind, (body: unknown, shape: number) => Told> = {
  material: (stored, shape) => {
    const body = readBody('material', stored, shape)
    const { title, summary, role, like = null, invented, properties, laboratory } = body
    return { title, summary, role, like, invented, cites: cited([...properties, ...(laboratory ?? [])]) }
  },
  source: (stored, shape) => {
    const { title, note = '', invented } = readBody('source', stored, shape)
    return { title, summary: note, role: null, like: null, invented, cites: [] }
  },
  row: (stored, shape) => {
    const { title, measured, table = null, invented, source } = readBody('row', stored, shape)
    return { title, summary: measured, role: null, like: table, invented, cites: cited([{ source }]) }
  },
}

type Cites = Pick<LabResult, 'source'> | Pick<BodyOf<'material'>['properties'][number], 'source'>

/** Each source and place once, in the order they are cited. */
function cited(items: readonly Cites[]): { source: string; locator: string | null }[] {
  const seen = new Map<string, { source: string; locator: string | null }>()
  for (const { source } of items)
    if (source !== undefined)
      seen.set(`${source.source}, ${source.locator ?? ''}`, {
        source: source.source,
        locator: source.locator ?? null,
      })
  return [...seen.values()]
}
