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
 * Drafts that a browser holds text of, the last typed first, of this reader alone; and those that stood in the list before,
 * are held no longer and have gone up. What was thrown away, or taken back into its form, is left out.
 *
 * @param found of each draft what windows left, the last typed last
 * @param before all lines that stood in the list
 * @param sent drafts whose text the site has said that it has
 */
export function linesOf(
  found: readonly { readonly draft: string; readonly texts: readonly KeptText[] }[],
  reader: string,
  before: readonly BegunLine[],
  sent: ReadonlySet<string>,
): BegunLine[] {
  const lines = found.flatMap(({ draft, texts }) => {
    const last = texts.findLast(({ about }) => about?.by === reader)
    if (last?.about === undefined) return []
    const { title, page, state } = last.about
    return [{ draft, title: titleTyped(texts) ?? title, page, at: last.at, state }]
  })
  const held = new Set(found.map(({ draft }) => draft))
  const up = before
    .filter(({ draft }) => sent.has(draft) && !held.has(draft))
    .map((line): BegunLine => ({ ...line, state: 'up' }))
  return [...lines, ...up].sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))
}

/** The title as it was typed last; none of a visit, which has its case's. */
const titleTyped = (texts: readonly KeptText[]): string | undefined =>
  texts
    .map(({ changes }) => changes.title?.is.trim())
    .findLast((title) => title !== undefined && title !== '')
