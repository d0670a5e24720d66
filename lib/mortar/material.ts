import type { Limits } from './inspect.ts'
import type { Property } from './range.ts'

/**
 * Every property that a material can have, with the one unit it is kept in. content/materials gives the
 * figures; the sums name the ones they need and refuse when one is missing.
 */
export const PROPERTY_UNITS = {
  /** Free CaO able to slake, kg per kg of quicklime. */
  freeCaO: '1',
  /** Free MgO, kg per kg of quicklime; hydrates slowly or not at all on site. */
  freeMgO: '1',
  bulkDensityLump: 'kg/m3',
  bulkDensityGround: 'kg/m3',
  bulkDensityHydrate: 'kg/m3',
  puttyDensity: 'kg/m3',
  particleDensityQuicklime: 'kg/m3',
  particleDensityHydrate: 'kg/m3',
  /** Dry and loose, as it fills a gauge box; for all that is not a lime. */
  bulkDensity: 'kg/m3',
  particleDensity: 'kg/m3',
  /** Share of the dry loose volume that is air. */
  voids: '1',
  /** Greatest growth in volume when damp, as a share of the dry loose volume. */
  bulkingPeak: '1',
  /** Moisture (kg water per kg dry) at the greatest bulking. */
  bulkingPeakMoisture: '1',
  /** Moisture (kg water per kg dry) at which the material holds no more. */
  saturationMoisture: '1',
  /** Clay, kg per kg of dry soil. */
  clayFraction: '1',
  /** Fibre usually added per volume of mortar. */
  fibreDose: 'kg/m3',
  heatCapacity: 'kJ/(kg.K)',
  /** Days that it keeps in a closed dry store. */
  shelfLife: 'd',
  compressiveStrength: 'MPa',
  flexuralStrength: 'MPa',
  /** Share of the volume that water can fill, per cent. */
  openPorosity: '%',
  /** Water drawn up by capillarity. */
  capillarity: 'kg/(m2.min^0.5)',
  /** Cradle to gate, kg CO2 per kg. */
  carbon: '1',
} as const satisfies Record<string, string>

export type PropertyName = keyof typeof PROPERTY_UNITS
export type Properties = Readonly<Partial<Record<PropertyName, Property>>>

const share: Limits = { min: 0, max: 1 }
const density: Limits = { above: 0, max: 10_000, unit: 'kg/m3' }

/** What nature allows each property to be. */
export const PROPERTY_LIMITS: Readonly<Record<PropertyName, Limits>> = {
  freeCaO: share,
  freeMgO: share,
  bulkDensityLump: density,
  bulkDensityGround: density,
  bulkDensityHydrate: density,
  puttyDensity: { above: 1000, max: 2000, unit: 'kg/m3' },
  particleDensityQuicklime: { above: 1000, max: 10_000, unit: 'kg/m3' },
  particleDensityHydrate: { above: 2000, max: 10_000, unit: 'kg/m3' },
  bulkDensity: density,
  particleDensity: density,
  voids: { above: 0, max: 0.95 },
  bulkingPeak: share,
  bulkingPeakMoisture: { above: 0, max: 1 },
  saturationMoisture: { above: 0, max: 2 },
  clayFraction: share,
  fibreDose: { min: 0, max: 100, unit: 'kg/m3' },
  heatCapacity: { above: 0, max: 10, unit: 'kJ/(kg.K)' },
  shelfLife: { above: 0, max: 40_000, unit: 'd' },
  compressiveStrength: { min: 0, max: 1000, unit: 'MPa' },
  flexuralStrength: { min: 0, max: 500, unit: 'MPa' },
  openPorosity: { min: 0, max: 95, unit: '%' },
  capillarity: { min: 0, max: 1000, unit: 'kg/(m2.min^0.5)' },
  carbon: { min: -100, max: 1000 },
}
