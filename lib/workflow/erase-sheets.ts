import type { Db } from '#lib/db/client.ts'
import { isErased } from '#lib/entry/erased.ts'
import { STRUCK, strike, withNoticesStruck } from '#lib/entry/kept-struck.ts'
import type { Going } from './erase-drafts.ts'

interface Row {
  readonly id: string
  readonly ownerKey: string
  readonly name: string
  readonly note: string
  readonly recipeRevision: number
  readonly recipeTitle: string | null
  readonly figures: unknown
}

/**
 * Takes what an erased version of a recipe told in words out of the sheets that were worked from it and kept: its title,
 * and the reason for its standing, which sheets of other versions may show too. There only what no other version tells
 * goes. Figures stay: they are the sheet's own.
 *
 * @param entry held by the caller, so that no sheet of it is kept meanwhile
 * @param at when the erasure was decided
 * @returns keys of those whose sheets lost something
 */
export async function clearSheets(
  tx: Db,
  entry: { readonly id: string; readonly slug: string },
  going: Going,
  at: Date,
): Promise<string[]> {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT id, "ownerKey", name, note, "recipeRevision", "recipeTitle", figures FROM "KeptSheet"
    WHERE "recipeSlug" = ${entry.slug} FOR UPDATE`
  if (rows.length === 0) return []
  const told = wordsOf(going.body)
  const others = await tx.revision.findMany({
    where: { entryId: entry.id, id: { not: going.id } },
    select: { body: true },
  })
  const known = new Set(others.flatMap(({ body }) => (isErased(body) ? [] : wordsOf(body))))
  const alone = told.filter((text) => !known.has(text))
  const losers: string[] = []
  for (const { id, ownerKey, recipeRevision, ...row } of rows) {
    const own = recipeRevision === going.number
    const gone = own ? told : alone
    const data = {
      name: strike(row.name, gone),
      note: strike(row.note, gone),
      recipeTitle: own || gone.includes(row.recipeTitle ?? '') ? null : row.recipeTitle,
      figures: withNoticesStruck(row.figures, gone),
    }
    const same =
      data.name === row.name &&
      data.note === row.note &&
      data.recipeTitle === row.recipeTitle &&
      JSON.stringify(data.figures) === JSON.stringify(row.figures)
    if (same) continue
    await tx.$executeRaw`
      UPDATE "KeptSheet" SET name = ${data.name}, note = ${data.note}, "recipeTitle" = ${data.recipeTitle},
        figures = ${JSON.stringify(data.figures)}::jsonb, "erasedAt" = ${at}
      WHERE id = ${id}::uuid`
    losers.push(ownerKey)
  }
  return losers
}

/** What of a recipe's own words a sheet shows. */
function wordsOf(body: unknown): string[] {
  const { title, standingReason } = body as { title?: unknown; standingReason?: unknown }
  return [title, standingReason].filter((text) => typeof text === 'string').filter((text) => text !== STRUCK)
}
