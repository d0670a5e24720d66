import { defineWork, extraMm, face, lengthMm, refuseOpenings } from './spec.ts'

const coats = {
  coat1Mm: lengthMm('t_1', 200, [9, 10, 12]),
  coat2Mm: extraMm('t_2', 200),
  coat3Mm: extraMm('t_3', 200),
  /** Average depth that trues up hollows behind the first coat. */
  unevennessMm: extraMm('u', 300),
}

/** Coats of plaster or render on a solid background, true or uneven. */
export const coatsOnSolid = defineWork({
  fields: { ...face, ...coats },
  formula: '(A − A_o) · (t_1 + t_2 + t_3 + u)',
  netL: (d) => (d.areaM2 - d.openingsM2) * (d.coat1Mm + d.coat2Mm + d.coat3Mm + d.unevennessMm),
  refuse: refuseOpenings,
})

/** Coats on laths: what is pushed between them and curls behind is mortar too. */
export const coatsOnLaths = defineWork({
  fields: {
    ...face,
    coat1Mm: coats.coat1Mm,
    coat2Mm: coats.coat2Mm,
    coat3Mm: coats.coat3Mm,
    lathWidthMm: lengthMm('w', 200, [25, 30, 38]),
    lathThicknessMm: lengthMm('e', 50, [5, 6, 8]),
    gapMm: lengthMm('g', 50, [8, 9, 10]),
    /** Depth of the nib behind the laths, averaged over the gap. */
    nibMm: extraMm('n', 50),
  },
  formula: '(A − A_o) · (t_1 + t_2 + t_3 + (e + n) · g / (w + g))',
  netL: (d) =>
    (d.areaM2 - d.openingsM2) *
    (d.coat1Mm +
      d.coat2Mm +
      d.coat3Mm +
      ((d.lathThicknessMm + d.nibMm) * d.gapMm) / (d.lathWidthMm + d.gapMm)),
  refuse: refuseOpenings,
})

/** A lime floor. */
export const floor = defineWork({
  fields: { ...face, thicknessMm: lengthMm('t', 1000, [40, 60, 100]), unevennessMm: extraMm('u', 300) },
  formula: '(A − A_o) · (t + u)',
  netL: (d) => (d.areaM2 - d.openingsM2) * (d.thicknessMm + d.unevennessMm),
  refuse: refuseOpenings,
})

/** Limewash by its coats. */
export const limewash = defineWork({
  fields: {
    ...face,
    coats: {
      symbol: 'n',
      unit: '1',
      limits: { min: 1, max: 20 },
      usual: { low: 4, typical: 5, high: 6, basis: 'practice' },
      whole: true,
    },
    coverLPerM2: {
      symbol: 'q',
      unit: 'L/m2',
      limits: { above: 0, max: 5, unit: 'L/m2' },
      usual: { low: 0.12, typical: 0.2, high: 0.4, basis: 'practice' },
    },
  },
  formula: '(A − A_o) · n · q',
  netL: (d) => (d.areaM2 - d.openingsM2) * d.coats * d.coverLPerM2,
  refuse: refuseOpenings,
})
