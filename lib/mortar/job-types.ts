import type { Amount } from './amount.ts'
import type { Assumption, OwnAssumptions } from './assumptions.ts'
import type { Batch } from './batch.ts'
import type { Step } from './explain.ts'
import type { IngredientInput, IngredientRole, Materials } from './ingredient.ts'
import type { LimeState } from './lime.ts'
import type { PackOrder } from './packs.ts'
import type { Unknown } from './proportions.ts'
import type { Basis, Range } from './range.ts'
import type { SequenceStep } from './sequence.ts'
import type { Keeping } from './storage.ts'
import type { Work, WorkKind } from './takeoff.ts'

/** How the mortar is made. */
export const METHODS = [
  'hot-mixed-used-hot',
  'hot-mixed-laid-down',
  'sand-slaked',
  'putty',
  'dry-hydrate',
  'bagged-hydraulic',
  'earth-wet-mixed',
  'not-stated',
] as const
export type Method = (typeof METHODS)[number]

/** A piece of work beside the first, with what is lost of its mortar. */
export interface WorkInput {
  readonly work: Work
  readonly lossPercent?: Amount
}

/** A recipe, a piece of work, and what is on site. Only the first four must be given. */
export interface JobInput {
  readonly ingredients: readonly IngredientInput[]
  readonly materials: Materials
  readonly method: Method
  readonly work: Work
  /** Mortar dropped, left in tubs, squeezed into voids: % of what stays in the work. */
  readonly lossPercent?: Amount
  /** More work of the same mortar. */
  readonly furtherWorks?: readonly WorkInput[]
  /** State of the lime on site. Must be given where the recipe leaves it open. */
  readonly limeState?: LimeState
  /** Free CaO of the quicklime on site (or of that its hydrate was made from), %. The material's if absent. */
  readonly limePurityPercent?: Amount
  /** Water in the sand and earth as they lie, % of their dry mass; 0 if absent. */
  readonly sandMoisturePercent?: Amount
  /** Growth of the damp sand found by a jar test, % of its dry volume; from its moisture if absent. */
  readonly sandBulkingPercent?: Amount
  readonly waterC?: Amount
  /** Of sand and lime. */
  readonly sandC?: Amount
  /** Mass of a pack as sold, kg, by material id. */
  readonly packsKg?: Readonly<Record<string, number>>
  /** Price of a pack, in the reader's currency, by material id. */
  readonly packPrices?: Readonly<Record<string, number>>
  readonly gaugeBoxL?: number
  /** Loose volume that the mixer takes. */
  readonly mixerL?: number
  /** The site's own figures in place of what the sums assume. */
  readonly assumed?: OwnAssumptions
  readonly labour?: { readonly hours: Amount; readonly ratePerHour: number }
  readonly draws?: number
}

/** A figure that nobody entered for this job, or that stands in for one: `materials.<id>.<property>`, `assumed.<name>`. */
export interface TakenFigure {
  readonly field: string
  readonly value: Range
  readonly unit: string
  readonly basis: Basis
  readonly source?: string
}

/** One piece of work of the job. */
export interface JobWork {
  readonly kind: WorkKind
  readonly netL: Range
  readonly mortarL: Range
  readonly unitCount: Range | null
}

/** What the job takes of one ingredient. */
export interface JobIngredient {
  /** Place in the input. */
  readonly index: number
  readonly material: string
  readonly role: IngredientRole
  /** As it is measured on site: a lime's state, or `dry` or `damp`. */
  readonly state: LimeState | 'dry' | 'damp'
  /** Loose litres as it lies; null where its bulk density is not known. */
  readonly siteL: Range | null
  /** kg as it lies, its moisture or putty's water with it; null where not known. */
  readonly siteKg: Range | null
  /** Null where no pack size was entered. */
  readonly order: PackOrder | null
  readonly cost: Range | null
}

/** The load to repeat, with what it takes and makes. Its ranges know nothing of how large the work is. */
export interface JobBatch extends Batch {
  /** Water to put in first, litres for one load. */
  readonly firstChargeL: Range
  /** Water for one load altogether, as far as a sum can tell. */
  readonly likelyTotalL: Range
  /** Mortar that one load makes. */
  readonly makesL: Range
}

/** Litres of water for the whole job. */
export interface JobWater {
  /** Bound by quicklime as it slakes. */
  readonly boundL: Range
  /** Free in the mortar at a working consistency. */
  readonly freeL: Range
  /** Lost as steam by the energy balance. */
  readonly boiledL: Range
  /** Already in damp sand and earth. */
  readonly fromSandL: Range
  /** Already in putty. */
  readonly fromLimeL: Range
  /** To be put in first. */
  readonly firstChargeL: Range
  /** To be put in altogether, as far as a sum can tell; the mixer tells the rest. */
  readonly likelyTotalL: Range
}

/** Energy balance of slaking with the first charge. An average that dry spots far exceed. */
export interface JobHeat {
  readonly averageC: Range
  readonly heatKJ: Range
}

export interface JobWarning {
  readonly id: WarningId
  readonly material?: string
  readonly value?: number
  readonly unit?: string
}

export const WARNING_IDS = [
  'average-reaches-boiling',
  'average-may-reach-boiling',
  'slakes-cool',
  'water-short-of-slaking',
  'late-swelling-lumps',
  'late-swelling-coarse-grind',
  'late-swelling-magnesia',
  'trial-pat-first',
  'fibre-not-in-hot-lime',
  'sand-brings-enough-water',
  'box-too-large-for-mixer',
  'box-rounding',
  'shovel-is-no-measure',
  'state-was-not-stated',
  'method-needs-quicklime',
  'grout-must-run',
  'sets-under-water',
  'gauge-once-slaked',
  'purity-differs',
  'property-unknown',
] as const
export type WarningId = (typeof WARNING_IDS)[number]

export interface JobCost {
  readonly materials: Range
  readonly labour: Range | null
  readonly total: Range
}

/** A recipe scaled to a job. All words live in the catalogue: here are ids, numbers and units. */
export interface JobSheet {
  readonly version: number
  /** Mortar in place, of all works together. */
  readonly netL: Range
  /** Mortar to make: in place and lost. */
  readonly mortarL: Range
  /** Bricks in place, where one work tells; where several do, each has its own in `works`. */
  readonly unitCount: Range | null
  /** In the order given. Their ranges don't add up to the whole's: not all of them end high together. */
  readonly works: readonly JobWork[]
  readonly ingredients: readonly JobIngredient[]
  readonly water: JobWater
  /** Null unless quicklime is on site. */
  readonly heat: JobHeat | null
  /** Null without a gauge box and a mixer, or where nothing fits. */
  readonly batch: JobBatch | null
  /** Null unless prices or labour were entered. */
  readonly cost: JobCost | null
  readonly warnings: readonly JobWarning[]
  readonly sequence: readonly SequenceStep[]
  readonly storage: readonly Keeping[]
  /** Ids of cautions that the ingredients and the method call for. */
  readonly cautions: readonly string[]
  readonly unknowns: readonly Unknown[]
  /** Assumed figures that this sheet rests on. */
  readonly assumed: readonly Assumption[]
  /** Figures of materials and assumptions that the results turn on, each with where it comes from. */
  readonly taken: readonly TakenFigure[]
  readonly steps: readonly Step[]
}
