import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

export interface AmendInput {
  /** Clay in the soil in hand, and in what is to be added (sand, or a fatter soil), % by mass. */
  readonly clayPercent: Range
  readonly additionClayPercent: Range
  readonly targetClayPercent: number
  /** Dry and loose, kg/m³. */
  readonly soilDensityKgM3: Range
  readonly additionDensityKgM3: Range
}

export interface Amendment {
  /** Of the addition, for one of soil. Nothing where the soil already lies on the target's other side. */
  readonly perSoilByMass: Range
  readonly perSoilByVolume: Range
  readonly steps: readonly Step[]
}

/**
 * What to add to a soil to bring its clay to a target: r = (c − t) / (t − c_a) by mass. A starting point for
 * a trial patch, which decides.
 *
 * @returns faults: shares outside 0 to 100, a target that the soil and the addition do not lie on two sides of
 */
export function amendSoil(input: AmendInput): Outcome<Amendment> {
  return attempt(() => {
    const check = inspect()
    const share = { min: 0, max: 100, unit: '%' }
    const { clayPercent: clay, additionClayPercent: added, targetClayPercent: target } = input
    check.range('clayPercent', clay, share)
    check.range('additionClayPercent', added, share)
    check.number('targetClayPercent', target, share)
    check.range('soilDensityKgM3', input.soilDensityKgM3, { above: 0, max: 5000, unit: 'kg/m3' })
    check.range('additionDensityKgM3', input.additionDensityKgM3, { above: 0, max: 5000, unit: 'kg/m3' })
    check.finish()
    const between = (from: number, to: number) => from <= target && target <= to
    const leaner = added.high < target && between(added.typical, clay.typical)
    const fatter = added.low > target && between(clay.typical, added.typical)
    if (!leaner && !fatter)
      check.refuse({
        field: 'targetClayPercent',
        code: 'inconsistent',
        value: target,
        limit: added.typical,
        unit: '%',
      })
    check.finish()
    const { mass, volume } = spread(
      { clay, added, soil: input.soilDensityKgM3, addition: input.additionDensityKgM3 },
      (x) => {
        const byMass = Math.max(0, (x.clay - target) / (target - x.added))
        return { mass: byMass, volume: (byMass * x.soil) / x.addition }
      },
    )
    return {
      perSoilByMass: mass,
      perSoilByVolume: volume,
      steps: [
        {
          symbol: 'r',
          means: 'analysis.soilAdditionMass',
          formula: '(c − t) / (t − c_a)',
          numbers: working`(${clay.typical} − ${target}) / (${target} − ${added.typical})`,
          result: mass,
          unit: '1',
        },
        {
          symbol: 'r_v',
          means: 'analysis.soilAdditionVolume',
          formula: 'r · ρ_soil / ρ_add',
          numbers: working`${mass.typical} · ${input.soilDensityKgM3.typical} / ${input.additionDensityKgM3.typical}`,
          result: volume,
          unit: '1',
        },
      ],
    }
  })
}
