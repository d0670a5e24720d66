import type { Range } from '../range.ts'
import { defineWork, face, lengthMm, refuseOpenings, share } from './spec.ts'

/** Share of a face that shows headers, for the bonds that walls are built in. */
export const BOND_HEADERS = {
  stretcher: 0,
  'english-garden-wall': 1 / 4,
  flemish: 1 / 3,
  english: 1 / 2,
  header: 1,
} as const

const none: Range = { low: 0, typical: 0, high: 0 }

interface Brickwork {
  readonly brickLengthMm: number
  readonly brickHeightMm: number
  readonly brickWidthMm: number
  readonly jointMm: number
  readonly halfBricks: number
  readonly headerShare: number
}

/** Bricks per m² of wall: a header takes the depth of two stretchers and half the face. */
function bricksPerM2(d: Brickwork): number {
  const course = d.brickHeightMm + d.jointMm
  const stretchers = (1 - d.headerShare) / ((d.brickLengthMm + d.jointMm) * course)
  const headers = d.headerShare / (2 * (d.brickWidthMm + d.jointMm) * course)
  return 1e6 * d.halfBricks * (stretchers + headers)
}

/** Brickwork of any thickness and bond, all joints full: the wall less its bricks. */
export const beddingBrick = defineWork({
  fields: {
    ...face,
    brickLengthMm: lengthMm('L', 1000, [210, 215, 240]),
    brickHeightMm: lengthMm('H', 500, [50, 65, 73]),
    brickWidthMm: lengthMm('W', 500, [100, 102.5, 115]),
    jointMm: lengthMm('j', 100, [8, 10, 14]),
    halfBricks: {
      symbol: 'k',
      unit: '1',
      limits: { min: 1, max: 12 },
      usual: { low: 2, typical: 2, high: 2, basis: 'practice' },
      whole: true,
    },
    headerShare: share('φ', [0, 1 / 3, 1 / 2], none),
    /** Share of each brick that is frog or holes filled with mortar. */
    filledShare: share('e', [0, 0, 0.2], none),
  },
  formula:
    '(A − A_o) · (k · W + (k − 1) · j − k · ((1 − φ) / ((L + j) · (H + j)) + φ / (2 · (W + j) · (H + j))) · L · H · W · (1 − e))',
  netL(d) {
    const thicknessMm = d.halfBricks * d.brickWidthMm + (d.halfBricks - 1) * d.jointMm
    const brickL = (d.brickLengthMm * d.brickHeightMm * d.brickWidthMm * (1 - d.filledShare)) / 1e6
    return (d.areaM2 - d.openingsM2) * Math.max(0, thicknessMm - bricksPerM2(d) * brickL)
  },
  unitCount: (d) => (d.areaM2 - d.openingsM2) * bricksPerM2(d),
  refuse(d, check, prefix) {
    refuseOpenings(d, check, prefix)
    if (d.halfBricks.low < 2 && d.headerShare.high > 0)
      check.refuse({ field: `${prefix}headerShare`, code: 'too-large', value: d.headerShare.high, limit: 0 })
  },
})
