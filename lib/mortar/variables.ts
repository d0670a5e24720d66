import { type Amount, toRange } from './amount.ts'
import type { Range } from './range.ts'

/** The uncertain inputs of one calculation, each with its place in the array of numbers that is drawn. */
export interface Variables {
  readonly names: readonly string[]
  readonly ranges: readonly Range[]
  /** The place of a variable; the same name always has the same place, so what is shared varies as one. */
  add(name: string, amount: Amount): number
}

/** Starts with no variable. */
export function variables(): Variables {
  const names: string[] = []
  const ranges: Range[] = []
  const places = new Map<string, number>()
  return {
    names,
    ranges,
    add(name, amount) {
      const known = places.get(name)
      if (known !== undefined) return known
      places.set(name, names.length)
      ranges.push(toRange(amount))
      return names.push(name) - 1
    },
  }
}

/** No place: the variable is not there. */
export const ABSENT = -1

/** The number at a place, or 0 where there is none. */
export const at = (x: Float64Array, place: number): number => (place < 0 ? 0 : (x[place] as number))
