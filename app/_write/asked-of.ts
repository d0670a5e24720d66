import type { Draft } from '#lib/db/drafts.ts'
import type { About } from './about.ts'

/**
 * What a draft like this one would begin from. Its kind stands behind the rest, so that its text can still be shown where
 * what it began from is there no longer.
 */
export function askedOf(
  draft: Pick<Draft, 'kind' | 'slug' | 'basedOn' | 'adaptedFrom' | 'typed'>,
): About['asked'] {
  const { kind, slug, basedOn, adaptedFrom, typed } = draft
  if (slug !== null && basedOn !== null) return { from: `${slug}@${basedOn}`, kind }
  if (adaptedFrom !== null) return { adapt: adaptedFrom, kind }
  return kind === 'visit' && typed.case ? { of: typed.case, kind } : { kind }
}
