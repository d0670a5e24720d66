import type { LimeState } from './lime.ts'
import type { Range } from './range.ts'

/** A row of a table or a recipe, reduced to aggregate by volume for one of lime in the state it names. */
export interface RatioRow {
  readonly id: string
  readonly state: LimeState
  readonly aggregatePerLime: Range
}

export interface NearRow {
  readonly id: string
  readonly state: LimeState
  /** How many times leaner (above 1) or richer (below 1) the row is than the sample, typical to typical. */
  readonly leanness: number
  /** The two ranges have some proportion in common. */
  readonly overlaps: boolean
}

/**
 * Rows in order of likeness to a sample: those whose range meets the sample's first, then by how many
 * times leaner or richer they are; equals stay in the order given. Likeness of proportion alone; it says
 * nothing of whether the row was followed.
 */
export function rankNearest(
  ratios: readonly { readonly state: LimeState; readonly byVolume: Range }[],
  rows: readonly RatioRow[],
): NearRow[] {
  const sample = new Map(ratios.map((ratio) => [ratio.state, ratio.byVolume]))
  return rows
    .flatMap((row) => {
      const found = sample.get(row.state)
      const typical = row.aggregatePerLime.typical
      if (found === undefined || !(typical > 0) || !(found.typical > 0)) return []
      const overlaps = row.aggregatePerLime.low <= found.high && found.low <= row.aggregatePerLime.high
      return [{ id: row.id, state: row.state, leanness: typical / found.typical, overlaps }]
    })
    .sort(
      (a, b) =>
        Number(b.overlaps) - Number(a.overlaps) ||
        Math.abs(Math.log(a.leanness)) - Math.abs(Math.log(b.leanness)),
    )
}
