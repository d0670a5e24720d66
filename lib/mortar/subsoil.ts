import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { exactly, type Range } from './range.ts'
import { spread } from './spread.ts'

export const SOIL_PARTS = ['gravel', 'sand', 'silt', 'clay'] as const
export type SoilPart = (typeof SOIL_PARTS)[number]

export interface SoilShare {
  readonly part: SoilPart | 'fines'
  /** % of the whole by mass, or by settled volume for a jar. */
  readonly percent: Range
}

export interface JarInput {
  /** Depth of each layer after the water has cleared, mm. */
  readonly sandMm: number
  readonly siltMm: number
  readonly clayMm: number
  /** How far off each mark between two layers may be, either way, mm. */
  readonly markMm: number
  /** Dry mass in a litre of each settled layer, kg/m³, for shares by mass; clay settles far looser. */
  readonly settled?: { readonly sand: Range; readonly silt: Range; readonly clay: Range } | undefined
}

export interface JarReading {
  readonly byVolume: readonly SoilShare[]
  /** Null without the layers' densities: depths of mud are not masses. */
  readonly byMass: readonly SoilShare[] | null
  readonly steps: readonly Step[]
}

const JAR_PARTS = ['sand', 'silt', 'clay'] as const

/**
 * Clay, silt and sand from the layers of a jar. A jar reads too much clay, which settles swollen and goes on
 * sinking for days, and its silt ends where the eye puts it: the marks' error is the least of its errors.
 *
 * @returns faults: negative depths, no depth at all, marks off by more than the whole
 */
export function readJar(input: JarInput): Outcome<JarReading> {
  return attempt(() => {
    const check = inspect()
    const depths = { sand: input.sandMm, silt: input.siltMm, clay: input.clayMm }
    for (const part of JAR_PARTS) check.number(`${part}Mm`, depths[part], { min: 0, max: 2000, unit: 'mm' })
    check.finish()
    const total = depths.sand + depths.silt + depths.clay
    if (total <= 0) check.refuse({ field: 'sandMm', code: 'empty', unit: 'mm' })
    else check.number('markMm', input.markMm, { min: 0, max: total / 4, unit: 'mm' })
    for (const part of JAR_PARTS)
      if (input.settled !== undefined)
        check.range(`settled.${part}`, input.settled[part], { above: 0, max: 3000, unit: 'kg/m3' })
    check.finish()
    const around = (mm: number): Range => ({
      low: mm - Math.min(mm, input.markMm),
      typical: mm,
      high: mm + input.markMm,
    })
    const density = input.settled ?? { sand: exactly(1), silt: exactly(1), clay: exactly(1) }
    const found = spread(
      {
        sand: around(depths.sand),
        silt: around(depths.silt),
        clay: around(depths.clay),
        sandDensity: density.sand,
        siltDensity: density.silt,
        clayDensity: density.clay,
      },
      (x) => {
        const volume = (x.sand + x.silt + x.clay) / 100
        const [sand, silt, clay] = [x.sand * x.sandDensity, x.silt * x.siltDensity, x.clay * x.clayDensity]
        const mass = (sand + silt + clay) / 100
        return {
          'volume.sand': x.sand / volume,
          'volume.silt': x.silt / volume,
          'volume.clay': x.clay / volume,
          'mass.sand': sand / mass,
          'mass.silt': silt / mass,
          'mass.clay': clay / mass,
        }
      },
    )
    return {
      byVolume: JAR_PARTS.map((part) => ({ part, percent: found[`volume.${part}`] })),
      byMass:
        input.settled === undefined
          ? null
          : JAR_PARTS.map((part) => ({ part, percent: found[`mass.${part}`] })),
      steps: JAR_PARTS.map((part) => ({
        symbol: `v_${part}`,
        means: `analysis.soilJar.${part}`,
        formula: 'h / Σ h · 100',
        numbers: working`${depths[part]} / ${total} · 100`,
        result: found[`volume.${part}`],
        unit: '%',
      })),
    }
  })
}
