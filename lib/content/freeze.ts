/** A map that refuses to be changed: Object.freeze leaves a Map's entries open. */
export class FrozenMap<K, V> extends Map<K, V> {
  readonly #closed: boolean

  constructor(entries: Iterable<readonly [K, V]>) {
    super(entries)
    this.#closed = true
  }

  override set(key: K, value: V): this {
    // The constructor of Map fills itself through set, before #closed exists.
    if (#closed in this && this.#closed) throw new TypeError('content is read-only')
    return super.set(key, value)
  }

  override delete(): boolean {
    throw new TypeError('content is read-only')
  }

  override clear(): void {
    throw new TypeError('content is read-only')
  }
}

/** Freezes a value and all that it holds. Maps must already be {@link FrozenMap}s. */
export function deepFreeze<T>(value: T): T {
  if (value instanceof Map) {
    for (const held of value.values()) deepFreeze(held)
  } else if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const held of Object.values(value)) deepFreeze(held)
  }
  return value
}
