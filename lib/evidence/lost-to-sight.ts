import { type Counted, DAYS_PER_YEAR } from './interval.ts'

/** A wall that nobody has looked at for so long counts as lost to sight; this project's own convention. */
export const LOST_TO_SIGHT_DAYS = Math.round(5 * DAYS_PER_YEAR)

export interface LostRow extends Counted {
  /** Nobody has looked for long, and no end is known. Only rows with `to: null` can be. */
  readonly lost: boolean
}

/** What the rows would be, had all walls lost to sight changed right after the last visit, and had none. */
export interface Extremes<Row> {
  readonly lost: number
  readonly allChanged: readonly Row[]
  readonly noneChanged: readonly Row[]
}

/**
 * The two ends between which any truth about walls lost to sight must lie: all of them changed on the day
 * after they were last seen, or all of them stood for as long as any wall was watched.
 */
export function boundLost<Row extends LostRow>(rows: readonly Row[]): Extremes<Row> {
  const longest = rows.reduce((most, { from, to }) => Math.max(most, from, to ?? 0), 0)
  const replace = (change: (row: Row) => Row) =>
    rows.map((row) => (row.lost && row.to === null ? change(row) : row))
  return {
    lost: rows.reduce((sum, { lost, to, weight = 1 }) => sum + (lost && to === null ? weight : 0), 0),
    allChanged: replace((row) => ({ ...row, to: row.from + 1 })),
    noneChanged: replace((row) => ({ ...row, from: longest })),
  }
}
