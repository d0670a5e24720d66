import type { FaultList, Place } from './fault.ts'

/**
 * Items by id, each with the place it was declared at; a second one of an id is a fault that names both.
 * An id whose own file is at fault is known without an item, so that one fault is not told many times.
 */
export class Collection<T> {
  readonly #items = new Map<string, { item: T; place: Place }>()
  readonly #unread = new Set<string>()
  readonly #what: string
  readonly #faults: FaultList

  constructor(what: string, faults: FaultList) {
    this.#what = what
    this.#faults = faults
  }

  add(id: string, item: T, place: Place): void {
    const first = this.#items.get(id)?.place
    if (first) this.#faults.add(place, `${this.#what} "${id}" is already at ${first.file}:${first.line}`)
    else this.#items.set(id, { item, place })
  }

  get(id: string): T | undefined {
    return this.#items.get(id)?.item
  }

  /** Marks an id whose file could not be read. */
  markUnread(id: string): void {
    this.#unread.add(id)
  }

  isUnread(id: string): boolean {
    return this.#unread.has(id)
  }

  has(id: string): boolean {
    return this.#items.has(id) || this.#unread.has(id)
  }

  *[Symbol.iterator](): Generator<[id: string, item: T, place: Place]> {
    for (const [id, { item, place }] of this.#items) yield [id, item, place]
  }

  entries(): [string, T][] {
    return [...this].map(([id, item]) => [id, item])
  }
}
