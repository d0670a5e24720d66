/** One ingredient of a load, by gauge boxes or by weight. */
export interface BatchPart {
  readonly index: number
  readonly material: string
  /** Boxes, whole and half; null for what is weighed. */
  readonly boxes: number | null
  readonly litres: number | null
  readonly kg: number
}

/** The load to repeat. */
export interface Batch {
  readonly gaugeBoxL: number
  readonly parts: readonly BatchPart[]
  /** Loads of this size for the whole job; the last one is short. */
  readonly loads: number
  /** Litres of mortar from one load. */
  readonly mortarL: number
  /** The most by which rounding to half boxes moves an ingredient, % of what it should be. */
  readonly roundingPercent: number
}

/** What the whole job takes of one ingredient, as it is measured on site. */
export interface BatchNeed {
  readonly index: number
  readonly material: string
  /** Null for what is weighed. */
  readonly litres: number | null
  readonly kg: number
}

/** Rounding to half boxes may move no ingredient by more than this share, if a load can be found. */
const ROUNDING_BOUND = 0.05
/** Loads are looked for up to this many boxes of the scarcest ingredient. */
const MOST_BOXES = 40

/**
 * The largest load that fits the mixer and keeps the proportions in whole and half gauge boxes.
 *
 * Where no load stays within the bound, the one that strays least is taken and says by how much.
 *
 * @param mixerL loose volume that the mixer takes
 * @param mortarL mortar that all of it makes
 * @returns null when not even half a box of the scarcest ingredient fits
 */
export function planBatch(
  needs: readonly BatchNeed[],
  gaugeBoxL: number,
  mixerL: number,
  mortarL: number,
): Batch | null {
  const boxed = needs.flatMap(({ litres }) => (litres === null || litres <= 0 ? [] : [litres]))
  const scarcest = Math.min(...boxed)
  if (boxed.length === 0) return null
  let best: { halves: number; strays: number } | null = null
  for (let halves = MOST_BOXES * 2; halves >= 1; halves--) {
    const scale = (halves / 2) * (gaugeBoxL / scarcest)
    const rounded = boxed.map((litres) => roundToHalf((litres * scale) / gaugeBoxL))
    if (rounded.reduce((sum, boxes) => sum + boxes, 0) * gaugeBoxL > mixerL) continue
    const strays = Math.max(
      ...boxed.map((litres, k) => Math.abs((rounded[k] as number) / ((litres * scale) / gaugeBoxL) - 1)),
    )
    if (best === null || strays < best.strays) best = { halves, strays }
    if (best.strays <= ROUNDING_BOUND) break
  }
  if (best === null) return null
  const scale = (best.halves / 2) * (gaugeBoxL / scarcest)
  return {
    gaugeBoxL,
    parts: needs.map(({ index, material, litres, kg }) => {
      const boxes = litres === null || litres <= 0 ? null : roundToHalf((litres * scale) / gaugeBoxL)
      return { index, material, boxes, litres: boxes === null ? null : boxes * gaugeBoxL, kg: kg * scale }
    }),
    loads: 1 / scale,
    mortarL: mortarL * scale,
    roundingPercent: 100 * best.strays,
  }
}

const roundToHalf = (boxes: number): number => Math.max(0.5, Math.round(2 * boxes) / 2)
