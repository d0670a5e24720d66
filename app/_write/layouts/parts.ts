/** Items of a list, each with these parts; `items: 'kept'` shows those there are and lets no other be added. */
export interface ListPart {
  readonly list: string
  readonly parts: readonly Part[]
  /** How many blank ones stand ready. */
  readonly ready?: number
  readonly items?: 'kept'
}

/** A field by its path in the body (in an item: from the item), or a list. */
export type Part = string | ListPart

/** One page of a form. */
export interface Step {
  readonly id: string
  readonly parts: readonly Part[]
  /** An entry cannot be sent without it. */
  readonly needed?: true
}

/** A form in its steps; the last one, `check`, sends it. */
export type Layout = readonly Step[]

/** What every form asks last. */
export const LAST = ['interests', 'rights.licence', 'entry.slug', 'entry.note'] as const

/** What a laboratory reported, of a recipe or of a material. */
export const LABORATORY: ListPart = {
  list: 'laboratory',
  parts: [
    'property',
    'value',
    'value.typical',
    'method',
    'ageDays',
    'specimens',
    'source.source',
    'source.locator',
    'note',
  ],
  ready: 1,
}

/** Kept sheets that what is told was worked out on; their figures are copied once one is chosen. */
export const SHEETS: ListPart = { list: 'sheets', parts: ['sheet', 'of'], ready: 1 }
