import type { Range } from '#lib/mortar/range.ts'

/** What a joint's drawing is fed with, mm. */
export interface JointNumbers {
  /** How deep the mortar goes in from the face. */
  readonly depthMm: Range
  /** Null where it was not given. */
  readonly jointMm: Range | null
}

/** The drawing's own units: the face stands at `face`, the piece of wall ends at `right`. */
export const JOINT_BOX = { width: 280, face: 64, right: 276, top: 4, unit: 40, below: 30 } as const

const WIDEST = 64
const NARROWEST = 3
/** The wall goes on behind the mortar by this share of its depth. */
const BEHIND = 1.25

/** One scale for depth and width, so that a narrow deep joint looks narrow and deep. */
export function jointGeometry({ depthMm, jointMm }: JointNumbers) {
  const { face, right, top, unit, below } = JOINT_BOX
  const byDepth = (right - face) / (depthMm.high * BEHIND)
  const scale = jointMm === null ? byDepth : Math.min(byDepth, WIDEST / jointMm.typical)
  const high = jointMm === null ? 24 : Math.max(NARROWEST, jointMm.typical * scale)
  const at = (mm: number) => face + mm * scale
  return {
    scale,
    joint: { top: top + unit, bottom: top + unit + high },
    depth: { low: at(depthMm.low), typical: at(depthMm.typical), high: at(depthMm.high) },
    height: top + 2 * unit + high + below,
  }
}
