import { readBody } from '#lib/entry/body.ts'
import { facetLine } from '#lib/entry/facets.ts'
import {
  lines,
  mark,
  SEARCHED_KINDS,
  type SearchedKind,
  type SearchText,
  searchTextOf,
} from '#lib/entry/search-text.ts'
import { fold, lexemesOf, spelledWords, stemLine } from '#lib/entry/words.ts'
import type { CaseIndexModel, SearchDocumentModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { BLOCK, packIds } from '../search/posting.ts'
import { IndexChanges, type Indexed, noteChanges, storeWords, writePostings } from '../search/write.ts'
import { distinct, publishedRows } from './source.ts'

/** A document but for the id that it is given when it is first stored. */
export type SearchRow = Omit<SearchDocumentModel, 'id'>

export { SEARCHED_KINDS }

/**
 * The documents that these entries must have, one for each that is published. Cases and recipes are told from
 * their bodies and from their own index rows, so those must be made before.
 */
export async function searchRows(tx: Db, kind: SearchedKind, ids: readonly string[]): Promise<SearchRow[]> {
  const [published, cases, seen] = await Promise.all([
    publishedRows(tx, kind, ids),
    kind === 'case' ? tx.caseIndex.findMany({ where: { entryId: { in: [...ids] } } }) : [],
    kind === 'case' ? seenAt(tx, ids) : new Map<string, string[]>(),
  ])
  const recipeUnits =
    kind === 'recipe'
      ? await tx.recipeIndex.findMany({
          where: { entryId: { in: [...ids] } },
          select: { entryId: true, units: true },
        })
      : []
  const caseOf = new Map(cases.map((row) => [row.entryId, row]))
  const unitsOf = new Map(recipeUnits.map(({ entryId, units }) => [entryId, units]))
  return published.map((entry) =>
    documentRow(kind, entry, searchTextOf(kind, readBody(kind, entry.body, entry.shape)), {
      row: caseOf.get(entry.entryId),
      units: unitsOf.get(entry.entryId),
      seen: seen.get(entry.entryId),
    }),
  )
}

/**
 * One document from what its body says and from what else is known of the entry.
 *
 * @param known a case's index row, all units of a recipe and of the walls it was used on, what visitors wrote
 */
export function documentRow(
  kind: SearchedKind,
  { entryId, slug, publishedAt }: Pick<SearchRow, 'entryId' | 'slug' | 'publishedAt'>,
  { title, summary, ...text }: SearchText,
  {
    row,
    units,
    seen = [],
  }: {
    row?: CaseIndexModel | undefined
    units?: readonly string[] | undefined
    seen?: readonly string[] | undefined
  },
): SearchRow {
  const body = [text.body, lines(seen)].filter(Boolean).join('\n')
  const marks = distinct([...text.marks, ...(row ? mortarMarks(row) : [])])
  return {
    ...{ entryId, kind, slug, title, folded: fold(title), summary, body, marks },
    stems: stemLine({ title, summary, body, marks }),
    facets: facetLine({
      kind: [kind],
      ...text.facets,
      ...(units && { unit: units }),
      ...(row && caseFacets(row)),
    }),
    years: row?.yearsWatched ?? -1,
    publishedAt,
    latitude: row?.latitude ?? null,
    longitude: row?.longitude ?? null,
  }
}

/** What a case is marked with beside what its body tells: what its mortars were. */
export const mortarMarks = ({ families, methods, materials }: CaseIndexModel): string[] => [
  ...families.map((one) => mark('family', one)),
  ...methods.map((one) => mark('method', one)),
  ...materials.map((one) => mark('material', one)),
]

/** The facets of a case that its body does not tell. */
export const caseFacets = (row: CaseIndexModel) => ({
  family: row.families,
  method: row.methods,
  binder: row.materials,
  recipe: row.recipes,
  row: row.rows,
  joint: row.latestJoint === null ? [] : [row.latestJoint],
  unitState: row.latestUnit === null ? [] : [row.latestUnit],
  damp: row.latestDamp === null ? [] : [row.latestDamp],
  quality: [
    ...(row.hasAnalysis ? ['analysis'] : []),
    ...(row.hasPhotos ? ['photos'] : []),
    ...(row.secondObserver ? ['second-observer'] : []),
    ...(row.pastFive ? ['past-five'] : []),
  ],
  disputed: [row.disputed ? 'yes' : 'no'],
})

/** What visitors wrote at the visits published for each case, oldest first. */
async function seenAt(tx: Db, ids: readonly string[]): Promise<ReadonlyMap<string, string[]>> {
  const rows = await tx.$queryRaw<{ caseEntryId: string; body: unknown; shape: number }[]>`
    SELECT v."caseEntryId", r.body, r.shape FROM "VisitIndex" v
    JOIN "Entry" e ON e.id = v."entryId" JOIN "Revision" r ON r.id = e."publishedRevisionId"
    WHERE v."caseEntryId" = ANY(${[...ids]}::uuid[]) ORDER BY v."on", v.slug`
  const seen = new Map<string, string[]>()
  for (const { caseEntryId, body, shape } of rows) {
    const words = readBody('visit', body, shape).seen
    if (words !== undefined) seen.set(caseEntryId, [...(seen.get(caseEntryId) ?? []), words])
  }
  return seen
}

/** Makes the documents of these entries again, with what finds them. A document keeps its id while it is published. */
export async function storeSearch(tx: Db, kind: SearchedKind, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return
  const changes = new IndexChanges()
  const { changed, same } = await storeDocuments(tx, kind, ids, (before, after) =>
    changes.replace(before, after),
  )
  if (changed.length > 0) await changes.store(tx)
  // Servers read a case's works again by its document, which can say the same after another visit.
  await noteChanges(tx, kind === 'case' ? [...changed, ...same] : changed)
}

/** Empties and refills all that is searched; readers keep what they have until this commits. */
export async function storeAllSearch(
  tx: Db,
  chunks: (kind: SearchedKind) => AsyncIterable<string[]>,
): Promise<void> {
  await tx.$executeRaw`DELETE FROM "SearchDocument" d WHERE NOT EXISTS (SELECT FROM "Entry" e WHERE e.id = d."entryId")`
  for (const kind of SEARCHED_KINDS)
    for await (const ids of chunks(kind)) await storeDocuments(tx, kind, ids, () => {})
  await tx.searchPosting.deleteMany()
  await tx.searchWord.deleteMany()
  const words = new Map<string, number>()
  for await (const { block, postings } of expectedPostings(tx, words))
    await writePostings(
      tx,
      [...postings].map(([lexeme, ids]) => ({ lexeme, block, ids: packIds(ids) })),
    )
  await storeWords(tx, [...words])
  await noteChanges(tx, 'all')
}

/**
 * The postings that the stored documents must have, block by block, each lexeme's ids sorted.
 *
 * @param words filled with how many documents hold each word
 */
export async function* expectedPostings(
  tx: Db,
  words: Map<string, number>,
): AsyncGenerator<{ block: number; postings: Map<string, number[]> }> {
  const [{ last } = { last: null }] = await tx.$queryRaw<{ last: number | null }[]>`
    SELECT max(id) AS last FROM "SearchDocument"`
  for (let block = 0; last !== null && block * BLOCK <= last; block += 1) {
    const postings = new Map<string, number[]>()
    for (let from = block * BLOCK; from < (block + 1) * BLOCK && from <= last; from += 4096)
      for (const document of await documentsBetween(tx, from, from + 4096)) {
        for (const lexeme of lexemesOf(document)) {
          const ids = postings.get(lexeme)
          if (ids) ids.push(document.id % BLOCK)
          else postings.set(lexeme, [document.id % BLOCK])
        }
        for (const word of spelledWords(document)) words.set(word, (words.get(word) ?? 0) + 1)
      }
    yield { block, postings }
  }
}

const documentsBetween = (tx: Db, from: number, to: number): Promise<Indexed[]> =>
  tx.searchDocument.findMany({
    where: { id: { gte: from, lt: to } },
    orderBy: { id: 'asc' },
    select: { id: true, title: true, summary: true, body: true, marks: true },
  })

/** Brings the documents of these entries up to date and resolves with the ids of those that changed or did not. */
async function storeDocuments(
  tx: Db,
  kind: SearchedKind,
  ids: readonly string[],
  changed: (before: Indexed | undefined, after: Indexed | undefined) => void,
): Promise<{ changed: number[]; same: number[] }> {
  const stored = await tx.searchDocument.findMany({ where: { entryId: { in: [...ids] } } })
  const wanted = await searchRows(tx, kind, ids)
  const before = new Map(stored.map((row) => [row.entryId, row]))
  const after = new Map(wanted.map((row) => [row.entryId, row]))
  const gone = stored.filter(({ entryId }) => !after.has(entryId))
  const fresh = wanted.filter(({ entryId }) => !before.has(entryId))
  const other = wanted.flatMap((row) => {
    const old = before.get(row.entryId)
    return old === undefined || isSame(old, row) ? [] : [{ old, now: { ...row, id: old.id } }]
  })
  if (gone.length > 0) await tx.searchDocument.deleteMany({ where: { id: { in: gone.map(({ id }) => id) } } })
  for (const { now } of other) await tx.searchDocument.update({ where: { id: now.id }, data: now })
  const made = fresh.length > 0 ? await tx.searchDocument.createManyAndReturn({ data: fresh }) : []
  for (const row of gone) changed(row, undefined)
  for (const { old, now } of other) changed(old, now)
  for (const row of made) changed(undefined, row)
  const touched = new Set([...gone, ...other.map(({ now }) => now), ...made].map(({ id }) => id))
  return { changed: [...touched], same: stored.flatMap(({ id }) => (touched.has(id) ? [] : [id])) }
}

const isSame = ({ id: _, ...old }: SearchDocumentModel, row: SearchRow): boolean =>
  JSON.stringify(inOrder(old)) === JSON.stringify(inOrder(row))

const inOrder = (row: object) => Object.entries(row).sort(([a], [b]) => (a < b ? -1 : 1))
