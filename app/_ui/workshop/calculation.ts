import type { ReactNode } from 'react'
import type { Drawn } from '#lib/entry/kept-drawn.ts'
import type { FieldFault } from '#lib/errors.ts'
import type { Step } from '#lib/mortar/explain.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Limits } from '#lib/mortar/inspect.ts'
import type { LimeState } from '#lib/mortar/lime.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Basis, Range } from '#lib/mortar/range.ts'
import type { Typed } from '../../_http/form.ts'
import type { Option } from '../field.tsx'
import type { NoticeKind } from '../notice.tsx'

/** Units that a page asks and answers in. */
export const SYSTEMS = ['metric', 'us'] as const
export type System = (typeof SYSTEMS)[number]

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

/** A material as the pages know it; only figures, label and role travel to the browser. */
export interface BenchMaterial {
  readonly label: string
  readonly role: string
  readonly properties: Properties
}

/** A proportion that the site holds, to be found near what was worked out: aggregate by volume to one of lime. */
export interface HeldRatio {
  readonly id: string
  readonly label: string
  readonly href: string
  readonly state: LimeState
  readonly aggregatePerLime: Range
  readonly invented?: boolean
}

/** What a page brings along for its sums beside what is typed. */
export interface BenchData {
  readonly materials: Readonly<Record<string, BenchMaterial>>
  /** Short citations of the sources that can show, by id. */
  readonly cites: Readonly<Record<string, string>>
  /** Labels of the vocabularies that the calculation names, by vocabulary and id. */
  readonly terms: Readonly<Record<string, Readonly<Record<string, string>>>>
  /** What the site holds today, where a page shows what lies near its result. */
  readonly held?: readonly HeldRatio[]
}

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

/** A figure that a page shows, downloads and signs with its digest. */
export interface Figure {
  /** As downloads name it: kebab-case, once a block. */
  readonly name: string
  readonly label: string
  /** Null prints as not known. */
  readonly value: Range | number | null
  readonly unit: string
  /** `ratio` prints 1 : 3.1; `money` to the hundredth, in a currency that its label names. */
  readonly as?: 'ratio' | 'money'
  /** Water and the like: gallons, not cubic feet. */
  readonly liquid?: boolean
  /** Kept metric in every system. */
  readonly bench?: boolean
  readonly basis?: Basis
  readonly source?: string | undefined
  readonly note?: string
}

/** Words with where they come from. */
export interface Said {
  readonly words: string
  readonly basis?: Basis
  readonly source?: string | undefined
}

/** What a cell of a table holds: a figure or words. */
export type Cell = Omit<Figure, 'name' | 'label'> | Said | string | null

/** The words of a cell that holds no figure. */
export const wordsOf = (cell: Cell | undefined): string | undefined =>
  typeof cell === 'string' ? cell : cell && 'words' in cell ? cell.words : undefined

/** One part of a result, in the order of the page. */
export type Block =
  | {
      readonly kind: 'figures'
      readonly name: string
      readonly title: string
      readonly lead?: string
      readonly figures: readonly Figure[]
    }
  | {
      readonly kind: 'table'
      readonly name: string
      readonly title: string
      readonly lead?: string
      /** Heads of the columns by key, the first naming the rows. */
      readonly columns: readonly { readonly key: string; readonly head: string; readonly words?: boolean }[]
      readonly rows: readonly {
        readonly name: string
        readonly cells: Readonly<Record<string, Cell>>
      }[]
      /** Words that wrap stack on narrow screens; figures scroll. */
      readonly stack?: boolean
      /** Key of the column whose ranges are drawn too, all on one scale. */
      readonly bars?: string
    }
  | { readonly kind: 'notice'; readonly tone: NoticeKind; readonly title?: string; readonly text: string }
  | { readonly kind: 'note'; readonly text: string; readonly link?: { href: string; words: string } }
  | {
      /** Pages of the site that lie near: they change with the site and are no part of the figures' digest. */
      readonly kind: 'links'
      readonly title: string
      readonly lead?: string
      readonly links: readonly { readonly href: string; readonly words: string; readonly note: string }[]
    }
  | {
      readonly kind: 'drawing'
      readonly name: string
      readonly title: string
      /** What the drawing shows, in words. */
      readonly says: string
      readonly draw: ReactNode
      /** The numbers that it is drawn from: a kept sheet keeps these. */
      readonly drawn: Drawn
    }

/** What a page shows of a value: parts, and the working behind them. */
export interface Shown {
  readonly blocks: readonly Block[]
  readonly steps: readonly Step[]
}

/** What a page itself refuses of its form, in words that the sums do not have. */
export interface Refused {
  readonly ok: false
  readonly faults: readonly FieldFault[]
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

/** A term's label as the page brought it along. */
export const termLabel = (data: BenchData, vocabulary: string, id: string): string =>
  data.terms[vocabulary]?.[id] ?? id

/** Common practice, named as such. */
export const practice = (low: number, typical: number, high: number): Usual => ({
  low,
  typical,
  high,
  basis: 'practice',
})
