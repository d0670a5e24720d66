import { lexemesOf, spelledWords } from '#lib/entry/words.ts'
import type { SearchDocumentModel } from '../../../prisma/generated/models.ts'
import type { Db } from '../client.ts'
import { BLOCK, packIds, unpackIds } from './posting.ts'

/** What the postings and the words are made from. */
export type Indexed = Pick<SearchDocumentModel, 'id' | 'title' | 'summary' | 'body' | 'marks'>

/** What changes in postings and words when documents come, change and go. */
export class IndexChanges {
  readonly #added = new Map<string, Set<number>>()
  readonly #removed = new Map<string, Set<number>>()
  readonly #words = new Map<string, number>()

  /** One document as it was and as it is; undefined where there is none. */
  replace(before: Indexed | undefined, after: Indexed | undefined): void {
    const [old, now] = [lexemes(before), lexemes(after)]
    for (const one of old) if (!now.has(one)) into(this.#removed, one).add(before?.id ?? 0)
    for (const one of now) if (!old.has(one)) into(this.#added, one).add(after?.id ?? 0)
    for (const word of words(before)) this.#words.set(word, (this.#words.get(word) ?? 0) - 1)
    for (const word of words(after)) this.#words.set(word, (this.#words.get(word) ?? 0) + 1)
  }

  /** Writes all of it. Only with publishing locked. */
  async store(tx: Db): Promise<void> {
    await this.#storePostings(tx)
    await storeWords(
      tx,
      [...this.#words].filter(([, change]) => change !== 0),
    )
  }

  async #storePostings(tx: Db): Promise<void> {
    const touched = new Map<string, { lexeme: string; block: number; ids: Set<number> }>()
    const blockOf = (lexeme: string, id: number) => {
      const block = Math.floor(id / BLOCK)
      const key = `${block} ${lexeme}`
      const one = touched.get(key) ?? { lexeme, block, ids: new Set() }
      touched.set(key, one)
      return one.ids
    }
    for (const changes of [this.#added, this.#removed])
      for (const [lexeme, ids] of changes) for (const id of ids) blockOf(lexeme, id)
    const all = [...touched.values()]
    for (const { lexeme, block, ids } of await storedPostings(tx, all)) {
      const held = touched.get(`${block} ${lexeme}`)
      if (held) for (const within of unpackIds(ids)) held.ids.add(block * BLOCK + within)
    }
    for (const [lexeme, ids] of this.#added) for (const id of ids) blockOf(lexeme, id).add(id)
    for (const [lexeme, ids] of this.#removed) for (const id of ids) blockOf(lexeme, id).delete(id)
    await writePostings(
      tx,
      all.map(({ lexeme, block, ids }) => ({
        lexeme,
        block,
        ids: packIds([...ids].map((id) => id % BLOCK).sort((a, b) => a - b)),
      })),
    )
  }
}

export interface Posting {
  readonly lexeme: string
  readonly block: number
  readonly ids: Uint8Array<ArrayBuffer>
}

const lexemes = (document: Indexed | undefined): Set<string> => (document ? lexemesOf(document) : new Set())
const words = (document: Indexed | undefined): Set<string> => (document ? spelledWords(document) : new Set())

function into(map: Map<string, Set<number>>, key: string): Set<number> {
  const held = map.get(key) ?? new Set()
  map.set(key, held)
  return held
}

const storedPostings = (
  tx: Db,
  wanted: readonly { lexeme: string; block: number }[],
): Promise<{ lexeme: string; block: number; ids: Uint8Array }[]> => tx.$queryRaw`
  SELECT p.lexeme, p.block, p.ids
  FROM unnest(${wanted.map(({ lexeme }) => lexeme)}::text[], ${wanted.map(({ block }) => block)}::int[])
    AS w(lexeme, block)
  JOIN "SearchPosting" p ON p.lexeme = w.lexeme AND p.block = w.block`

/** Puts postings in the place of those of the same lexeme and block; an empty one is taken away. */
export async function writePostings(tx: Db, postings: readonly Posting[]): Promise<void> {
  for (let from = 0; from < postings.length; from += 5000) {
    const some = postings.slice(from, from + 5000)
    const full = some.filter(({ ids }) => ids.length > 0)
    const empty = some.filter(({ ids }) => ids.length === 0)
    if (full.length > 0)
      await tx.$executeRaw`
        INSERT INTO "SearchPosting" (lexeme, block, ids)
        SELECT * FROM unnest(${full.map(({ lexeme }) => lexeme)}::text[],
          ${full.map(({ block }) => block)}::int[], ${full.map(({ ids }) => ids)}::bytea[])
        ON CONFLICT (lexeme, block) DO UPDATE SET ids = excluded.ids`
    if (empty.length > 0)
      await tx.$executeRaw`
        DELETE FROM "SearchPosting" p
        USING unnest(${empty.map(({ lexeme }) => lexeme)}::text[], ${empty.map(({ block }) => block)}::int[])
          AS w(lexeme, block)
        WHERE p.lexeme = w.lexeme AND p.block = w.block`
  }
}

/** Adds to the number of documents that hold each word; a word that none holds any more is forgotten. */
export async function storeWords(
  tx: Db,
  changes: readonly (readonly [word: string, by: number])[],
): Promise<void> {
  for (let from = 0; from < changes.length; from += 10_000) {
    const some = changes.slice(from, from + 10_000)
    await tx.$executeRaw`
      INSERT INTO "SearchWord" AS w (word, documents)
      SELECT * FROM unnest(${some.map(([word]) => word)}::text[], ${some.map(([, by]) => by)}::int[])
      ON CONFLICT (word) DO UPDATE SET documents = w.documents + excluded.documents`
  }
  await tx.$executeRaw`DELETE FROM "SearchWord" WHERE documents <= 0
    AND word = ANY(${changes.filter(([, by]) => by < 0).map(([word]) => word)}::text[])`
}

/** How many changes are kept for servers to catch up by; one further behind reads everything again. */
const CHANGES_KEPT = 50_000

/** Tells every server to read these documents again, or everything. */
export async function noteChanges(tx: Db, documents: readonly number[] | 'all'): Promise<void> {
  if (documents === 'all') {
    await tx.searchChange.deleteMany()
    await tx.searchChange.create({ data: { document: null } })
    return
  }
  if (documents.length === 0) return
  await tx.searchChange.createMany({ data: documents.map((document) => ({ document })) })
  await tx.$executeRaw`DELETE FROM "SearchChange"
    WHERE number < (SELECT max(number) FROM "SearchChange") - ${CHANGES_KEPT}::int`
}
