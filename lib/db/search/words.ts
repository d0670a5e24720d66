import { db } from '../client.ts'

/** Those of the words that stand in the record, spelled so. */
export async function wordsWritten(words: readonly string[]): Promise<string[]> {
  if (words.length === 0) return []
  const rows = await db().searchWord.findMany({ where: { word: { in: [...words] } }, select: { word: true } })
  return rows.map(({ word }) => word)
}

/** Words of the record that look like this one, the most alike first. */
export async function wordsLike(word: string, limit = 30): Promise<string[]> {
  const rows = await db().$queryRaw<{ word: string }[]>`
    SELECT word FROM "SearchWord" WHERE word % ${word}
    ORDER BY similarity(word, ${word}) DESC, documents DESC, word LIMIT ${limit}`
  return rows.map(({ word }) => word)
}

/**
 * Words of the record of which what is typed so far may be a beginning with slips, the most alike first. The index
 * of trigrams answers (Bitmap Index Scan on "SearchWord_word_idx"): this costs by how many different words there are,
 * not by the cases that hold them. Among 245,000 made-up words of like syllables it took 2 to 41 ms.
 */
export async function wordsLikeBeginning(typed: string, limit = 30): Promise<string[]> {
  const rows = await db().$queryRaw<{ word: string }[]>`
    SELECT word FROM "SearchWord" WHERE word %> ${typed}
    ORDER BY word_similarity(${typed}, word) DESC, documents DESC, word LIMIT ${limit}`
  return rows.map(({ word }) => word)
}

/** Words of the record that begin so, the most used first. */
export async function wordsFrom(start: string, limit = 10): Promise<string[]> {
  const rows = await db().$queryRaw<{ word: string }[]>`
    SELECT word FROM "SearchWord" WHERE word >= ${start} AND word < ${`${start}\u{10ffff}`}
    ORDER BY documents DESC, word LIMIT ${limit}`
  return rows.map(({ word }) => word)
}

/** Titles of a kind that begin so, in plain order. */
export const titlesFrom = (
  kind: string,
  start: string,
  limit = 5,
): Promise<{ slug: string; title: string }[]> => db().$queryRaw`
  SELECT slug, title FROM "SearchDocument"
  WHERE kind = ${kind} AND folded >= ${start} AND folded < ${`${start}\u{10ffff}`}
  ORDER BY folded, slug LIMIT ${limit}`
