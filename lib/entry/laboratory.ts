import { z } from 'zod'
import { citation, text } from './fields.ts'

/** What a laboratory may report of a mortar, stone or lime, with the one unit each is kept in. */
export const LAB_UNITS = {
  compressiveStrength: 'MPa',
  flexuralStrength: 'MPa',
  bulkDensity: 'kg/m3',
  /** Share of the volume that water can fill, per cent. */
  openPorosity: '%',
  /** Water drawn up by capillarity. */
  capillarity: 'kg/(m2.min^0.5)',
  /** Resistance to water vapour, as a multiple of still air (µ). */
  vapourResistance: '1',
  chloride: '% by mass',
  sulfate: '% by mass',
  nitrate: '% by mass',
  /** Depth carbonated at the age stated. */
  carbonationDepth: 'mm',
} as const satisfies Record<string, string>

export type LabProperty = keyof typeof LAB_UNITS
export const LAB_PROPERTIES = Object.keys(LAB_UNITS) as [LabProperty, ...LabProperty[]]

const spread = z
  .strictObject({
    low: z.number().nonnegative().max(1e6),
    typical: z.number().nonnegative().max(1e6).optional(),
    high: z.number().nonnegative().max(1e6),
  })
  .refine(({ low, typical = low, high }) => low <= high && low <= typical && typical <= high, 'out-of-order')

/** One laboratory result: how it was measured and at what age, without which the figure means little. */
export const labResult = z.strictObject({
  property: z.enum(LAB_PROPERTIES),
  value: spread,
  /** Test method, by its standard or in words. */
  method: text(160),
  /** Age of the specimen in days; unknown for mortar taken from a wall. */
  ageDays: z.number().int().positive().max(1_000_000).optional(),
  specimens: z.number().int().positive().max(1000).optional(),
  source: citation.optional(),
  note: text(300).optional(),
})
export type LabResult = z.infer<typeof labResult>

export const laboratory = z.array(labResult).max(40)
