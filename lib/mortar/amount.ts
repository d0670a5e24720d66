import { exactly, type Range } from './range.ts'

/** A number that is known, or a range. */
export type Amount = number | Range

/** An amount as a range. */
export const toRange = (amount: Amount): Range => (typeof amount === 'number' ? exactly(amount) : amount)
