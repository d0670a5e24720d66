import { changesSince, latestChange } from '#lib/db/search/read.ts'

/** Something read from the record into memory, as it was after a change of that number or later. */
export interface Known {
  readonly change: number
  readAll(): Promise<void>
  /** Takes over what became of these documents, of which `latest` is the last change. */
  takeOver(changed: readonly number[], latest: number): Promise<void>
}

interface Kept {
  readonly known: Known
  /** Reading, or the last catching up: one at a time, since two questions may find the same change. */
  turn: Promise<void>
}

/** Next loads modules again for pages and routes; the global keeps the one copy of each. */
const store = globalThis as { putlogKept?: Map<string, Kept> }
const all = () => {
  store.putlogKept ??= new Map()
  return store.putlogKept
}

/**
 * Keeps one copy of something for the whole process: read at the first question, then kept current.
 *
 * @param name under which it is kept
 */
export function keepOne<T extends Known>(name: string, make: () => T) {
  /** Lets go of what was read; the next question reads it again. */
  const forget = (): void => {
    all().delete(name)
  }
  const begin = (): Kept => {
    const known = make()
    const turn = known.readAll().catch((error: unknown) => {
      forget()
      throw error
    })
    const kept = { known, turn }
    all().set(name, kept)
    return kept
  }
  /**
   * @param change number of the change that must be in it, where one is known
   * @param wait how to wait for what is being read
   */
  const current = async (change?: number, wait = (reading: Promise<void>) => reading): Promise<T> => {
    const { known, turn } = all().get(name) ?? begin()
    await wait(turn)
    if (change !== undefined && change !== known.change) {
      const kept = all().get(name)
      const next = (kept?.turn ?? turn).then(() => catchUp(known))
      if (kept) kept.turn = next.catch(forget)
      await wait(next)
    }
    return known as T
  }
  return { current, forget }
}

async function catchUp(known: Known): Promise<void> {
  const latest = await latestChange()
  if (latest === known.change) return
  // A lower number means that another database answers, such as one brought back from a backup.
  const changed = latest < known.change ? 'all' : await changesSince(known.change)
  return changed === 'all' ? known.readAll() : known.takeOver(changed, latest)
}
