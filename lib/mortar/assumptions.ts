import type { Property } from './range.ts'

const practice = (low: number, typical: number, high: number, unit: string): Property => ({
  low,
  typical,
  high,
  unit,
  basis: 'practice',
})

/**
 * What no recipe, material or survey says and the sums must take all the same. All are common practice
 * without a source, none is exact, and the pages list them beside the figures they touch.
 */
export const ASSUMED = {
  /** Share of fresh mortar that is air, knocked up by hand or mixer. */
  air: practice(0.02, 0.05, 0.1, '1'),
  /** Free water that grains hold at a working consistency, kg per kg of dry grain. */
  grainWater: practice(0.03, 0.06, 0.1, 'kg/kg'),
  /** Free water that fine powders hold (pozzolans, cements, limes without a putty), kg per kg. */
  powderWater: practice(0.3, 0.45, 0.6, 'kg/kg'),
  /** Free water that clay holds, kg per kg of clay. */
  clayWater: practice(0.3, 0.5, 0.8, 'kg/kg'),
  /** Moisture of sand from an open heap where the recipe says damp and no more, kg per kg dry. */
  dampMoisture: practice(0.02, 0.04, 0.07, 'kg/kg'),
  /** Share of the likely water to put in first; the rest is judged at the mixer. */
  firstCharge: practice(0.7, 0.8, 0.9, '1'),
} as const satisfies Record<string, Property>
