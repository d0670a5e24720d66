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
}

/** What figures follow from beside the inputs, and their digest. */
export interface FigureVersions {
  readonly edition: string
  readonly sums: number
  readonly digest: string
}

/** Compares the versions in the address (`ed`, `sums`, `is`) with today's; null when nothing differs. */
export function changesSince(typed: Typed, now: FigureVersions): Changes | null {
  const edition = changeOf(typed.ed, now.edition)
  const sums = changeOf(typed.sums, String(now.sums))
  const differs = typed.is !== undefined && typed.is !== now.digest
  if (!edition && !sums && !differs) return null
  return { edition, sums, figures: typed.is === undefined ? 'unknown' : differs ? 'differs' : 'same' }
}

const changeOf = (before: string | undefined, now: string): Change | null =>
  before === undefined || before === now ? null : { before, now }
