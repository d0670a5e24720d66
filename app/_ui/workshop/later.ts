import { use, useEffect, useState } from 'react'
import type { Typed } from '../../_http/form.ts'
import type { Later } from './calculation.ts'

const NEVER = new Promise<never>(() => {})

/**
 * As a page is taken over by its script: what the server drew stays until the sums for it are there. Where they cannot
 * be had it stays for good, and works as without a script. There is no boundary round what waits: React sends a large one
 * hidden, to be put in place by a script, and without one nobody would see it.
 */
export function waitFor(later: Later | undefined, typed: Typed): void {
  const coming = later?.isNeeded(typed) ? later.fetch() : undefined
  if (coming && !use(coming)) use(NEVER)
}

/** Sums that are on their way, or could not be had. */
export type Fetching = 'coming' | 'missing'

/**
 * Works out what is typed once the sums for it are there.
 *
 * @returns how it stands with them, undefined while none are waited for; and what follows the form, given how to read it
 */
export function useLater(
  later: Later | undefined,
  work: (typed: Typed) => void,
): readonly [Fetching | undefined, (read: () => Typed) => void] {
  const [fetching, setFetching] = useState<Fetching>()
  useEffect(() => keepWithPage(later), [later])
  const follow = (read: () => Typed): void => {
    const now = read()
    const coming = later?.isNeeded(now) && !later.areHere() ? later.fetch() : undefined
    setFetching(coming && 'coming')
    if (!coming) work(now)
    // Somebody may have typed on meanwhile.
    else void coming.then((came) => (came ? follow(read) : setFetching('missing')))
  }
  return [fetching, follow]
}

/** Fetches them for the worker too, which keeps files as they are fetched: with no signal they could not be had. */
function keepWithPage(later: Later | undefined): () => void {
  const container = navigator.serviceWorker
  if (!later || !container) return () => {}
  const keep = () => void (container.controller && later.fetch())
  void container.ready.then(keep)
  container.addEventListener('controllerchange', keep)
  return () => container.removeEventListener('controllerchange', keep)
}
