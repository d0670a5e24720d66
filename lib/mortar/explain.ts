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
}
