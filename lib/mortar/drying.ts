import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { type Range, scale } from './range.ts'
import { spread } from './spread.ts'

export interface DryingInput {
  readonly thicknessMm: Range
  /** Dry mass of the earth in place, kg/m³. */
  readonly densityKgM3: Range
  /** kg of water per kg of dry earth, when placed and when it may be plastered over or left unprotected. */
  readonly moistureAtStart: Range
  readonly moistureAtEnd: Range
  /** Water that leaves one face, kg/m² a day, as found by weighing a sample board on this site. */
  readonly lossKgM2Day: Range
  readonly faces: 1 | 2
}

export interface Drying {
  /** Water to lose, kg/m² of wall. */
  readonly waterKgM2: Range
  readonly days: Range
  readonly steps: readonly Step[]
}

/**
 * Drying of earth, which hardens by losing water and carbonates nothing. Takes the loss as steady, so the
 * answer is a least time: the last of the water leaves more slowly.
 *
 * @returns faults: nothing thick, wet, or drying; an end as wet as the start
 */
export function dryEarth(input: DryingInput): Outcome<Drying> {
  return attempt(() => {
    const check = inspect()
    check.range('thicknessMm', input.thicknessMm, { above: 0, max: 2000, unit: 'mm' })
    check.range('densityKgM3', input.densityKgM3, { above: 0, max: 3000, unit: 'kg/m3' })
    check.range('moistureAtStart', input.moistureAtStart, { above: 0, max: 1, unit: 'kg/kg' })
    check.range('moistureAtEnd', input.moistureAtEnd, { min: 0, max: 1, unit: 'kg/kg' })
    check.range('lossKgM2Day', input.lossKgM2Day, { above: 0, max: 50, unit: 'kg/(m2.d)' })
    if (input.faces !== 1 && input.faces !== 2)
      check.refuse({ field: 'faces', code: 'unknown', value: input.faces, limit: 2 })
    check.finish()
    if (input.moistureAtEnd.high > input.moistureAtStart.low)
      check.refuse({
        field: 'moistureAtEnd',
        code: 'too-large',
        value: input.moistureAtEnd.high,
        limit: input.moistureAtStart.low,
        unit: 'kg/kg',
      })
    check.finish()
    const { water, days } = spread(
      {
        thickness: scale(input.thicknessMm, 1e-3),
        density: input.densityKgM3,
        start: input.moistureAtStart,
        end: input.moistureAtEnd,
        loss: input.lossKgM2Day,
      },
      (x) => {
        const kgM2 = x.thickness * x.density * (x.start - x.end)
        return { water: kgM2, days: kgM2 / (x.loss * input.faces) }
      },
    )
    const [d, rho] = [input.thicknessMm.typical / 1000, input.densityKgM3.typical]
    const [from, to] = [input.moistureAtStart.typical, input.moistureAtEnd.typical]
    return {
      waterKgM2: water,
      days,
      steps: [
        {
          symbol: 'm_w',
          means: 'analysis.dryingWater',
          formula: 'd · ρ · (w_start − w_end)',
          numbers: working`${d} · ${rho} · (${from} − ${to})`,
          result: water,
          unit: 'kg/m2',
        },
        {
          symbol: 't_dry',
          means: 'analysis.dryingDays',
          formula: 'm_w / (q · faces)',
          numbers: working`${water.typical} / (${input.lossKgM2Day.typical} · ${input.faces})`,
          result: days,
          unit: 'd',
        },
      ],
    }
  })
}
