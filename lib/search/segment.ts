import type { Bits } from './bits.ts'
import type { Columns } from './columns.ts'

/** A body of documents that is searched as one: the record, or content. */
export interface Segment {
  readonly columns: Columns
  /** The documents under each of the lexemes; those that are under none are left out. Not to be written to. */
  look(lexemes: readonly string[]): Promise<ReadonlyMap<string, Bits>>
  /** Of these documents, those in which the stems stand in a row. */
  inARow(ids: readonly number[], stems: readonly string[]): Promise<readonly number[]>
}
