import { join } from 'node:path'
import { ContentError } from './fault.ts'
import { loadContent } from './load.ts'
import type { Content } from './types.ts'

let loaded: Content | undefined

/**
 * The site's content, read once and frozen; the program runs from its own folder.
 *
 * @throws ContentError with every fault in content/
 */
export function content(): Content {
  if (loaded) return loaded
  const outcome = loadContent(join(process.cwd(), 'content'))
  if (!outcome.ok) throw new ContentError(outcome.faults)
  loaded = outcome.content
  return loaded
}

export { ContentError, printFault } from './fault.ts'
export { loadContent } from './load.ts'
export type * from './types.ts'
