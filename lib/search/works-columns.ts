import { WORK_NUMBERS, WORK_SETS, WORK_WORDS, type WorkPiece } from '#lib/db/evidence/works.ts'
import { Column } from './columns.ts'

export type WorkNumber = (typeof WORK_NUMBERS)[number]
export type WorkWord = (typeof WORK_WORDS)[number]
export type WorkSet = (typeof WORK_SETS)[number]

/** Stands for no number; no day and no code is as small. */
export const NONE = -(2 ** 31)

/** One visit that several people read: the step on each scale that each of them gave, the writer's first. */
export interface SharedVisit {
  /** Day since 1970. */
  readonly on: number
  readonly joint: readonly number[]
  readonly unit: readonly number[]
  readonly damp: readonly number[]
}

/**
 * What is kept of every work, some hundred bytes each: numbers, words as small codes (0: none) and sets as those of
 * documents are. Works stand in no order.
 */
export class WorkColumns {
  /** Rows so far, those of works that are gone among them: their document is {@link NONE}. */
  rows = 0
  #size = 1024
  readonly numbers: Record<WorkNumber, Int32Array>
  readonly codes: Record<WorkWord, Uint8Array>
  readonly sets: Record<WorkSet, Column>
  /** Visits that several people read, by the row of their work. */
  readonly shared = new Map<number, readonly SharedVisit[]>()
  readonly #words: Record<WorkWord, (string | boolean)[]>
  /** Rows that can be used again. */
  #free: number[] = []

  constructor() {
    this.numbers = made(WORK_NUMBERS, () => new Int32Array(this.#size))
    this.codes = made(WORK_WORDS, () => new Uint8Array(this.#size))
    this.sets = made(WORK_SETS, () => new Column(this.#size))
    this.#words = made(WORK_WORDS, () => [])
  }

  /** The code of a word in a column; -1, which no work has, where none has the word. */
  codeOf(name: WorkWord, word: string | boolean): number {
    const place = this.#words[name].indexOf(word)
    return place < 0 ? -1 : place + 1
  }

  /** The word of a code above 0. */
  wordOf(name: WorkWord, code: number): string | boolean | undefined {
    return this.#words[name][code - 1]
  }

  /** @param shared what several people read, by {@link sharedKey} */
  add(piece: WorkPiece, shared: ReadonlyMap<string, readonly SharedVisit[]>): void {
    const rows = Int32Array.from({ length: piece.rows }, () => this.#free.pop() ?? this.#next())
    for (const name of WORK_NUMBERS) {
      const [to, from] = [this.numbers[name], piece.numbers(name)]
      for (let i = 0; i < rows.length; i += 1) to[rows[i] as number] = from[i] ?? NONE
    }
    for (const name of WORK_WORDS) {
      const [to, from] = [this.codes[name], piece.texts(name)]
      for (let i = 0; i < rows.length; i += 1) to[rows[i] as number] = this.#coded(name, from[i] ?? null)
    }
    for (const name of WORK_SETS) {
      const [to, from] = [this.sets[name], piece.texts(name)]
      for (let i = 0; i < rows.length; i += 1) to.set(rows[i] as number, String(from[i] ?? ''))
    }
    if (shared.size > 0)
      rows.forEach((row, i) => {
        const own = shared.get(sharedKey(this.numbers.document[row] as number, piece.works[i] as string))
        if (own !== undefined) this.shared.set(row, own)
      })
  }

  /** Lets go of the works of these documents. */
  drop(documents: ReadonlySet<number>): void {
    const { document } = this.numbers
    for (let row = 0; row < this.rows; row += 1) {
      if (!documents.has(document[row] as number)) continue
      document[row] = NONE
      this.shared.delete(row)
      this.#free.push(row)
    }
  }

  #coded(name: WorkWord, word: string | boolean | null): number {
    if (word === null) return 0
    const words = this.#words[name]
    const place = words.indexOf(word)
    return place < 0 ? words.push(word) : place + 1
  }

  #next(): number {
    if (this.rows === this.#size) this.#grow()
    this.rows += 1
    return this.rows - 1
  }

  #grow(): void {
    this.#size *= 2
    for (const name of WORK_NUMBERS) {
      const wider = new Int32Array(this.#size)
      wider.set(this.numbers[name])
      this.numbers[name] = wider
    }
    for (const name of WORK_WORDS) {
      const wider = new Uint8Array(this.#size)
      wider.set(this.codes[name])
      this.codes[name] = wider
    }
    for (const name of WORK_SETS) this.sets[name].grow(this.#size)
  }
}

export const sharedKey = (document: number, work: string): string => `${document} ${work}`

const made = <K extends string, T>(names: readonly K[], make: () => T): Record<K, T> =>
  Object.fromEntries(names.map((name) => [name, make()])) as Record<K, T>
