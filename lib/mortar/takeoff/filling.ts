import { defineWork, face, lengthMm, refuseOpenings, share } from './spec.ts'

const fill = share('k', [0.8, 0.9, 1], { low: 0.8, typical: 0.9, high: 1 })

/** Deep packing of open joints and pockets, short of the depth that is kept for pointing. */
export const deepPacking = defineWork({
  fields: {
    ...face,
    jointShare: share('f', [0.15, 0.2, 0.3]),
    depthMm: lengthMm('d', 2000, [80, 120, 200]),
    pointingDepthMm: {
      ...lengthMm('d_p', 1000),
      limits: { min: 0, max: 1000, unit: 'mm' },
      fallback: { low: 0, typical: 0, high: 0 },
    },
    fill,
  },
  formula: '(A − A_o) · f · (d − d_p) · k',
  netL: (d) => (d.areaM2 - d.openingsM2) * d.jointShare * (d.depthMm - d.pointingDepthMm) * d.fill,
  refuse(d, check, prefix) {
    refuseOpenings(d, check, prefix)
    if (d.pointingDepthMm.high >= d.depthMm.low)
      check.refuse({
        field: `${prefix}pointingDepthMm`,
        code: 'too-large',
        value: d.pointingDepthMm.high,
        limit: d.depthMm.low,
        exclusive: true,
        unit: 'mm',
      })
  },
})

/** Grout for the voids of a core. */
export const grout = defineWork({
  fields: {
    masonryM3: { symbol: 'V_m', unit: 'm3', limits: { above: 0, max: 1e6, unit: 'm3' } },
    voidShare: share('v', [0.02, 0.05, 0.12]),
    fill,
  },
  formula: '1000 · V_m · v · k',
  netL: (d) => 1000 * d.masonryM3 * d.voidShare * d.fill,
})

/** Panels between timbers: earth or mortar round staves and wattle. */
export const infill = defineWork({
  fields: {
    ...face,
    thicknessMm: lengthMm('t', 1000, [100, 120, 150]),
    stavesShare: share('s', [0.08, 0.12, 0.2], { low: 0, typical: 0, high: 0 }),
  },
  formula: '(A − A_o) · t · (1 − s)',
  netL: (d) => (d.areaM2 - d.openingsM2) * d.thicknessMm * (1 - d.stavesShare),
  refuse: refuseOpenings,
})
