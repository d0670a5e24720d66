import {
  bulkPropertyOf,
  type IngredientInput,
  type IngredientRole,
  type IngredientState,
  type Materials,
  type PlannedIngredient,
  partsRange,
} from './ingredient.ts'
import type { Inspection } from './inspect.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import { PROPERTY_LIMITS, type Properties, type PropertyName } from './material.ts'
import { ABSENT, type Variables } from './variables.ts'

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
    const states = input.role === 'lime' ? limeStates(input, property) : []
    const planned = {
      index,
      material: input.material,
      role: input.role,
      by: input.by,
      state: input.state,
      limeStates: states,
      limeBulks: states.map((state) => property[bulkPropertyOf(state)]),
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
    property[bulkPropertyOf(candidate)] !== ABSENT || (by === 'mass' && candidate !== 'putty')
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
      if (ingredient.by === 'volume' || state === 'putty') missing(bulkPropertyOf(state))
  } else if (BODIES.includes(ingredient.role)) {
    missing('bulkDensity')
  }
}
