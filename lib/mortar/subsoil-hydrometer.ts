import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import type { SoilShare } from './subsoil.ts'
import {
  CLAY_MM,
  densityCorrection,
  effectiveDepthCm,
  GRAVITY,
  MOST_FINER,
  spreadHydrometer,
} from './subsoil-hydrometer-sum.ts'
import { waterDensity, waterViscosity } from './water-physics.ts'

export interface HydrometerInput {
  /** Dry mass in the cylinder, g, in one litre. */
  readonly massG: number
  /** What passes 63 µm, % of the whole soil, from a wet sieve; 100 where only that was put in. */
  readonly finesPercent: Range
  /** Only what passed 63 µm is in the cylinder, not the whole soil. */
  readonly finesOnly: boolean
  readonly particleDensityKgM3: Range
  /** Reading in the blank (water with the dispersant), g/L: what every reading is too high by. */
  readonly blankGL: Range
  /** Added for the height of the meniscus, g/L. */
  readonly meniscusGL: number
  /** Earliest first. */
  readonly readings: readonly {
    readonly minutes: number
    readonly readingGL: number
    readonly celsius: number
  }[]
  /** How far off each reading may be, either way, g/L. */
  readonly readingErrorGL?: number | undefined
}

export interface HydrometerReading {
  readonly points: readonly {
    readonly minutes: number
    readonly sizeMm: Range
    /** % of the whole soil finer than that size. */
    readonly finer: Range
  }[]
  /** Null where the last reading did not get down to 2 µm: the clay is less than that reading shows. */
  readonly shares: readonly SoilShare[] | null
  readonly steps: readonly Step[]
}

const SOURCE = 'das-soil-mechanics, item 3.29'

/**
 * Clay and silt from hydrometer readings (152H, one litre).
 *
 * @returns faults: readings out of order, fewer than two, or over what the mass can give
 */
export function readHydrometer(input: HydrometerInput): Outcome<HydrometerReading> {
  return attempt(() => {
    refuseBadReadings(input)
    const { sizes, finer, clay, silt } = spreadHydrometer(input)
    const points = input.readings.map(({ minutes }, i) => ({
      minutes,
      sizeMm: sizes[i] as Range,
      finer: finer[i] as Range,
    }))
    const smallest = points[points.length - 1]?.sizeMm.typical ?? Number.POSITIVE_INFINITY
    const shares: SoilShare[] = [
      { part: 'clay', percent: clay },
      { part: 'silt', percent: silt },
    ]
    return { points, shares: smallest <= CLAY_MM ? shares : null, steps: explain(input, points) }
  })
}

function refuseBadReadings(input: HydrometerInput): void {
  const check = inspect()
  check.number('massG', input.massG, { above: 0, max: 200, unit: 'g' })
  check.range('finesPercent', input.finesPercent, { min: 0, max: 100, unit: '%' })
  check.range('particleDensityKgM3', input.particleDensityKgM3, { above: 1500, max: 5000, unit: 'kg/m3' })
  check.range('blankGL', input.blankGL, { min: -10, max: 20, unit: 'g/L' })
  check.number('meniscusGL', input.meniscusGL, { min: 0, max: 5, unit: 'g/L' })
  check.number('readingErrorGL', input.readingErrorGL ?? 0, { min: 0, max: 5, unit: 'g/L' })
  if (input.readings.length < 2)
    check.refuse({ field: 'readings', code: 'too-small', value: input.readings.length, limit: 2 })
  input.readings.forEach(({ minutes, readingGL, celsius }, i) => {
    const before = input.readings[i - 1]
    check.number(`readings.${i}.minutes`, minutes, { above: 0, max: 100_000, unit: 'min' })
    check.number(`readings.${i}.readingGL`, readingGL, { min: 0, max: 60, unit: 'g/L' })
    check.number(`readings.${i}.celsius`, celsius, { min: 5, max: 35, unit: 'degC' })
    if (before !== undefined && minutes <= before.minutes)
      check.refuse({
        field: `readings.${i}.minutes`,
        code: 'out-of-order',
        value: minutes,
        limit: before.minutes,
      })
    if (before !== undefined && readingGL > before.readingGL)
      check.refuse({
        field: `readings.${i}.readingGL`,
        code: 'out-of-order',
        value: readingGL,
        limit: before.readingGL,
      })
  })
  check.finish()
  const share = input.finesOnly ? input.finesPercent.typical : 100
  const { readingGL = 0 } = input.readings[0] ?? {}
  const correction = densityCorrection(input.particleDensityKgM3.typical)
  const first = ((readingGL - input.blankGL.typical) * correction * share) / input.massG
  // Five points for a reading's own error; more means a wrong mass or a forgotten blank.
  if (first > MOST_FINER)
    check.refuse({ field: 'massG', code: 'inconsistent', value: first, limit: 100, unit: '%' })
  check.finish()
}

function explain(input: HydrometerInput, points: HydrometerReading['points']): Step[] {
  return points.flatMap((point, i) => {
    const { readingGL, celsius } = input.readings[i] as HydrometerInput['readings'][number]
    const density = input.particleDensityKgM3.typical
    const depth = effectiveDepthCm(readingGL + input.meniscusGL)
    return [
      {
        symbol: `D(${point.minutes})`,
        means: 'analysis.soilStokesSize',
        formula: '√(18 η L / (t (ρ_s − ρ_w) g))',
        numbers: working`√(18 · ${waterViscosity(celsius)} · ${depth / 100} / (${point.minutes * 60} · (${density} − ${waterDensity(celsius)}) · ${GRAVITY}))`,
        result: point.sizeMm,
        unit: 'mm',
        source: SOURCE,
      },
      {
        symbol: `P(${point.minutes})`,
        means: 'analysis.soilStokesFiner',
        formula: '(R − R_blank) · a / m · share',
        numbers: working`(${readingGL} − ${input.blankGL.typical}) · ${densityCorrection(density)} / ${input.massG} · ${input.finesOnly ? input.finesPercent.typical : 100}`,
        result: point.finer,
        unit: '%',
        source: SOURCE,
      },
    ]
  })
}
