import {
  bulkPropertyOf,
  type IngredientInput,
  type IngredientRole,
  type IngredientState,
  type Materials,
  type PlannedIngredient,
  type PlannedProperties,
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

/**
 * Places of what the sums of recipes and jobs read of a lime, and of everything else. All names stand in one
 * literal: an object that grows name by name is read several times slower, in every draw.
 */
function planProperties(
  { material, role }: IngredientInput,
  properties: Properties,
  vars: Variables,
  check: Inspection,
): PlannedProperties {
  const place = (name: PropertyName, read: boolean) => {
    const value = properties[name]
    if (!read || value === undefined) return ABSENT
    const field = `materials.${material}.${name}`
    check.range(field, value, PROPERTY_LIMITS[name])
    return vars.add(field, value)
  }
  const lime = role === 'lime'
  const places: PlannedProperties = {
    freeCaO: place('freeCaO', lime),
    freeMgO: place('freeMgO', lime),
    bulkDensityLump: place('bulkDensityLump', lime),
    bulkDensityGround: place('bulkDensityGround', lime),
    bulkDensityHydrate: place('bulkDensityHydrate', lime),
    puttyDensity: place('puttyDensity', lime),
    particleDensityHydrate: place('particleDensityHydrate', lime),
    bulkDensity: place('bulkDensity', !lime),
    particleDensity: place('particleDensity', !lime),
    voids: place('voids', !lime),
    bulkingPeak: place('bulkingPeak', !lime),
    bulkingPeakMoisture: place('bulkingPeakMoisture', !lime),
    saturationMoisture: place('saturationMoisture', !lime),
    clayFraction: place('clayFraction', !lime),
    heatCapacity: place('heatCapacity', !lime),
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

/**
 * Notes sand or earth said to hold more water than it can, where that is known.
 *
 * @param moisture kg of water per kg dry
 */
export function refuseOversaturated(
  ingredients: readonly PlannedIngredient[],
  materials: Materials,
  moisture: number,
  check: Inspection,
): void {
  for (const { material, role } of ingredients) {
    if (role !== 'aggregate' && role !== 'earth') continue
    const saturation = materials[material]?.saturationMoisture
    if (saturation !== undefined && moisture > saturation.high)
      check.refuse({
        field: 'sandMoisturePercent',
        code: 'too-large',
        value: moisture * 100,
        limit: saturation.high * 100,
        unit: '%',
      })
  }
}

/** By mass a lime needs no bulk density, but putty's solids come from its density. */
function limeStates({ by, state }: IngredientInput, property: PlannedProperties): LimeState[] {
  if ((LIME_STATES as readonly string[]).includes(state)) return [state as LimeState]
  const usable = (candidate: LimeState) =>
    property[bulkPropertyOf(candidate)] !== ABSENT || (by === 'mass' && candidate !== 'putty')
  const candidates = CANDIDATES[state] ?? LIME_STATES
  const usableOnes = candidates.filter(usable)
  return usableOnes.length > 0 ? usableOnes : [candidates[0] as LimeState]
}

function requireProperties(ingredient: PlannedIngredient, check: Inspection): void {
  const missing = (name: keyof PlannedProperties) => {
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
