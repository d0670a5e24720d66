import type { Range } from './range.ts'

/** One line of working: what a symbol stands for, how it was found, with which numbers, from where. */
export interface Step {
  /** As printed in formulas, for example `m_q`. */
  readonly symbol: string
  /** Key of the symbol's meaning in the words catalogue, under `steps`. */
  readonly means: string
  /** The formula in symbols, for example `V · c`. Empty for an input. */
  readonly formula: string
  /** The formula with the typical numbers put in. */
  readonly numbers: string
  readonly result: Range
  /** Unit symbol as in {@link Range} results: `kg`, `L`, `m2`, `kg/m3`, `%`, `1` for a bare ratio… */
  readonly unit: string
  /** `source-id` or `source-id, locator`; absent for arithmetic. */
  readonly source?: string
  /** Which of several pieces of work it belongs to, counted from 1; absent for what all share. */
  readonly work?: number
}

/** A number for a line of working: six significant digits, decimal point, no needless noughts. */
export const digits = (value: number): string => String(Number(value.toPrecision(6)))

/**
 * Puts typical numbers into a formula: the working `V · c` with 2 and 3 reads `2 · 3`.
 *
 * @param parts text and numbers in turn; numbers are shortened by {@link digits}
 */
export const working = (text: TemplateStringsArray, ...parts: readonly number[]): string =>
  text.reduce((line, piece, index) => `${line}${digits(parts[index - 1] as number)}${piece}`)

/** An input as a line of working. */
export const given = (symbol: string, means: string, result: Range, unit: string): Step => ({
  symbol,
  means,
  formula: '',
  numbers: '',
  result,
  unit,
})
