import type { Range } from './range.ts'

export interface PackOrder {
  readonly packKg: number
  /** Whole packs for the least, the usual and the most that may be needed. */
  readonly packs: Range
  /** What the usual number of packs leaves over, kg. */
  readonly leftKg: number
}

/** A hair's breadth of arithmetic must not buy a whole pack more. */
const wholePacks = (kg: number, packKg: number): number => Math.ceil(kg / packKg - 1e-9)

/** Whole packs of one size, for an amount in kg. */
export function orderPacks(kg: Range, packKg: number): PackOrder {
  const packs = {
    low: wholePacks(kg.low, packKg),
    typical: wholePacks(kg.typical, packKg),
    high: wholePacks(kg.high, packKg),
  }
  return { packKg, packs, leftKg: Math.max(0, packs.typical * packKg - kg.typical) }
}
