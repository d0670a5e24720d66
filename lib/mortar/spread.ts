import { quickselect } from 'd3-array'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'
import { MortarFault } from './fault.ts'
import { isRange, type Range } from './range.ts'

/** Draws behind a printed range; more of them change no printed digit. */
export const DRAWS = 10_000

/** The share of draws that a printed range holds; what is left over lies half below and half above it. */
export const COVERAGE = 0.9

/**
 * Carries ranges through a calculation by seeded Monte Carlo.
 *
 * Half of each input's draws fall below its typical value and half above, growing rarer in a straight
 * line towards its ends (a split triangle whose median is the typical value). Every input has a stream
 * of its own, seeded by its name, so the same inputs give the same ranges, and widening one input moves
 * its draws outward and leaves the others alone.
 *
 * @param inputs named ranges, any units
 * @param calculate the sum itself on plain numbers; it must give the same outputs for every draw
 * @returns for each output the typical value (the sum on typical inputs) and the range that holds
 *   {@link COVERAGE} of the draws, widened where needed to contain the typical value
 * @throws MortarFault `out-of-order` naming an input that is not a range
 */
export function spread<I extends string, O extends string>(
  inputs: Readonly<Record<I, Range>>,
  calculate: (x: Readonly<Record<I, number>>) => Record<O, number>,
  draws: number = DRAWS,
): Record<O, Range> {
  const names = Object.keys(inputs) as I[]
  for (const name of names) {
    if (!isRange(inputs[name])) throw new MortarFault({ field: name, code: 'out-of-order' })
  }
  const x = {} as Record<I, number>
  for (const name of names) x[name] = inputs[name].typical
  const typical = calculate(x)
  const outputs = Object.keys(typical) as O[]

  const uncertain = names.filter((name) => inputs[name].low < inputs[name].high)
  if (uncertain.length === 0) return collect(outputs, (output) => point(typical[output]))

  const streams = uncertain.map((name) => samples(name, inputs[name], draws))
  const drawn = outputs.map(() => new Float64Array(draws))
  for (let i = 0; i < draws; i++) {
    for (let k = 0; k < uncertain.length; k++)
      x[uncertain[k] as I] = (streams[k] as Float64Array)[i] as number
    const result = calculate(x)
    for (let k = 0; k < outputs.length; k++) (drawn[k] as Float64Array)[i] = result[outputs[k] as O]
  }
  return collect(outputs, (output, k) => {
    const values = drawn[k] as Float64Array
    const low = quantile(values, (1 - COVERAGE) / 2)
    const high = quantile(values, (1 + COVERAGE) / 2)
    return {
      low: Math.min(low, typical[output]),
      typical: typical[output],
      high: Math.max(high, typical[output]),
    }
  })
}

function collect<O extends string>(outputs: readonly O[], range: (output: O, index: number) => Range) {
  const all = {} as Record<O, Range>
  outputs.forEach((output, index) => {
    const made = range(output, index)
    if (!isRange(made)) throw new MortarFault({ field: output, code: 'inconsistent' })
    all[output] = made
  })
  return all
}

const point = (value: number): Range => ({ low: value, typical: value, high: value })

function samples(name: string, range: Range, draws: number): Float64Array {
  const generator = xoroshiro128plus(seedOf(name))
  const values = new Float64Array(draws)
  const below = range.typical - range.low
  const above = range.high - range.typical
  for (let i = 0; i < draws; i++) {
    const u = (generator.next() >>> 0) / 2 ** 32
    values[i] = u < 0.5 ? range.low + below * Math.sqrt(2 * u) : range.high - above * Math.sqrt(2 * (1 - u))
  }
  return values
}

/** FNV-1a, 32 bits: a stable number from a name. */
function seedOf(name: string): number {
  let hash = 0x811c9dc5
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193)
  return hash >>> 0
}

/** The value below which a share of the draws lies; reorders `values`. */
function quantile(values: Float64Array, share: number): number {
  const k = Math.min(values.length - 1, Math.floor(values.length * share))
  quickselect(values, k)
  return values[k] as number
}
