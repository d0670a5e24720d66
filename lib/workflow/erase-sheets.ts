import type { Db } from '#lib/db/client.ts'
import type { WrittenKind } from '#lib/entry/body.ts'
import { STRUCK, strike, withNoticesStruck } from '#lib/entry/kept-struck.ts'
import type { Going } from './erase-drafts.ts'

interface Row {
  readonly id: string
  readonly ownerKey: string
  readonly name: string
  readonly note: string
  readonly recipeTitle: string | null
  /** Null where no notice of it holds one of the words: figures are large. */
  readonly figures: unknown
}

/** Sheets read at once: an erasure takes little memory, however many keep one. */
const PIECE = 100

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
  entry: { readonly id: string; readonly kind: WrittenKind; readonly slug: string },
  going: Going,
  at: Date,
): Promise<string[]> {
  // Sheets are worked from recipes alone.
  if (entry.kind !== 'recipe') return []
  const told = wordsOf(going.body)
  const alone = await toldByItAlone(tx, entry.id, going.id, told)
  const losers: string[] = []
  for (const [own, gone] of [
    [true, told],
    [false, alone],
  ] as const)
    for await (const row of sheetsWith(tx, entry.slug, going.number, own, gone))
      if (await clearSheet(tx, row, own, gone, at)) losers.push(row.ownerKey)
  return losers
}

/** What of a recipe's own words a sheet shows, the longest first: once words within it were struck, it would not be found. */
function wordsOf(body: unknown): string[] {
  const { title, standingReason } = body as { title?: unknown; standingReason?: unknown }
  return [title, standingReason]
    .filter((text) => typeof text === 'string')
    .filter((text) => text !== STRUCK)
    .sort((one, other) => other.length - one.length)
}

/** Those of the words that no other version of the entry tells; an erased one tells nothing. */
async function toldByItAlone(
  tx: Db,
  entryId: string,
  revisionId: string,
  told: readonly string[],
): Promise<string[]> {
  const alone = await tx.$queryRaw<{ word: string }[]>`
    SELECT word FROM unnest(${told}::text[]) word WHERE NOT EXISTS (
      SELECT FROM "Revision" r WHERE r."entryId" = ${entryId}::uuid AND r.id <> ${revisionId}::uuid
        AND word IN (r.body ->> 'title', r.body ->> 'standingReason'))`
  return told.filter((text) => alone.some(({ word }) => word === text))
}

/**
 * The recipe's sheets that hold one of the words, held until the transaction ends; of the version itself also all that
 * have its title.
 *
 * @param own whether of the version of this number, or of all others
 */
async function* sheetsWith(
  tx: Db,
  slug: string,
  number: number,
  own: boolean,
  words: readonly string[],
): AsyncGenerator<Row> {
  if (!own && words.length === 0) return
  let after = '00000000-0000-0000-0000-000000000000'
  for (;;) {
    const piece = await tx.$queryRaw<Row[]>`
      SELECT s.id, s."ownerKey", s.name, s.note, s."recipeTitle", CASE WHEN notices.told THEN s.figures END AS figures
      FROM "KeptSheet" s CROSS JOIN LATERAL (
        SELECT EXISTS (
          SELECT FROM jsonb_path_query(s.figures, '$.blocks[*] ? (@.kind == "notice").text') notice,
            unnest(${words}::text[]) word
          WHERE strpos(notice #>> '{}', word) > 0
        ) AS told
      ) notices
      WHERE s."recipeSlug" = ${slug} AND s.id > ${after}::uuid AND (s."recipeRevision" = ${number}) = ${own} AND (
        (${own} AND s."recipeTitle" IS NOT NULL) OR notices.told OR EXISTS (
          SELECT FROM unnest(${words}::text[]) word
          WHERE s."recipeTitle" = word OR strpos(s.name, word) > 0 OR strpos(s.note, word) > 0
        )
      )
      ORDER BY s.id LIMIT ${PIECE} FOR UPDATE OF s`
    yield* piece
    const last = piece.at(-1)
    if (last === undefined) return
    after = last.id
  }
}

/** Whether the sheet lost something: words that stand within others are not always struck. */
async function clearSheet(
  tx: Db,
  { id, ...row }: Row,
  own: boolean,
  gone: readonly string[],
  at: Date,
): Promise<boolean> {
  const name = strike(row.name, gone)
  const note = strike(row.note, gone)
  const recipeTitle = own || gone.includes(row.recipeTitle ?? '') ? null : row.recipeTitle
  const before = JSON.stringify(row.figures)
  const figures = JSON.stringify(withNoticesStruck(row.figures, gone))
  if (name === row.name && note === row.note && recipeTitle === row.recipeTitle && figures === before)
    return false
  await tx.$executeRaw`
    UPDATE "KeptSheet" SET name = ${name}, note = ${note}, "recipeTitle" = ${recipeTitle},
      figures = CASE WHEN ${figures !== before} THEN ${figures}::jsonb ELSE figures END, "erasedAt" = ${at}
    WHERE id = ${id}::uuid`
  return true
}
