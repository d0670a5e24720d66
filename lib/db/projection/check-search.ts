import type { Db } from '../client.ts'
import { BLOCK, packIds, unpackIds } from '../search/posting.ts'
import type { Disagreement } from './check.ts'
import { expectedPostings } from './search.ts'

/** An entry's id where none can be named. */
const NONE = '00000000-0000-0000-0000-000000000000'

/** Compares postings and words with what the stored documents say: which entries are found wrongly, or not. */
export async function* checkPostings(tx: Db): AsyncGenerator<Disagreement> {
  const words = new Map<string, number>()
  const wrong = new Set<number>()
  let blocks = 0
  for await (const { block, postings } of expectedPostings(tx, words)) {
    blocks = block + 1
    const stored = await tx.searchPosting.findMany({ where: { block } })
    for (const { lexeme, ids } of stored) {
      const expected = postings.get(lexeme) ?? []
      postings.delete(lexeme)
      if (isEqual(ids, packIds(expected))) continue
      const found = new Set(unpackIds(ids))
      for (const id of found) if (!expected.includes(id)) wrong.add(block * BLOCK + id)
      for (const id of expected) if (!found.has(id)) wrong.add(block * BLOCK + id)
    }
    for (const ids of postings.values()) for (const id of ids) wrong.add(block * BLOCK + id)
  }
  const documents = await tx.searchDocument.findMany({
    where: { id: { in: [...wrong] } },
    select: { entryId: true },
  })
  for (const { entryId } of documents) yield { table: 'SearchPosting', entryId }
  const stray = await tx.searchPosting.count({ where: { block: { gte: blocks } } })
  if (documents.length < wrong.size || stray > 0) yield { table: 'SearchPosting', entryId: NONE }
  if (!(await hasWords(tx, words))) yield { table: 'SearchWord', entryId: NONE }
}

const isEqual = (a: Uint8Array, b: Uint8Array) => a.length === b.length && a.every((byte, i) => byte === b[i])

async function hasWords(tx: Db, words: ReadonlyMap<string, number>): Promise<boolean> {
  const stored = await tx.searchWord.findMany()
  return stored.length === words.size && stored.every(({ word, documents }) => words.get(word) === documents)
}
