import { materialBy } from '#lib/content/known-materials.ts'
import type { RecipeBody } from '#lib/entry/recipe.ts'
import type { Role } from '#lib/entry/terms.ts'
import { ASSUMED, type Assumption } from '#lib/mortar/assumptions.ts'
import { PROPERTY_UNITS, type PropertyName } from '#lib/mortar/material.ts'
import type { Property } from '#lib/mortar/range.ts'
import { type AmountField, asPercent, kebab } from './fields.ts'

/** Figures of a lime that a job may turn on. */
const OF_LIME = [
  'freeCaO',
  'bulkDensityLump',
  'bulkDensityGround',
  'bulkDensityHydrate',
  'puttyDensity',
  'particleDensityHydrate',
] as const satisfies readonly PropertyName[]

const OF_POWDER = ['bulkDensity', 'particleDensity', 'voids'] as const satisfies readonly PropertyName[]

/** Figures of what lies in a heap. */
const OF_HEAP = [
  ...OF_POWDER,
  'bulkingPeak',
  'bulkingPeakMoisture',
  'saturationMoisture',
  'clayFraction',
  'heatCapacity',
] as const satisfies readonly PropertyName[]

const PROPERTIES: Partial<Record<Role, readonly PropertyName[]>> = {
  lime: OF_LIME,
  aggregate: OF_HEAP,
  earth: OF_HEAP,
  pozzolan: OF_POWDER,
  cement: OF_POWDER,
  gypsum: OF_POWDER,
}

/** What the address calls the field that replaces a figure: `materials.<id>.<property>` or `assumed.<name>`. */
export const ownName = (figure: string): string => {
  const [group, name = '', property = ''] = figure.split('.')
  return group === 'assumed' ? `assumed-${kebab(name)}` : `own-${name}-${kebab(property)}`
}

/** A share is asked for in per cent. */
const asked = (unit: string) => (unit === '1' || unit === 'kg/kg' ? { unit: '%', sumsUnit: '1' } : { unit })

/** A figure that is taken where nothing is typed, without being part of the request. */
const known = (property: Property | undefined, unit: string) =>
  property && { known: asked(unit).unit === '%' ? asPercent(property) : property }

/** For each material of a recipe the fields of one's own figures in place of what is known of it. */
export function ownFields(recipe: RecipeBody): { material: string; fields: AmountField[] }[] {
  const seen = new Set<string>()
  return recipe.ingredients.flatMap(({ material, role }) => {
    const properties = PROPERTIES[role]
    if (!properties || seen.has(material)) return []
    seen.add(material)
    const figures = materialBy(material)?.properties
    const fields = properties.map((property) => ({
      name: ownName(`materials.${material}.${property}`),
      path: `materialFigures.${material}.${property}`,
      ...asked(PROPERTY_UNITS[property]),
      ...known(figures?.[property], PROPERTY_UNITS[property]),
      optional: true,
    }))
    return [{ material, fields }]
  })
}

/** The fields of one's own figures in place of what the sums assume. */
export const assumedFields = (): AmountField[] =>
  (Object.keys(ASSUMED) as Assumption[]).map((name) => ({
    name: ownName(`assumed.${name}`),
    path: `assumed.${name}`,
    ...asked(ASSUMED[name].unit),
    ...known(ASSUMED[name], ASSUMED[name].unit),
    optional: true,
  }))
