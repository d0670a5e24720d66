import type { FieldFault } from '#lib/errors.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { Typed } from '../../_http/form.ts'
import type { System } from '../systems.ts'
import type { FieldAsked } from './asked.ts'
import type { BenchData } from './brought.ts'
import type { Shown } from './shown.ts'

/** The form as it was read, without faults. Asking for a name that was not declared is a fault of ours. */
export interface Given {
  readonly system: System
  /** Does the form have this field as it stands? */
  has(name: string): boolean
  /** The chosen item of a list. */
  choice<T extends string>(name: string, list: readonly T[]): T
  /** The same, where any item of its list will do. */
  chosen(name: string): string
  checked(name: string): boolean
  /** The figure in the sums' unit, as typed or as usual; undefined where an optional one is blank. */
  amount(name: string): Range | undefined
  /** The same for a field that cannot be blank. */
  need(name: string): Range
  /** Was something typed into it? */
  typed(name: string): boolean
  list(name: string): readonly (number | null)[]
}

/** What a page itself refuses of its form, in words that the sums do not have. */
export interface Refused {
  readonly ok: false
  readonly faults: readonly FieldFault[]
}

/** Sums that are too large for every page to bring along, and needed for some of what a page asks alone. */
export interface Later {
  readonly isNeeded: (typed: Typed) => boolean
  readonly areHere: () => boolean
  /** Resolves with whether they came, the same promise each time; undefined on the server, which has them at hand. */
  readonly fetch: () => Promise<boolean> | undefined
}

/** One calculation page, declared once and run on the server and in the browser alike. */
export interface Calculation<V = unknown> {
  /** Last part of its address. */
  readonly name: string
  /** Which materials of content/ the page brings along. */
  uses?(material: { readonly id: string; readonly role: string }): boolean
  /** Sources that steps and figures can name beside those of the materials' properties. */
  readonly sources?: readonly string[]
  /** Vocabularies of content/ whose labels it shows, for example `measured-states`. */
  readonly vocabularies?: readonly string[]
  /** Sums that a browser fetches once they are needed. */
  readonly later?: Later
  /** The fields, in order; what is asked may follow from what was chosen. */
  fields(typed: Typed, data: BenchData): readonly FieldAsked[]
  /** Calls the sums. */
  work(given: Given, data: BenchData): Outcome<V> | Refused
  /** What to show of it, in words of the catalogue. */
  show(value: V, given: Given, data: BenchData): Shown
}

/** A calculation of any value, as lists hold it. */
// biome-ignore lint/suspicious/noExplicitAny: the value never leaves its own calculation
export type AnyCalculation = Calculation<any>

/** Names that the frame itself uses in the address, beside `in`, which only a sent form has. */
export const FRAME_NAMES = ['units', 'show', 'working', 'label', 'ed', 'sums', 'is'] as const
