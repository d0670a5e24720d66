import { given, type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

/**
 * The coefficient of x = k √t from a depth that was measured at a known age, mm for the first day.
 *
 * @param input.depthMm carbonated depth, as an indicator shows it on a fresh break
 * @param input.days age of the mortar then
 * @returns faults: a depth or an age not above nothing
 */
export const coefficientFrom = (input: {
  readonly depthMm: Range
  readonly days: Range
}): Outcome<{ readonly k: Range; readonly steps: readonly Step[] }> =>
  attempt(() => {
    const check = inspect()
    check.range('depthMm', input.depthMm, { above: 0, max: 5000, unit: 'mm' })
    check.range('days', input.days, { above: 0, max: 400_000, unit: 'd' })
    check.finish()
    const { k } = spread({ depth: input.depthMm, days: input.days }, (x) => ({
      k: x.depth / Math.sqrt(x.days),
    }))
    return {
      k,
      steps: [
        given('x_m', 'analysis.cureMeasured', input.depthMm, 'mm'),
        given('t_m', 'analysis.cureAge', input.days, 'd'),
        {
          symbol: 'k',
          means: 'analysis.cureCoefficient',
          formula: 'x_m / √t_m',
          numbers: working`${input.depthMm.typical} / √${input.days.typical}`,
          result: k,
          unit: 'mm/d^0.5',
          source: 'rilem-carbonation-2023',
        },
      ],
    }
  })
