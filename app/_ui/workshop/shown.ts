import type { ReactNode } from 'react'
import type { Drawn } from '#lib/entry/kept-drawn.ts'
import type { Step } from '#lib/mortar/explain.ts'
import type { Basis, Range } from '#lib/mortar/range.ts'
import type { NoticeKind } from '../notice.tsx'

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
