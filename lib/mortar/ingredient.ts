import type { LimeState } from './lime.ts'
import type { Properties, PropertyName } from './material.ts'
import type { Range } from './range.ts'

export type IngredientRole =
  | 'lime'
  | 'aggregate'
  | 'pozzolan'
  | 'earth'
  | 'cement'
  | 'gypsum'
  | 'fibre'
  | 'additive'
  | 'pigment'
  | 'water'

/** The state in which an ingredient was measured; the last five leave something open or are no lime. */
export type IngredientState =
  | LimeState
  | 'slaked-not-stated'
  | 'quicklime-not-stated'
  | 'dry'
  | 'damp'
  | 'not-stated'

/** Parts as stated: one figure or a range; `typical` only where the source names one. */
export interface Parts {
  readonly low: number
  readonly typical?: number | undefined
  readonly high: number
}

/** One ingredient of a recipe or of a row of a table. Parts by volume are litres, by mass kilograms. */
export interface IngredientInput {
  readonly material: string
  readonly role: IngredientRole
  /** Null where a source names the ingredient without its quantity: it stays out of the sums. */
  readonly parts: Parts | null
  readonly by: 'volume' | 'mass'
  readonly state: IngredientState
}

/** Material id → its properties. */
export type Materials = Readonly<Record<string, Properties>>

/** Parts as a range; without a typical figure the middle is taken. */
export const partsRange = ({ low, typical, high }: Parts): Range => ({
  low,
  typical: typical ?? (low + high) / 2,
  high,
})

/** Place of each property that recipes and jobs read, `ABSENT` where the material has none. */
export type PlannedProperties = Readonly<
  Record<
    | BulkProperty
    | 'freeCaO'
    | 'freeMgO'
    | 'particleDensityHydrate'
    | 'bulkDensity'
    | 'particleDensity'
    | 'voids'
    | 'bulkingPeak'
    | 'bulkingPeakMoisture'
    | 'saturationMoisture'
    | 'clayFraction'
    | 'heatCapacity',
    number
  >
>

/** An ingredient whose every number has its place among the variables. */
export interface PlannedIngredient {
  readonly index: number
  readonly material: string
  readonly role: IngredientRole
  readonly by: 'volume' | 'mass'
  readonly state: IngredientState
  /** States that a lime may have been measured in: one where it is stated. Empty for all else. */
  readonly limeStates: readonly LimeState[]
  /** Place of the bulk density in each of those states. */
  readonly limeBulks: readonly number[]
  readonly parts: number
  readonly property: PlannedProperties
}

const BULK_OF = {
  'lump-quicklime': 'bulkDensityLump',
  'ground-quicklime': 'bulkDensityGround',
  'dry-hydrate': 'bulkDensityHydrate',
  putty: 'puttyDensity',
} as const satisfies Record<LimeState, PropertyName>
export type BulkProperty = (typeof BULK_OF)[LimeState]

/** The property that a lime must have to be measured by volume in a state. */
export const bulkPropertyOf = (state: LimeState): BulkProperty => BULK_OF[state]
