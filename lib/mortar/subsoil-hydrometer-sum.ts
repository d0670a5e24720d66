import type { Range } from './range.ts'
import { passingAt } from './sieve-curve.ts'
import { spreadVector } from './spread.ts'
import type { HydrometerInput } from './subsoil-hydrometer.ts'
import { waterDensity, waterViscosity } from './water-physics.ts'

/** Below this a particle is clay, mm (EN ISO 14688-1). */
export const CLAY_MM = 0.002
export const GRAVITY = 9.80665
/** The 152H hydrometer is marked for particles of this density, kg/L. */
const MARKED_FOR = 2.65

/** Depth to the bulb's centre of a 152H hydrometer in a litre cylinder, cm, from its reading, g/L. */
export const effectiveDepthCm = (readingGL: number): number => 16.3 - 0.1641 * readingGL

/**
 * Largest particle still above the bulb after a time, mm, by Stokes' law.
 *
 * @param depthCm from {@link effectiveDepthCm}
 * @param particleDensity kg/m³
 */
export const stokesMm = (
  depthCm: number,
  minutes: number,
  particleDensity: number,
  celsius: number,
): number => sinking(minutes, celsius)(depthCm, particleDensity)

type Sinking = (depthCm: number, particleDensity: number) => number

/** The same with all that time and temperature settle worked out once. */
function sinking(minutes: number, celsius: number): Sinking {
  const perDepth = (18 * waterViscosity(celsius)) / (100 * 60 * minutes * GRAVITY)
  const water = waterDensity(celsius)
  return (depthCm, particleDensity) => 1000 * Math.sqrt((perDepth * depthCm) / (particleDensity - water))
}

/** What a reading of a 152H hydrometer counts for in particles of another density. */
export const densityCorrection = (particleDensity: number): number => {
  const g = particleDensity / 1000
  return ((g / (g - 1)) * (MARKED_FOR - 1)) / MARKED_FOR
}

/** A reading is this much over what the mass can give at most, %; more is a fault. */
export const MOST_FINER = 105

/** Sizes and shares finer by reading, and clay and silt, with their ranges. */
export function spreadHydrometer(input: HydrometerInput): {
  readonly sizes: readonly Range[]
  readonly finer: readonly Range[]
  readonly clay: Range
  readonly silt: Range
} {
  const n = input.readings.length
  const error = input.readingErrorGL ?? 0
  const names = ['fines', 'density', 'blank', ...input.readings.map((_, i) => `reading.${i}`)]
  const ranges = [
    input.finesPercent,
    input.particleDensityKgM3,
    input.blankGL,
    ...input.readings.map(({ readingGL }) => ({
      low: Math.max(0, readingGL - error),
      typical: readingGL,
      high: readingGL + error,
    })),
  ]
  const outputs = ['size', 'finer']
    .flatMap((column) => input.readings.map((_, i) => `${column}.${i}`))
    .concat('clay', 'silt')
  const sink = input.readings.map(({ minutes, celsius }) => sinking(minutes, celsius))
  const curve = input.readings.map(() => ({ openingMm: 0, passing: 0 }))
  const found = spreadVector(names, ranges, outputs, (x, out) => {
    const [fines, density, blank] = [x[0] as number, x[1] as number, x[2] as number]
    const perReading = (densityCorrection(density) / input.massG) * (input.finesOnly ? fines : 100)
    for (let i = 0; i < n; i++) {
      const reading = x[3 + i] as number
      const point = curve[i] as (typeof curve)[number]
      point.openingMm = (sink[i] as Sinking)(effectiveDepthCm(reading + input.meniscusGL), density)
      point.passing = Math.min(MOST_FINER, Math.max(0, (reading - blank) * perReading))
      out[i] = point.openingMm
      out[n + i] = point.passing
    }
    const last = curve[n - 1] as (typeof curve)[number]
    const clay = passingAt(curve, Math.max(CLAY_MM, last.openingMm)) ?? last.passing
    out[2 * n] = clay
    out[2 * n + 1] = Math.max(0, fines - clay)
  })
  return {
    sizes: found.slice(0, n),
    finer: found.slice(n, 2 * n),
    clay: found[2 * n] as Range,
    silt: found[2 * n + 1] as Range,
  }
}
