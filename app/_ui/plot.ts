import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'

/** A drawing's own units: its size and what lies about its axes. */
export interface PlotBox {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Curves are named beside their ends. */
export const PLOT = {
  width: 680,
  height: 340,
  left: 68,
  right: 132,
  top: 14,
  bottom: 46,
} as const satisfies PlotBox
/** For narrow screens: curves are named in a key beneath. */
export const NARROW_PLOT = {
  width: 300,
  height: 280,
  left: 64,
  right: 12,
  top: 14,
  bottom: 46,
} as const satisfies PlotBox

/** The groups of one plot, told apart by dash, hatching and mark beside their colour. */
export const MOST_GROUPS = 3

/** A share that may lie anywhere between two bounds on one day, within a band. */
export interface PlotPoint {
  readonly years: number
  readonly bandLow: number
  readonly bandHigh: number
}

/** A drop of the curve somewhere between two times; null: not within what was watched. */
export interface PlotDrop {
  readonly fromYears: number
  readonly toYears: number | null
  readonly mass: number
}

export interface PlotCurve {
  readonly key: string
  readonly label: string
  readonly points: readonly PlotPoint[]
  readonly drops: readonly PlotDrop[]
  /** Nothing is known beyond. */
  readonly endYears: number
}

export function plotScales(endYears: number, box: PlotBox = PLOT) {
  const x = scaleLinear([0, Math.max(1, endYears)], [box.left, box.width - box.right])
  const y = scaleLinear([0, 1], [box.height - box.bottom, box.top])
  return { x, y }
}

type Scales = ReturnType<typeof plotScales>

/** The band as an outline, from point to point. */
export const bandPath = ({ points }: PlotCurve, { x, y }: Scales): string =>
  area<PlotPoint>()
    .x(({ years }) => x(years))
    .y0(({ bandLow }) => y(bandLow))
    .y1(({ bandHigh }) => y(bandHigh))([...points]) ?? ''

type Spot = readonly [years: number, share: number]

/**
 * The curve in two paths: `level` where it is known to run level, `drop` from corner to corner of each stretch in
 * which it falls nobody saw when.
 */
export function curvePaths({ drops, endYears }: PlotCurve, { x, y }: Scales) {
  const level: (Spot | null)[] = []
  const drop: (Spot | null)[] = []
  let [years, share] = [0, 1]
  for (const { fromYears, toYears, mass } of drops) {
    if (fromYears > years) level.push([years, share], [fromYears, share], null)
    if (toYears === null) {
      years = Math.max(years, fromYears)
      break
    }
    drop.push([fromYears, share], [toYears, share - mass], null)
    years = toYears
    share -= mass
  }
  const beyond = drops.some(({ toYears }) => toYears === null)
  if (!beyond && years < endYears) level.push([years, share], [endYears, share])
  const draw = line<Spot | null>()
    .defined((spot) => spot !== null)
    .x((spot) => x(spot?.[0] ?? 0))
    .y((spot) => y(spot?.[1] ?? 0))
  return { level: draw(level) ?? '', drop: draw(drop) ?? '', end: share }
}

/** Heights for labels that want to stand at `wanted`, none closer to another than `gap`, none below `most`. */
export function apart(wanted: readonly number[], gap: number, most: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0))
  const set = [...wanted]
  let last = Number.NEGATIVE_INFINITY
  for (const index of order) {
    last = Math.max(wanted[index] ?? 0, last + gap)
    set[index] = last
  }
  let next = most + gap
  for (const index of order.toReversed()) {
    next = Math.min(set[index] ?? 0, next - gap)
    set[index] = next
  }
  return set
}
