import { setImmediate } from 'node:timers/promises'

/** So many documents are looked at in about two milliseconds. */
const BREATH = 200_000

/** Lets other requests have their turn after much work, so that none waits for the whole of another's. Was it enough for that? */
export async function pause(worked: number): Promise<boolean> {
  if (worked < BREATH) return false
  await setImmediate()
  return true
}
