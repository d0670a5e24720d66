import type { CitationField, Parts } from '#lib/entry/fields.ts'
import type { Measure, MeasuredState, Role, Standing, Use } from '#lib/entry/terms.ts'
import type { Properties } from '#lib/mortar/material.ts'
import type { Basis } from '#lib/mortar/range.ts'
import type { TERM_FIGURES } from './schemas.ts'

/** A bibliographic item in CSL-JSON (the fields we use), as content/sources keeps it. */
export interface Source {
  readonly id: string
  readonly type: string
  readonly title: string
  readonly author?: readonly {
    readonly family?: string
    readonly given?: string
    readonly literal?: string
  }[]
  readonly issued?: { readonly 'date-parts': readonly (readonly number[])[]; readonly circa?: boolean }
  readonly publisher?: string
  readonly 'publisher-place'?: string
  readonly 'container-title'?: string
  readonly edition?: string
  readonly volume?: string
  readonly page?: string
  readonly number?: string
  readonly DOI?: string
  readonly ISBN?: string
  readonly URL?: string
  readonly language?: string
  readonly note?: string
}

/** One ingredient of a row of a proportion table; `parts` null where the source gives none. */
export interface RowIngredient {
  readonly material: string
  readonly role: Role
  readonly parts: Parts | null
  readonly by: Measure
  readonly state: MeasuredState
}

export interface TableRow {
  readonly id: string
  /** `table-id#row-id`. */
  readonly ref: string
  readonly table: string
  readonly label: string
  readonly region: string
  /** Period in words, and the years it spans for sorting and charts (negative: BC). */
  readonly period: string
  readonly from: number
  readonly to: number
  readonly uses: readonly Use[]
  /** What was measured and in which state, in words close to the source's sense. */
  readonly measured: string
  readonly ingredients: readonly RowIngredient[]
  readonly additions?: string
  readonly notes?: string
  /** Why the reading is in doubt, where it is. */
  readonly ambiguous?: string
  /** Ref of the row this one descends from; not an independent witness. */
  readonly ancestor?: string
  readonly basis: Basis
  readonly standing: Standing
  readonly standingReason?: string
  readonly citation: CitationField & { readonly locator: string }
}

export interface ProportionTable {
  readonly id: string
  readonly title: string
  /** Plain-text paragraphs before the table. */
  readonly intro: readonly string[]
  readonly rows: readonly TableRow[]
}

export interface Material {
  readonly id: string
  readonly label: string
  readonly role: Role
  readonly description: string
  /** What it is called elsewhere: BCP 47 tag → names. */
  readonly names: Readonly<Record<string, readonly string[]>>
  readonly properties: Properties
  /** Ids of content/cautions. */
  readonly cautions: readonly string[]
  /** A mix is never offered more freely than its worst material. */
  readonly standing: Standing
  /** Given unless in use. */
  readonly standingReason?: string
}

/** A figure told of a kind of stone or other unit, in the unit that {@link TERM_FIGURES} names. */
export interface TermFigure {
  readonly what: keyof typeof TERM_FIGURES
  readonly low: number
  readonly high: number
  readonly average?: number
  readonly basis: Basis
  readonly source?: string
  readonly note?: string
  readonly es?: { readonly note: string }
}

/** What a thing is called elsewhere: BCP 47 tag → name, or names with the usual one first. */
export type Labels = Readonly<Record<string, string | readonly string[]>>

/** What a list of terms is, and where it comes from, for those that say so. */
export interface VocabularyHead {
  readonly title: string
  readonly note?: string
  readonly es?: { readonly title: string; readonly note?: string }
}

export interface Term {
  readonly id: string
  readonly label: string
  /** Names of the trade for the same thing. */
  readonly also?: readonly string[]
  readonly definition?: string
  /** Id of the broader term in the same vocabulary. */
  readonly broader?: string
  /** Identifier in an open vocabulary. */
  readonly uri?: string
  readonly es?: { readonly definition: string }
  readonly labels?: Labels
  readonly source?: string
  /** Kept for later use: nothing in content or demo names it yet. */
  readonly reserved?: boolean
  readonly figures?: readonly TermFigure[]
}

/** What a caution says, in one language. */
export interface CautionWords {
  readonly title: string
  /** The short notice shown beside the work. */
  readonly notice: string
  /** Plain-text paragraphs. */
  readonly body: readonly string[]
}

/** A caution, its words in English; pages say them through `cautionWords`. */
export interface Caution extends CautionWords {
  readonly id: string
  /** Place among the cautions, the gravest first. */
  readonly order: number
  /** The same words in Spanish, paragraph by paragraph. */
  readonly es: CautionWords
  readonly sources: readonly CitationField[]
  /** Materials, uses and methods that must show it. */
  readonly appliesTo: {
    readonly materials: readonly string[]
    readonly roles: readonly Role[]
    readonly uses: readonly Use[]
    readonly methods: readonly string[]
    /** States in which a material does not bring it, though it is named here or names this caution. */
    readonly exceptStates: readonly MeasuredState[]
  }
}

/** A word of the trade. */
export interface GlossaryTerm {
  readonly id: string
  readonly term: string
  /** Other English names, for search and hints. */
  readonly also: readonly string[]
  readonly definition: string
  /** Ids of related terms. */
  readonly see: readonly string[]
  readonly es?: { readonly definition: string }
  readonly labels?: Labels
}

/** Words of a guide; `to` where they lead to another page. */
export interface GuideText {
  readonly text: string
  readonly to?: LinkTarget
}

/** Where a guide sends its reader. `anchor` is a row's id. */
export interface LinkTarget {
  readonly collection: 'tables' | 'guides' | 'cautions' | 'sources' | 'elsewhere'
  /** Id in the collection; the address itself when elsewhere. */
  readonly id: string
  readonly anchor?: string
}

export type GuideBlock =
  | {
      readonly kind: 'heading'
      /** Its place in the page's address, the same in every language. */
      readonly id: string
      readonly text: string
    }
  | { readonly kind: 'paragraph'; readonly words: readonly GuideText[] }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly GuideText[])[] }

/** What a guide says, in one language. */
export interface GuideWords {
  readonly title: string
  readonly summary: string
  readonly blocks: readonly GuideBlock[]
}

/** A short page that explains one thing to do. */
export interface Guide extends GuideWords {
  readonly id: string
  /** The same in Spanish, block by block. */
  readonly es: GuideWords
  /** Place among the guides, from 1. */
  readonly order: number
  readonly sources: readonly CitationField[]
  /** Ids of content/cautions that stand on the page. */
  readonly cautions: readonly string[]
}

/** All reviewed text, checked and frozen. Maps keep the order of the files. */
export interface Content {
  /** First 12 hex digits of the SHA-256 of all that figures are made from. */
  readonly edition: string
  readonly sources: ReadonlyMap<string, Source>
  readonly tables: ReadonlyMap<string, ProportionTable>
  readonly rows: ReadonlyMap<string, TableRow>
  readonly materials: ReadonlyMap<string, Material>
  /** Vocabulary id → its terms by id. Ids: units, wall-types, uses, families, methods… as lib/entry/terms. */
  readonly vocabularies: ReadonlyMap<string, ReadonlyMap<string, Term>>
  readonly vocabularyHeads: ReadonlyMap<string, VocabularyHead>
  readonly cautions: ReadonlyMap<string, Caution>
  readonly glossary: ReadonlyMap<string, GlossaryTerm>
  /** In the order they are read. */
  readonly guides: ReadonlyMap<string, Guide>
}

/** One fault in a content file, as a compiler would print it. */
export interface ContentFault {
  readonly file: string
  readonly line: number
  readonly column: number
  readonly reason: string
}
