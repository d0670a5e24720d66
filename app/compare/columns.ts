import { scaleLog } from 'd3-scale'
import type { TableRow } from '#lib/content/types.ts'
import type { Range } from '#lib/mortar/range.ts'

/** A row with its ratio on the chosen lime state. */
export interface Compared {
  readonly row: TableRow
  readonly ratio: Range
}

/** Periods along the foot of the chart, by the first year of each; years between 500 and 1300 hold no row. */
const BANDS = [
  { id: 'ancient', from: -9999 },
  { id: '1300', from: 501 },
  { id: '1600', from: 1600 },
  { id: '1750', from: 1750 },
  { id: '1800', from: 1800 },
  { id: '1850', from: 1850 },
  { id: '1900', from: 1900 },
  { id: '1930', from: 1930 },
] as const
export type BandId = (typeof BANDS)[number]['id']

export const CHART = { width: 1120, left: 62, right: 1112, top: 10, foot: 36 } as const
/** Room that a period's label needs; what is left over goes to the rows. */
const LEAST_BAND = 50
const WIDEST_COLUMN = 24

export interface PlacedBand {
  readonly id: BandId
  readonly left: number
  readonly right: number
  /** Half the width of a bar. */
  readonly half: number
  /** Years without a row stand between this period and the one before. */
  readonly isAfterGap: boolean
  readonly columns: readonly (Compared & { readonly x: number })[]
}

const middle = ({ row }: Compared) => (row.from + row.to) / 2

/** Rows in order of date: by the middle of their years, then by their first, then by address. */
export const inOrder = (compared: readonly Compared[]): Compared[] =>
  [...compared].sort(
    (a, b) => middle(a) - middle(b) || a.row.from - b.row.from || a.row.ref.localeCompare(b.row.ref, 'en'),
  )

/** Gives every row a column of its own in its period. */
export function placeBands(compared: readonly Compared[]): PlacedBand[] {
  const filled = BANDS.map(({ id, from }, place) => ({
    ...{ id, place },
    rows: inOrder(compared).filter((one) => {
      const next = BANDS[place + 1]
      return middle(one) >= from && (next === undefined || middle(one) < next.from)
    }),
  })).filter(({ rows }) => rows.length > 0)
  const room = CHART.right - CHART.left - filled.length * LEAST_BAND
  const column = Math.min(WIDEST_COLUMN, room / Math.max(1, compared.length))
  let left: number = CHART.left
  return filled.map(({ id, place, rows }, index) => {
    const width = LEAST_BAND + rows.length * column
    const start = left
    left += width
    const before = filled[index - 1]
    return {
      ...{ id, left: start, right: left, half: Math.min(3.2, Math.max(1.6, column * 0.3)) },
      isAfterGap: before !== undefined && (id === '1300' || before.place < place - 1),
      columns: rows.map((one, k) => ({ ...one, x: start + ((k + 0.5) * width) / rows.length })),
    }
  })
}

/** The scale of the side, wide enough for all these ratios, and the parts that get a line across. */
export function ratioScale(compared: readonly Compared[], bottom: number) {
  const low = Math.min(...compared.map(({ ratio }) => ratio.low))
  const high = Math.max(...compared.map(({ ratio }) => ratio.high))
  const y = scaleLog([low * 0.92, high * 1.08], [bottom, CHART.top])
  const ticks = [0.05, 0.1, 0.2, 0.5, 1, 2, 3, 5, 10, 20, 50].filter(
    (tick) => tick > low * 0.92 && tick < high * 1.08,
  )
  return { y, ticks }
}
