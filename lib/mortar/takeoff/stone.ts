import type { Range } from '../range.ts'
import { defineWork, face, jointShareOf, lengthMm, refuseOpenings, share } from './spec.ts'

const all: Range = { low: 1, typical: 1, high: 1 }
const hearting: Range = { low: 0.3, typical: 0.33, high: 0.4 }

const unit = {
  unitLengthMm: lengthMm('L', 5000),
  unitHeightMm: lengthMm('H', 5000),
  unitDepthMm: lengthMm('D', 5000),
}

/** Ashlar: blocks as deep as the leaf, their beds full or mortared in part. */
export const beddingAshlar = defineWork({
  fields: {
    ...face,
    ...unit,
    jointMm: lengthMm('j', 100, [3, 5, 8]),
    beddedShare: share('k', [0.8, 1, 1], all),
  },
  formula: '(A − A_o) · (1 − L · H / ((L + j) · (H + j))) · D · k',
  netL: (d) =>
    (d.areaM2 - d.openingsM2) *
    jointShareOf(d.unitLengthMm, d.unitHeightMm, d.jointMm) *
    d.unitDepthMm *
    d.beddedShare,
  refuse: refuseOpenings,
})

/** Squared rubble: a face of squared stones and a hearting of rubble behind it. */
export const beddingSquared = defineWork({
  fields: {
    ...face,
    thicknessMm: lengthMm('T', 5000, [450, 500, 600]),
    ...unit,
    jointMm: lengthMm('j', 200, [10, 15, 25]),
    heartingShare: share('s', [0.3, 0.33, 0.4], hearting),
  },
  formula: '(A − A_o) · ((1 − L · H / ((L + j) · (H + j))) · D + s · (T − D))',
  netL: (d) =>
    (d.areaM2 - d.openingsM2) *
    (jointShareOf(d.unitLengthMm, d.unitHeightMm, d.jointMm) * d.unitDepthMm +
      d.heartingShare * Math.max(0, d.thicknessMm - d.unitDepthMm)),
  refuse(d, check, prefix) {
    refuseOpenings(d, check, prefix)
    if (d.unitDepthMm.high > d.thicknessMm.low)
      check.refuse({
        field: `${prefix}unitDepthMm`,
        code: 'too-large',
        value: d.unitDepthMm.high,
        limit: d.thicknessMm.low,
        unit: 'mm',
      })
  },
})

/** Random or coursed rubble, by the share of the wall that is mortar. */
export const beddingRubble = defineWork({
  fields: {
    ...face,
    thicknessMm: lengthMm('T', 5000, [450, 500, 600]),
    mortarShare: {
      ...share('s', [0.3, 0.33, 0.4]),
      usual: {
        low: 0.3,
        typical: 0.33,
        high: 0.4,
        basis: 'read',
        source: 'andalucia-cost-base-2024, item 06CMO80010',
      },
    },
  },
  formula: '(A − A_o) · T · s',
  netL: (d) => (d.areaM2 - d.openingsM2) * d.thicknessMm * d.mortarShare,
  refuse: refuseOpenings,
})
