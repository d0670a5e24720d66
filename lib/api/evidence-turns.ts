import { setImmediate } from 'node:timers/promises'
import type { Steps } from '#lib/evidence/index.ts'

/** After so long others get their turn. */
const BREATH_MS = 8

/**
 * The work that is going on, or was last: one at a time, since each would hold up the others' answers. Next loads
 * modules again for pages and routes; the global keeps the one queue.
 */
const going = globalThis as { putlogEstimating?: Promise<unknown> }

/** Takes long work on, after what was asked for before, with pauses in which other requests are answered. */
export function inTurns<T>(steps: Steps<T>): Promise<T> {
  const own = (going.putlogEstimating ?? Promise.resolve()).then(() => takeOn(steps))
  going.putlogEstimating = own.catch(() => {})
  return own
}

async function takeOn<T>(steps: Steps<T>): Promise<T> {
  let begun = performance.now()
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
    if (performance.now() - begun < BREATH_MS) continue
    await setImmediate()
    begun = performance.now()
  }
}
