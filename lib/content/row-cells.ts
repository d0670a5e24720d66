import type { z } from 'zod'
import type { FaultList, Place } from './fault.ts'
import type { Cell } from './markdown.ts'
import type { tableFront } from './schemas.ts'

export type TableFront = z.infer<typeof tableFront>

/** One row's cells, with the front matter behind those that are empty; tells each fault where it is. */
export class RowCells {
  readonly #cells: ReadonlyMap<string, Cell>
  readonly #place: Place
  readonly #defaults: TableFront
  readonly #faults: FaultList
  #isWhole = true

  constructor(cells: ReadonlyMap<string, Cell>, place: Place, defaults: TableFront, faults: FaultList) {
    this.#cells = cells
    this.#place = place
    this.#defaults = defaults
    this.#faults = faults
  }

  /** Has nothing been wrong so far? */
  get isWhole(): boolean {
    return this.#isWhole
  }

  /** Where a cell's words begin; the row's own place when it has no such cell. */
  at(column: string): Place {
    return this.#cells.get(column)?.place ?? this.#place
  }

  fail(column: string, reason: string): void {
    this.#faults.add(this.at(column), reason)
    this.#isWhole = false
  }

  optional(column: string): string | undefined {
    return this.#cells.get(column)?.text || undefined
  }

  /** A cell's words or the front matter's; without either a fault and nothing. */
  required(column: string): string {
    const value = this.optional(column) ?? this.#fallback(column)
    if (value === undefined) this.fail(column, `a row needs a ${column}`)
    return value ?? ''
  }

  oneOf<T extends string>(column: string, list: readonly T[]): T | undefined {
    const value = this.required(column)
    const known = list.find((item) => item === value)
    if (known === undefined && value !== '') {
      this.fail(column, `unknown ${column} "${value}"; one of: ${list.join(' ')}`)
    }
    return known
  }

  year(column: 'from' | 'to'): number {
    const value = Number(this.required(column))
    if (!Number.isInteger(value)) this.fail(column, `${column} must be a year such as 1810 or -30`)
    return value
  }

  /** The named optional cells that hold something. */
  given<C extends string>(...columns: readonly C[]): Partial<Record<C, string>> {
    const filled: Partial<Record<C, string>> = {}
    for (const column of columns) {
      const value = this.optional(column)
      if (value !== undefined) filled[column] = value
    }
    return filled
  }

  #fallback(column: string): string | undefined {
    const value = Object.entries(this.#defaults).find(([name]) => name === column)?.[1]
    return Array.isArray(value) ? value.join(' ') : value?.toString()
  }
}
