import type { IngredientInput, IngredientRole, IngredientState } from '#lib/mortar/ingredient.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Property } from '#lib/mortar/range.ts'

const UNIT_OF = (name: string) => (/density/i.test(name) ? 'kg/m3' : '1')

/** Properties of one known figure each. */
export const known = (figures: Readonly<Record<string, number>>): Properties =>
  Object.fromEntries(
    Object.entries(figures).map(([name, value]) => [
      name,
      { low: value, typical: value, high: value, unit: UNIT_OF(name), basis: 'read' } satisfies Property,
    ]),
  )

/**
 * Pure quicklime with the densities that handbooks print: lump 850 and fine 1200 kg/m³ and hydrate 480
 * (Glover 1993 p. 390), wet slaked lime 1350 (Bolz & Tuve 1973 p. 178, middle of 1.3 to 1.4), particles
 * of hydrate 2240 (NIOSH pocket guide).
 */
export const PURE = known({
  freeCaO: 1,
  bulkDensityLump: 850,
  bulkDensityGround: 1200,
  bulkDensityHydrate: 480,
  puttyDensity: 1350,
  particleDensityHydrate: 2240,
})

/** The same, of 92 % free lime, as good commercial lime is. */
export const GOOD = { ...PURE, ...known({ freeCaO: 0.92 }) }

/** Dry building sand measured at 758 g in 500 mL (one reading), particles of quartz (CRC handbook). */
export const SAND = known({ bulkDensity: 1516, particleDensity: 2650 })

/** Portland cement: particles 3150 (Marks 1967 p. 6-7), bulk as each source counts it. */
export const cement = (bulkDensity: number) => known({ bulkDensity, particleDensity: 3150 })

export const part = (
  material: string,
  role: IngredientRole,
  parts: number,
  state: IngredientState = 'dry',
  by: 'volume' | 'mass' = 'volume',
): IngredientInput => ({ material, role, parts: { low: parts, high: parts }, by, state })

export const lime = (parts: number, state: IngredientState, by: 'volume' | 'mass' = 'volume') =>
  part('lime', 'lime', parts, state, by)
export const sand = (parts: number, state: IngredientState = 'dry', by: 'volume' | 'mass' = 'volume') =>
  part('sand', 'aggregate', parts, state, by)
export const water = (parts: number, by: 'volume' | 'mass' = 'volume') =>
  part('water', 'water', parts, 'not-stated', by)

/** Properties with real ranges, for laws rather than for outside figures. */
const ranged = (low: number, typical: number, high: number, unit = '1'): Property => ({
  low,
  typical,
  high,
  unit,
  basis: 'practice',
})
export const RANGED_LIME: Properties = {
  freeCaO: ranged(0.8, 0.9, 0.95),
  bulkDensityLump: ranged(750, 850, 1000, 'kg/m3'),
  bulkDensityGround: ranged(900, 1080, 1250, 'kg/m3'),
  bulkDensityHydrate: ranged(430, 490, 600, 'kg/m3'),
  puttyDensity: ranged(1300, 1350, 1430, 'kg/m3'),
  particleDensityHydrate: ranged(2200, 2240, 2300, 'kg/m3'),
}
export const RANGED_SAND: Properties = {
  bulkDensity: ranged(1450, 1520, 1600, 'kg/m3'),
  particleDensity: ranged(2600, 2650, 2700, 'kg/m3'),
  bulkingPeak: ranged(0.2, 0.28, 0.36),
  bulkingPeakMoisture: ranged(0.04, 0.05, 0.06),
  saturationMoisture: ranged(0.16, 0.2, 0.25),
}
export const HAIR: Properties = {}
