import type { About } from './about.ts'
import type { KeptText } from './kept-texts.ts'

/** A draft in the list of what was written on this device; `up` once the site has all of it. */
export interface BegunLine extends Pick<About, 'title' | 'page'> {
  readonly draft: string
  /** When the last of it was typed. */
  readonly at: string
  readonly state: About['state'] | 'up'
}

/**
 * Drafts that a browser holds text of, the last typed first, of this reader alone; and those that stood in the list before
 * and are held no longer, as gone up.
 *
 * @param found of each draft what windows left, the last typed last
 */
export function linesOf(
  found: readonly { readonly draft: string; readonly texts: readonly KeptText[] }[],
  reader: string,
  before: readonly BegunLine[],
): BegunLine[] {
  const lines = found.flatMap(({ draft, texts }) => {
    const last = texts.findLast(({ about }) => about?.by === reader)
    if (last?.about === undefined) return []
    const { title, page, state } = last.about
    return [{ draft, title: titleTyped(texts) ?? title, page, at: last.at, state }]
  })
  const held = new Set(found.map(({ draft }) => draft))
  const up = before
    .filter(({ draft }) => !held.has(draft))
    .map((line): BegunLine => ({ ...line, state: 'up' }))
  return [...lines, ...up].sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))
}

/** The title as it was typed last; none of a visit, which has its case's. */
const titleTyped = (texts: readonly KeptText[]): string | undefined =>
  texts
    .map(({ changes }) => changes.title?.is.trim())
    .findLast((title) => title !== undefined && title !== '')
