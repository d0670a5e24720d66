import { canonicalJson } from '#lib/entry/digest.ts'
import { Prisma } from '../../../prisma/generated/client.ts'
import type { Db } from '../client.ts'
import { caseRows } from './case.ts'
import { checkPostings } from './check-search.ts'
import { LIBRARY_KINDS, libraryRows } from './library.ts'
import { outcomeRows } from './outcome.ts'
import { recipeRows } from './recipe.ts'
import { chunksOf } from './refresh.ts'
import { SEARCHED_KINDS, searchRows } from './search.ts'
import { visitRows } from './visit.ts'

/** A projection that does not say what the revisions say. */
export interface Disagreement {
  readonly table: string
  readonly entryId: string
}

/** Compares every projection row with the one that a rebuild would write. */
export async function* checkProjections(tx: Db): AsyncGenerator<Disagreement> {
  for await (const ids of chunksOf(tx, 'visit'))
    yield* differences(
      'VisitIndex',
      await visitRows(tx, ids),
      await tx.visitIndex.findMany({ where: { entryId: { in: ids } } }),
    )
  for await (const ids of chunksOf(tx, 'case')) {
    const { cases, works, citations } = await caseRows(tx, ids)
    const where = { entryId: { in: ids } }
    yield* differences('CaseIndex', cases, await tx.caseIndex.findMany({ where }))
    const stored = await tx.workIndex.findMany({ where: { caseEntryId: { in: ids } } })
    yield* differences('WorkIndex', works.map(withEntry), stored.map(withEntry))
    const outcomes = await tx.outcomeIndex.findMany({ where: { caseEntryId: { in: ids } } })
    yield* differences('OutcomeIndex', (await outcomeRows(tx, ids)).map(withEntry), outcomes.map(withEntry))
    yield* differences('Citation', citations, await tx.citation.findMany({ where }))
  }
  for await (const ids of chunksOf(tx, 'recipe')) {
    const { recipes, citations } = await recipeRows(tx, ids)
    const where = { entryId: { in: ids } }
    yield* differences('RecipeIndex', recipes, await tx.recipeIndex.findMany({ where }))
    yield* differences('Citation', citations, await tx.citation.findMany({ where }))
  }
  for (const kind of LIBRARY_KINDS)
    for await (const ids of chunksOf(tx, kind)) {
      const { library, citations } = await libraryRows(tx, kind, ids)
      const where = { entryId: { in: ids } }
      yield* differences('LibraryIndex', library, await tx.libraryIndex.findMany({ where }))
      yield* differences('Citation', citations, await tx.citation.findMany({ where }))
    }
  for (const kind of SEARCHED_KINDS)
    for await (const ids of chunksOf(tx, kind)) {
      const stored = await tx.searchDocument.findMany({ where: { entryId: { in: ids } }, omit: { id: true } })
      yield* differences('SearchDocument', await searchRows(tx, kind, ids), stored)
    }
  yield* checkPostings(tx)
  yield* await strays(tx)
}

const withEntry = <T extends { caseEntryId: string }>(row: T) => ({ ...row, entryId: row.caseEntryId })

function* differences<T extends { entryId: string }>(
  table: string,
  expected: readonly T[],
  stored: readonly T[],
): Generator<Disagreement> {
  const [wanted, found] = [linesByEntry(expected), linesByEntry(stored)]
  for (const entryId of new Set([...wanted.keys(), ...found.keys()]))
    if (wanted.get(entryId) !== found.get(entryId)) yield { table, entryId }
}

/** Each entry's rows as one text that is the same for the same rows in any order. */
function linesByEntry(rows: readonly { entryId: string }[]): Map<string, string> {
  const lines = rows.map((row) => [row.entryId, canonicalJson(JSON.parse(JSON.stringify(row)))] as const)
  const byEntry = new Map<string, string>()
  for (const [entryId, line] of lines.sort(([, a], [, b]) => (a < b ? -1 : 1)))
    byEntry.set(entryId, `${byEntry.get(entryId) ?? ''}${line}\n`)
  return byEntry
}

/** Rows of entries that do not exist, which no comparison above would meet. */
async function strays(tx: Db): Promise<Disagreement[]> {
  const tables = ['VisitIndex', 'CaseIndex', 'RecipeIndex', 'LibraryIndex', 'Citation', 'SearchDocument'].map(
    (table) => Prisma.sql`SELECT ${table} AS table, "entryId" FROM ${Prisma.raw(`"${table}"`)}`,
  )
  return tx.$queryRaw<Disagreement[]>`
    SELECT DISTINCT p."table", p."entryId" FROM (
      ${Prisma.join(tables, ' UNION ALL ')} UNION ALL SELECT 'WorkIndex', "caseEntryId" FROM "WorkIndex"
      UNION ALL SELECT 'OutcomeIndex', "caseEntryId" FROM "OutcomeIndex"
    ) p WHERE NOT EXISTS (SELECT FROM "Entry" e WHERE e.id = p."entryId")`
}
