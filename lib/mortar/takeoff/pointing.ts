import { defineWork, face, jointShareOf, lengthMm, refuseOpenings, share } from './spec.ts'

const depthMm = lengthMm('d', 1000, [20, 25, 40])

/** Joints between units of one size, raked to a depth that varies. */
export const pointing = defineWork({
  fields: {
    ...face,
    unitLengthMm: lengthMm('L', 5000),
    unitHeightMm: lengthMm('H', 5000),
    jointMm: lengthMm('j', 200, [8, 10, 14]),
    depthMm,
  },
  formula: '(A − A_o) · (1 − L · H / ((L + j) · (H + j))) · d',
  netL: (d) =>
    (d.areaM2 - d.openingsM2) * jointShareOf(d.unitLengthMm, d.unitHeightMm, d.jointMm) * d.depthMm,
  refuse: refuseOpenings,
})

/** Joints of a rubble face, by the share of the face that is joint. */
export const pointingRubble = defineWork({
  fields: { ...face, jointShare: share('f', [0.15, 0.2, 0.3]), depthMm },
  formula: '(A − A_o) · f · d',
  netL: (d) => (d.areaM2 - d.openingsM2) * d.jointShare * d.depthMm,
  refuse: refuseOpenings,
})
