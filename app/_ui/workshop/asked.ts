import type { Limits } from '#lib/mortar/inspect.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Basis, Range } from '#lib/mortar/range.ts'
import type { Typed } from '../../_http/form.ts'
import type { Option } from '../field.tsx'
import type { BenchMaterial } from './brought.ts'

/** A figure that is taken where nothing is typed, and how it is known. */
export interface Usual extends Range {
  readonly basis: Basis
  /** `source-id` or `source-id, locator`. */
  readonly source?: string
}

interface Asked {
  /** As the address names it: short, in kebab-case, never one of `FRAME_NAMES`. */
  readonly name: string
  readonly label: string
  readonly hint?: string
  /** Path by which the sums name it in a fault, for example `ingredients.0.parts`; its name when absent. */
  readonly path?: string
  /** Head of the group that it stands in; fields of one group follow one another. */
  readonly group?: string
  /** Its group is closed until something is typed in it: figures that most leave as they are. */
  readonly folded?: boolean
}

/** A figure or a range with a unit. */
export interface AmountAsked extends Asked {
  readonly kind: 'amount'
  /** Unit that the sums want, metric. */
  readonly unit: string
  /** Unit that it is asked in, where that is another: `%` for a share of one. */
  readonly asks?: string
  /** Measured at a bench: asked in the metric unit in every system. */
  readonly bench?: boolean
  /** Water and the like: asked in gallons, not cubic feet. */
  readonly liquid?: boolean
  /** One number, never a range. */
  readonly single?: boolean
  /** May stay blank although nothing is usual. */
  readonly optional?: boolean
  /** Taken where nothing is typed, in `unit`. */
  readonly usual?: Usual | undefined
  /** Typed in advance on the first visit, in the metric unit that is asked: an example, not advice. */
  readonly example?: number | readonly [low: number, high: number]
  /** What it may be, in `unit`; the sums' own limits hold besides. */
  readonly limits?: Limits
}

/** Figures in a row, one a line; a dash stands for one that is missing. */
export interface ListAsked extends Asked {
  readonly kind: 'list'
  readonly unit: string
  /** Measured at a bench: asked in the metric unit in every system. */
  readonly bench?: boolean
  readonly example: readonly number[]
  /** May single figures be missing? */
  readonly gaps?: boolean
  readonly most: number
  readonly limits?: Limits
}

/** One of a closed list. */
export interface ChoiceAsked extends Asked {
  readonly kind: 'choice'
  readonly options: readonly Option[]
  /** Chosen before anybody chose. */
  readonly first: string
  /** Other fields follow from it: without a script they come with "Show its fields". */
  readonly leads?: boolean
}

/** Yes or no. */
export interface CheckAsked extends Asked {
  readonly kind: 'check'
}

export type FieldAsked = AmountAsked | ListAsked | ChoiceAsked | CheckAsked

/** The chosen item, or the first: for `fields`, which must ask before anything is read. */
export const chosenIn = <T extends string>(typed: Typed, name: string, list: readonly T[], first: T): T =>
  list.find((one) => one === typed[name]) ?? first

/** A property of a material as what is usual. */
export function usualOf(material: BenchMaterial | undefined, name: keyof Properties): Usual | undefined {
  const property = material?.properties[name]
  if (property === undefined) return undefined
  const { low, typical, high, basis, source } = property
  return { low, typical, high, basis, ...(source !== undefined && { source }) }
}

/** Common practice, named as such. */
export const practice = (low: number, typical: number, high: number): Usual => ({
  low,
  typical,
  high,
  basis: 'practice',
})
