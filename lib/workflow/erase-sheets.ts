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
const PIECE = 50

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
    for await (const piece of sheetsWith(tx, entry.slug, going.number, own, gone)) {
      const changed = piece.map((row) => struck(row, own, gone)).filter((row) => row !== null)
      await putStruck(tx, changed, at)
      losers.push(...changed.map(({ ownerKey }) => ownerKey))
    }
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
 * The recipe's sheets that hold one of the words, a piece at a time, held until the transaction ends; of the version
 * itself also all that have its title.
 *
 * @param own whether of the version of this number, or of all others
 */
async function* sheetsWith(
  tx: Db,
  slug: string,
  number: number,
  own: boolean,
  words: readonly string[],
): AsyncGenerator<readonly Row[]> {
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
    const last = piece.at(-1)
    if (last === undefined) return
    yield piece
    after = last.id
  }
}

/** The sheet without the words; null where it stays as it is, for words that stand within others are not always struck. */
function struck(row: Row, own: boolean, gone: readonly string[]): Row | null {
  const name = strike(row.name, gone)
  const note = strike(row.note, gone)
  const recipeTitle = own || gone.includes(row.recipeTitle ?? '') ? null : row.recipeTitle
  const left = withNoticesStruck(row.figures, gone)
  const figures = JSON.stringify(left) === JSON.stringify(row.figures) ? null : left
  const same = name === row.name && note === row.note && recipeTitle === row.recipeTitle && figures === null
  return same ? null : { ...row, name, note, recipeTitle, figures }
}

/** Writes struck sheets, in one statement; where figures are null they stay. */
async function putStruck(tx: Db, rows: readonly Row[], at: Date): Promise<void> {
  if (rows.length === 0) return
  await tx.$executeRaw`
    UPDATE "KeptSheet" s SET name = c.name, note = c.note, "recipeTitle" = c."recipeTitle",
      figures = coalesce(c.figures, s.figures), "erasedAt" = ${at}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      c(id uuid, name text, note text, "recipeTitle" text, figures jsonb)
    WHERE s.id = c.id`
}
