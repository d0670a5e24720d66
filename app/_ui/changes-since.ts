import type { Typed } from '../_http/form.ts'

/** One version in the address and today's. */
interface Change {
  readonly before: string
  readonly now: string
}

/** What became different since the address was made, and whether any printed figure did. */
export interface Changes {
  readonly edition: Change | null
  readonly sums: Change | null
  readonly figures: 'same' | 'differs' | 'unknown'
  /** The address names a digest of fewer figures than print today, so that the others could not be compared. */
  readonly partly: boolean
}

/** What figures follow from beside the inputs, and their digest. */
export interface FigureVersions {
  readonly edition: string
  readonly sums: number
  readonly digest: string
  /** Digests of fewer figures, as addresses may name them that were made before others were counted in. */
  readonly shorter?: readonly string[]
}

/** Compares the versions in the address (`ed`, `sums`, `is`) with today's; null when nothing differs. */
export function changesSince(typed: Typed, now: FigureVersions): Changes | null {
  const edition = changeOf(typed.ed, now.edition)
  const sums = changeOf(typed.sums, String(now.sums))
  const partly = typed.is !== undefined && typed.is !== now.digest && now.shorter?.includes(typed.is) === true
  const differs = typed.is !== undefined && typed.is !== now.digest && !partly
  if (!edition && !sums && !differs) return null
  return { edition, sums, figures: typed.is === undefined ? 'unknown' : differs ? 'differs' : 'same', partly }
}

const changeOf = (before: string | undefined, now: string): Change | null =>
  before === undefined || before === now ? null : { before, now }
