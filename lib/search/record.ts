import { markIds } from '#lib/db/search/posting.ts'
import { allDocuments, documentsNow, latestChange, postingsOf, withPhrase } from '#lib/db/search/read.ts'
import { type Bits, newBits } from './bits.ts'
import { Columns } from './columns.ts'
import { type Known, keepOne } from './kept.ts'
import type { Segment } from './segment.ts'

/** The record as this process knows it, up to a change of that number. */
export interface RecordSegment extends Segment {
  readonly change: number
}

/** Most bytes of postings that are kept from one search to the next, as they are stored. */
const KEPT_BYTES = 64_000_000
const MOST_ABSENT = 50_000

class KeptRecord implements RecordSegment, Known {
  columns = new Columns()
  change = 0
  readonly #kept = new Map<string, Kept>()
  #keptBytes = 0
  /** Lexemes under which nothing stands: most names of other languages. */
  readonly #absent = new Set<string>()

  async readAll(): Promise<void> {
    // Read first: what changes meanwhile has a higher number and is read again.
    const change = await latestChange()
    const columns = new Columns()
    for await (const piece of allDocuments()) for (const facts of piece) columns.set(facts)
    this.columns = columns
    this.change = change
    this.#forget()
  }

  async takeOver(changed: readonly number[], latest: number): Promise<void> {
    const now = new Map((await documentsNow(changed)).map((facts) => [facts.id, facts]))
    for (const id of changed) {
      const facts = now.get(id)
      if (facts === undefined) this.columns.drop(id)
      else this.columns.set(facts)
    }
    this.change = latest
    this.#forget()
  }

  async look(lexemes: readonly string[]): Promise<ReadonlyMap<string, Bits>> {
    const { size } = this.columns
    const change = this.change
    // Taken before anything is waited for: another search may meanwhile let go of some.
    const held = new Map<string, readonly Block[]>()
    for (const lexeme of lexemes) {
      const known = this.#kept.get(lexeme)
      if (known !== undefined) held.set(lexeme, known.blocks)
    }
    const missing = lexemes.filter((lexeme) => !held.has(lexeme) && !this.#absent.has(lexeme))
    const fresh = new Map<string, Block[]>()
    for (const { lexeme, block, ids } of await postingsOf(missing)) {
      const blocks = fresh.get(lexeme)
      if (blocks === undefined) fresh.set(lexeme, [{ block, ids }])
      else blocks.push({ block, ids })
    }
    const found = new Map<string, Bits>()
    for (const lexeme of lexemes) {
      const blocks = fresh.get(lexeme) ?? held.get(lexeme)
      if (blocks === undefined) continue
      const bits = newBits(size)
      for (const { block, ids } of blocks) markIds(bits, block, ids)
      found.set(lexeme, bits)
    }
    if (change === this.change) this.#keep(lexemes, missing, fresh)
    return found
  }

  inARow(ids: readonly number[], stems: readonly string[]): Promise<number[]> {
    return withPhrase(ids, stems)
  }

  /** The lexemes asked for last are kept. */
  #keep(asked: readonly string[], missing: readonly string[], fresh: ReadonlyMap<string, Block[]>): void {
    for (const lexeme of asked) {
      const known = this.#kept.get(lexeme)
      if (known === undefined) continue
      this.#kept.delete(lexeme)
      this.#kept.set(lexeme, known)
    }
    if (this.#absent.size > MOST_ABSENT) this.#absent.clear()
    for (const lexeme of missing) {
      const blocks = fresh.get(lexeme)
      if (blocks === undefined) this.#absent.add(lexeme)
      else if (!this.#kept.has(lexeme)) {
        const bytes = blocks.reduce((sum, { ids }) => sum + ids.length, 0)
        this.#kept.set(lexeme, { blocks, bytes })
        this.#keptBytes += bytes
      }
    }
    for (const [lexeme, { bytes }] of this.#kept) {
      if (this.#keptBytes <= KEPT_BYTES) break
      this.#kept.delete(lexeme)
      this.#keptBytes -= bytes
    }
  }

  #forget(): void {
    this.#kept.clear()
    this.#keptBytes = 0
    this.#absent.clear()
  }
}

interface Block {
  readonly block: number
  readonly ids: Uint8Array
}

interface Kept {
  readonly blocks: readonly Block[]
  readonly bytes: number
}

const kept = keepOne('record', () => new KeptRecord())

/**
 * The record for a search, read once per process.
 *
 * @param latest number of the last change, where it is known to be newer
 */
export const recordSegment = (latest?: number): Promise<RecordSegment> => kept.current(latest)

/** Lets go of what was read; the next search reads it again. */
export const forgetRecord = kept.forget
