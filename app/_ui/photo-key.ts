import { v7 } from 'uuid'

const PREFIX = 'photo-upload '

/** What tells one file of a device from another, as far as a browser says. */
interface NamedFile {
  readonly name: string
  readonly size: number
  readonly lastModified: number
}

/**
 * The key of a file's upload, kept in this browser: after a closed page the same file, chosen again, goes on where it
 * broke off.
 */
export function keyOfFile({ name, size, lastModified }: NamedFile): { key: string; forget: () => void } {
  const place = `${PREFIX}${name} ${size} ${lastModified}`
  const forget = () => tryStorage((storage) => storage.removeItem(place))
  const kept = tryStorage((storage) => storage.getItem(place))
  if (kept) return { key: kept, forget }
  const key = v7()
  tryStorage((storage) => storage.setItem(place, key))
  return { key, forget }
}

/** Browsers may refuse their storage; then nothing is kept, and sending works all the same. */
function tryStorage<T>(use: (storage: Storage) => T): T | null {
  try {
    return use(window.localStorage)
  } catch {
    return null
  }
}
