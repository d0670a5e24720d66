import type { ContentFault } from './types.ts'

/** A place in a content file, counted from 1 as editors count. */
export interface Place {
  readonly file: string
  readonly line: number
  readonly column: number
}

/** Gathers what is wrong, so that an author sees all of it at once. */
export class FaultList {
  readonly #faults: ContentFault[] = []

  add(place: Place, reason: string): void {
    this.#faults.push({ file: place.file, line: place.line, column: place.column, reason })
  }

  get isEmpty(): boolean {
    return this.#faults.length === 0
  }

  /** All faults by file, line and column. */
  sorted(): readonly ContentFault[] {
    return [...this.#faults].sort(
      (a, b) =>
        compare(a.file, b.file) || a.line - b.line || a.column - b.column || compare(a.reason, b.reason),
    )
  }
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** The fault on one line, as a compiler prints it. */
export const printFault = (fault: ContentFault): string =>
  `${fault.file}:${fault.line}:${fault.column} ${fault.reason}`

/** Thrown by `content()`: the site does not start on wrong content. */
export class ContentError extends Error {
  readonly faults: readonly ContentFault[]

  constructor(faults: readonly ContentFault[]) {
    super(`content/ has ${faults.length} fault(s):\n${faults.map(printFault).join('\n')}`)
    this.name = 'ContentError'
    this.faults = faults
  }
}
