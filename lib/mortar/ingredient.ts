import type { Inspection } from './inspect.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import { PROPERTY_LIMITS, type Properties, type PropertyName } from './material.ts'
import type { Range } from './range.ts'
import { ABSENT, type Variables } from './variables.ts'

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

/** An ingredient whose every number has its place among the variables. */
export interface PlannedIngredient {
  readonly index: number
  readonly material: string
  readonly role: IngredientRole
  readonly by: 'volume' | 'mass'
  readonly state: IngredientState
  /** States that a lime may have been measured in: one where it is stated. Empty for all else. */
  readonly limeStates: readonly LimeState[]
  readonly parts: number
  /** Place of each property, {@link ABSENT} where the material has none. */
  readonly property: Readonly<Record<PropertyName, number>>
}

const BULK_OF: Record<LimeState, PropertyName> = {
  'lump-quicklime': 'bulkDensityLump',
  'ground-quicklime': 'bulkDensityGround',
  'dry-hydrate': 'bulkDensityHydrate',
  putty: 'puttyDensity',
}

/** The property that a lime must have to be measured by volume in a state. */
export const bulkPropertyOf = (state: LimeState): PropertyName => BULK_OF[state]

/** Roles that carry mass and volume in every sum, so that an unknown bulk density is refused. */
const BODIES: readonly IngredientRole[] = ['aggregate', 'pozzolan', 'earth', 'cement', 'gypsum']

/**
 * Checks the ingredients and gives every number a place; notes all faults on the way.
 *
 * Fields are named `ingredients.0.parts`, `ingredients.0.material`, `materials.<id>.<property>`.
 */
export function planIngredients(
  inputs: readonly IngredientInput[],
  materials: Materials,
  vars: Variables,
  check: Inspection,
): PlannedIngredient[] {
  if (inputs.length === 0) check.refuse({ field: 'ingredients', code: 'empty' })
  return inputs.flatMap((input, index) => {
    if (input.parts === null) return []
    const properties = Object.hasOwn(materials, input.material) ? materials[input.material] : undefined
    if (properties === undefined) {
      check.refuse({ field: `ingredients.${index}.material`, code: 'unknown', value: input.material })
      return []
    }
    const parts = partsRange(input.parts)
    check.range(`ingredients.${index}.parts`, parts, { above: 0, max: 1e6 })
    const property = planProperties(input, properties, vars, check)
    const planned = {
      index,
      material: input.material,
      role: input.role,
      by: input.by,
      state: input.state,
      limeStates: input.role === 'lime' ? limeStates(input, property) : [],
      parts: vars.add(`ingredients.${index}.parts`, parts),
      property,
    }
    requireProperties(planned, check)
    return [planned]
  })
}

/** What the sums of recipes and jobs read of a lime, and of everything else. */
const LIME_PROPERTIES: readonly PropertyName[] = [
  'freeCaO',
  'freeMgO',
  'bulkDensityLump',
  'bulkDensityGround',
  'bulkDensityHydrate',
  'puttyDensity',
  'particleDensityHydrate',
]
const OTHER_PROPERTIES: readonly PropertyName[] = [
  'bulkDensity',
  'particleDensity',
  'voids',
  'bulkingPeak',
  'bulkingPeakMoisture',
  'saturationMoisture',
  'clayFraction',
  'heatCapacity',
]

function planProperties(
  { material, role }: IngredientInput,
  properties: Properties,
  vars: Variables,
  check: Inspection,
) {
  const places = {} as Record<PropertyName, number>
  for (const name of Object.keys(PROPERTY_LIMITS) as PropertyName[]) places[name] = ABSENT
  for (const name of role === 'lime' ? LIME_PROPERTIES : OTHER_PROPERTIES) {
    const value = properties[name]
    if (value === undefined) continue
    const field = `materials.${material}.${name}`
    check.range(field, value, PROPERTY_LIMITS[name])
    places[name] = vars.add(field, value)
  }
  const { bulkingPeakMoisture: peak, saturationMoisture: saturation } = properties
  if (peak !== undefined && saturation !== undefined && peak.typical >= saturation.typical)
    check.refuse({
      field: `materials.${material}.saturationMoisture`,
      code: 'too-small',
      value: saturation.typical,
      limit: peak.typical,
    })
  return places
}

const CANDIDATES: Partial<Record<IngredientState, readonly LimeState[]>> = {
  'slaked-not-stated': ['dry-hydrate', 'putty'],
  'quicklime-not-stated': ['lump-quicklime', 'ground-quicklime'],
}

/** By mass a lime needs no bulk density, but putty's solids come from its density. */
function limeStates({ by, state }: IngredientInput, property: Record<PropertyName, number>): LimeState[] {
  if ((LIME_STATES as readonly string[]).includes(state)) return [state as LimeState]
  const usable = (candidate: LimeState) =>
    property[BULK_OF[candidate]] !== ABSENT || (by === 'mass' && candidate !== 'putty')
  const candidates = CANDIDATES[state] ?? LIME_STATES
  const usableOnes = candidates.filter(usable)
  return usableOnes.length > 0 ? usableOnes : [candidates[0] as LimeState]
}

function requireProperties(ingredient: PlannedIngredient, check: Inspection): void {
  const missing = (name: PropertyName) => {
    if (ingredient.property[name] === ABSENT)
      check.refuse({ field: `materials.${ingredient.material}.${name}`, code: 'unknown' })
  }
  if (ingredient.role === 'lime') {
    missing('freeCaO')
    for (const state of ingredient.limeStates)
      if (ingredient.by === 'volume' || state === 'putty') missing(BULK_OF[state])
  } else if (BODIES.includes(ingredient.role)) {
    missing('bulkDensity')
  }
}
