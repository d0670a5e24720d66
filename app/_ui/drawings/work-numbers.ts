import { type Amount, toRange } from '#lib/mortar/amount.ts'
import type { Work } from '#lib/mortar/takeoff.ts'
import type { FaceNumbers } from './face-geometry.ts'
import type { JointNumbers } from './joint-geometry.ts'

/** What of a piece of work can be drawn: its joint, the face of its wall, or neither. */
export interface DrawnWork {
  /** `bed`: the mortar fills the whole bed rather than the front of a joint. */
  readonly joint?: JointNumbers & { readonly bed: boolean }
  readonly face?: FaceNumbers
}

/**
 * The numbers of the drawings of a piece of work. Pointing and packing show how deep they go, bedding the bed
 * between two units; a face is drawn where the units have a size.
 */
export function drawnWork(work: Work): DrawnWork {
  switch (work.kind) {
    case 'pointing':
      return {
        ...joint(work.depthMm, work.jointMm, false),
        ...face(work.unitLengthMm, work.unitHeightMm, work.jointMm),
      }
    case 'pointing-rubble':
    case 'deep-packing':
      return joint(work.depthMm, undefined, false)
    case 'bedding-squared':
    case 'bedding-ashlar':
      return {
        ...joint(work.unitDepthMm, work.jointMm, true),
        ...face(work.unitLengthMm, work.unitHeightMm, work.jointMm),
      }
    case 'bedding-brick': {
      const { brickWidthMm, headerShare = 0 } = work
      return {
        ...joint(brickWidthMm, work.jointMm, true),
        ...face(work.brickLengthMm, work.brickHeightMm, work.jointMm, brickWidthMm, headerShare),
      }
    }
    default:
      return {}
  }
}

function joint(depth: Amount | undefined, width: Amount | undefined, bed: boolean): Pick<DrawnWork, 'joint'> {
  if (depth === undefined) return {}
  return { joint: { depthMm: toRange(depth), jointMm: width === undefined ? null : toRange(width), bed } }
}

function face(
  length: Amount | undefined,
  height: Amount | undefined,
  joint: Amount | undefined,
  head?: Amount,
  headShare: Amount = 0,
): Pick<DrawnWork, 'face'> {
  if (length === undefined || height === undefined || joint === undefined) return {}
  const share = toRange(headShare).typical
  return {
    face: {
      lengthMm: toRange(length).typical,
      heightMm: toRange(height).typical,
      jointMm: toRange(joint).typical,
      ...(head !== undefined && share > 0 && { heads: { widthMm: toRange(head).typical, share } }),
    },
  }
}
