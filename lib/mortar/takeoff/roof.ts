import { defineWork, face, lengthMm, refuseOpenings, share } from './spec.ts'

/** Bedding along a ridge, hip or verge. */
export const roofBedding = defineWork({
  fields: {
    lengthM: { symbol: 'l', unit: 'm', limits: { above: 0, max: 1e5, unit: 'm' } },
    widthMm: lengthMm('b', 1000, [60, 80, 120]),
    heightMm: lengthMm('h', 1000, [40, 60, 90]),
    fill: share('k', [0.5, 0.65, 0.8], { low: 0.5, typical: 0.65, high: 0.8 }),
  },
  formula: 'l · b · h · k / 1000',
  netL: (d) => (d.lengthM * d.widthMm * d.heightMm * d.fill) / 1000,
})

/** Torching: a three-cornered fillet under the head of every course of slates or tiles. */
export const roofTorching = defineWork({
  fields: {
    ...face,
    gaugeMm: lengthMm('g', 1000, [100, 150, 250]),
    widthMm: lengthMm('b', 300, [20, 30, 40]),
    heightMm: lengthMm('h', 300, [20, 25, 35]),
  },
  formula: '(A − A_o) · b · h / (2 · g)',
  netL: (d) => ((d.areaM2 - d.openingsM2) * d.widthMm * d.heightMm) / (2 * d.gaugeMm),
  refuse: refuseOpenings,
})
