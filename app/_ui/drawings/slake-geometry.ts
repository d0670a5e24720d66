import { ticks } from 'd3-array'
import { BOILING_C } from '#lib/mortar/constants.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { SlakingPoint } from '#lib/mortar/slaking-course.ts'
import { convertRange, shownUnit } from '#lib/mortar/units.ts'
import type { System } from './lengths.ts'

/** The drawing's own units. */
export const SLAKE_BOX = { width: 280, height: 290, left: 40, right: 270 } as const
const PANELS = { temperature: { top: 26, bottom: 126 }, water: { top: 166, bottom: 246 } } as const

/** One of the two curves, with its axis. */
export interface SlakePanel {
  readonly unit: string
  readonly top: number
  readonly bottom: number
  readonly marks: readonly { readonly value: number; readonly y: number }[]
  /** The typical course, and the outline of its range. */
  readonly line: string
  readonly band: string
}

const x = (share: number) => SLAKE_BOX.left + share * (SLAKE_BOX.right - SLAKE_BOX.left)

/** Average temperature and free water by the share of the lime that has slaked, in the reader's units. */
export function slakeGeometry(points: readonly SlakingPoint[], system: System) {
  const warm = panelOf(points, ({ averageC }) => averageC, 'C', system, PANELS.temperature, BOILING_C * 1.1)
  const boiling = convertRange(
    { low: BOILING_C, typical: BOILING_C, high: BOILING_C },
    'C',
    shownUnit('C', system),
  ).typical
  return {
    temperature: warm.panel,
    water: panelOf(points, ({ freeKg }) => freeKg, 'kg', system, PANELS.water, 0).panel,
    boilingY: warm.y(boiling),
    marks: [0, 50, 100].map((share) => ({ share, x: x(share / 100) })),
  }
}

function panelOf(
  points: readonly SlakingPoint[],
  of: (point: SlakingPoint) => Range,
  metric: string,
  system: System,
  { top, bottom }: { top: number; bottom: number },
  least: number,
) {
  const unit = shownUnit(metric, system)
  const ranges = points.map((point) => convertRange(of(point), metric, unit))
  const floor = Math.min(0, ...ranges.map(({ low }) => low))
  const reach = Math.max(
    convertRange({ low: least, typical: least, high: least }, metric, unit).high,
    ...ranges.map(({ high }) => high),
  )
  const y = (value: number) => round(bottom - ((value - floor) / (reach - floor || 1)) * (bottom - top))
  const path = (end: keyof Range) =>
    ranges.map((range, at) => `${round(x(points[at]?.share ?? 0))} ${y(range[end])}`)
  return {
    y,
    panel: {
      unit,
      top,
      bottom,
      marks: ticks(floor, reach, 3).map((value) => ({ value, y: y(value) })),
      line: `M${path('typical').join('L')}`,
      band: `M${[...path('high'), ...path('low').reverse()].join('L')}Z`,
    } satisfies SlakePanel,
  }
}

const round = (value: number) => Number(value.toFixed(1))
