import type { WrittenKind } from '#lib/entry/body.ts'
import type { Db } from '../client.ts'
import { caseRows } from './case.ts'
import { LIBRARY_KINDS, type LibraryKind, libraryRows } from './library.ts'
import { outcomeRows } from './outcome.ts'
import { recipeRows } from './recipe.ts'
import { storeAllSearch, storeSearch } from './search.ts'
import { distinct } from './source.ts'
import { visitRows } from './visit.ts'

/** Any number, the same in every server: publishing is one at a time, so that no projection misses another's change. */
const PUBLISHING = 7_310_417

/** Raise it when the same revisions give other rows than before: servers then make all of them again at their start. */
export const PROJECTIONS = 3

/** Waits for other publishing to end and keeps it out until this transaction ends. Take it before any row lock. */
export async function lockPublishing(tx: Db): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(${PUBLISHING}::bigint)`
}

/**
 * Makes the projections of these entries again, and of all that is counted from them: a visit's case, a case's
 * recipes. Call it with publishing locked, in the transaction that changed what is published.
 */
export async function refresh(tx: Db, changed: readonly string[]): Promise<void> {
  const entries = await tx.entry.findMany({
    where: { id: { in: [...changed] } },
    select: { id: true, kind: true },
  })
  const of = (kind: string) => entries.filter((entry) => entry.kind === kind).map(({ id }) => id)
  const visits = of('visit')
  const before = await casesOf(tx, visits)
  await storeVisits(tx, visits)
  for (const kind of LIBRARY_KINDS) await storeLibrary(tx, kind, of(kind))
  const cases = distinct([...of('case'), ...before, ...(await casesOf(tx, visits))])
  const usedBefore = await recipesOf(tx, cases)
  await storeCases(tx, cases)
  const recipes = distinct([...of('recipe'), ...usedBefore, ...(await recipesOf(tx, cases))])
  await storeRecipes(tx, recipes)
  await storeSearch(tx, 'case', cases)
  await storeSearch(tx, 'recipe', recipes)
  for (const kind of LIBRARY_KINDS) await storeSearch(tx, kind, of(kind))
}

/** The entries of a kind, in pieces that one statement can take. */
export async function* chunksOf(tx: Db, kind: WrittenKind, size = 500): AsyncGenerator<string[]> {
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const rows = await tx.entry.findMany({
      where: { kind, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: size,
      select: { id: true },
    })
    const last = rows.at(-1)
    if (last === undefined) return
    yield rows.map(({ id }) => id)
    after = last.id
  }
}

/** Empties the projections and makes them again from the revisions that are published. */
export async function refreshAll(tx: Db): Promise<void> {
  await lockPublishing(tx)
  await tx.citation.deleteMany()
  await tx.recipeIndex.deleteMany()
  await tx.libraryIndex.deleteMany()
  await tx.workIndex.deleteMany()
  await tx.outcomeIndex.deleteMany()
  await tx.caseIndex.deleteMany()
  await tx.visitIndex.deleteMany()
  for await (const ids of chunksOf(tx, 'visit')) await storeVisits(tx, ids)
  for await (const ids of chunksOf(tx, 'case')) await storeCases(tx, ids)
  for await (const ids of chunksOf(tx, 'recipe')) await storeRecipes(tx, ids)
  for (const kind of LIBRARY_KINDS)
    for await (const ids of chunksOf(tx, kind)) await storeLibrary(tx, kind, ids)
  await storeAllSearch(tx, (kind) => chunksOf(tx, kind))
  const state = { version: PROJECTIONS }
  await tx.projectionState.upsert({ where: { id: 1 }, create: { id: 1, ...state }, update: state })
}

async function storeVisits(tx: Db, ids: string[]): Promise<void> {
  if (ids.length === 0) return
  await tx.visitIndex.deleteMany({ where: { entryId: { in: ids } } })
  await tx.visitIndex.createMany({ data: await visitRows(tx, ids) })
}

async function storeCases(tx: Db, ids: string[]): Promise<void> {
  if (ids.length === 0) return
  const { cases, works, citations } = await caseRows(tx, ids)
  await tx.workIndex.deleteMany({ where: { caseEntryId: { in: ids } } })
  await tx.outcomeIndex.deleteMany({ where: { caseEntryId: { in: ids } } })
  await tx.caseIndex.deleteMany({ where: { entryId: { in: ids } } })
  await tx.citation.deleteMany({ where: { entryId: { in: ids } } })
  await tx.caseIndex.createMany({ data: cases })
  await tx.workIndex.createMany({ data: works })
  await tx.outcomeIndex.createMany({ data: await outcomeRows(tx, ids) })
  await tx.citation.createMany({ data: citations })
}

async function storeRecipes(tx: Db, ids: string[]): Promise<void> {
  if (ids.length === 0) return
  const { recipes, citations } = await recipeRows(tx, ids)
  await tx.recipeIndex.deleteMany({ where: { entryId: { in: ids } } })
  await tx.citation.deleteMany({ where: { entryId: { in: ids } } })
  await tx.recipeIndex.createMany({ data: recipes })
  await tx.citation.createMany({ data: citations })
}

async function storeLibrary(tx: Db, kind: LibraryKind, ids: string[]): Promise<void> {
  if (ids.length === 0) return
  const { library, citations } = await libraryRows(tx, kind, ids)
  await tx.libraryIndex.deleteMany({ where: { entryId: { in: ids } } })
  await tx.citation.deleteMany({ where: { entryId: { in: ids } } })
  await tx.libraryIndex.createMany({ data: library })
  await tx.citation.createMany({ data: citations })
}

async function casesOf(tx: Db, visits: string[]): Promise<string[]> {
  const rows = await tx.visitIndex.findMany({
    where: { entryId: { in: visits } },
    distinct: ['caseEntryId'],
    select: { caseEntryId: true },
  })
  return rows.map(({ caseEntryId }) => caseEntryId)
}

async function recipesOf(tx: Db, cases: string[]): Promise<string[]> {
  const rows = await tx.workIndex.findMany({
    where: { caseEntryId: { in: cases }, recipeEntryId: { not: null } },
    distinct: ['recipeEntryId'],
    select: { recipeEntryId: true },
  })
  return rows.flatMap(({ recipeEntryId }) => recipeEntryId ?? [])
}
