import { MEAN_OF_STATES, type StateChoice } from './mix.ts'
import type { Range } from './range.ts'
import { DRAWS, spreadVector } from './spread.ts'
import type { Variables } from './variables.ts'

/**
 * Ranges over what is uncertain and over what was left unsaid. Where a lime's state is not stated, the
 * range spans the ranges of every state it may have been in, and the typical value takes the mean of
 * what one measure holds in each. Several limes of open states are taken in step, the first state of each,
 * then the second: not in every combination, whose number has no bound.
 *
 * @param choices how many states are open, from `openStates`
 */
export function spreadChoices(
  vars: Variables,
  outputs: readonly string[],
  choices: number,
  calculate: (x: Float64Array, out: Float64Array, choice: StateChoice) => void,
  draws: number = DRAWS,
): Range[] {
  const perChoice = Array.from({ length: choices }, (_, choice) =>
    spreadVector(vars.names, vars.ranges, outputs, (x, out) => calculate(x, out, choice), draws),
  )
  const [only] = perChoice
  if (choices === 1 && only !== undefined) return only
  const typical = new Float64Array(outputs.length)
  calculate(
    Float64Array.from(vars.ranges, (range) => range.typical),
    typical,
    MEAN_OF_STATES,
  )
  return outputs.map((_, k) => {
    const ranges = perChoice.map((all) => all[k] as Range)
    const middle = typical[k] as number
    return {
      low: Math.min(middle, ...ranges.map(({ low }) => low)),
      typical: middle,
      high: Math.max(middle, ...ranges.map(({ high }) => high)),
    }
  })
}
