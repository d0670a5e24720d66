import { PROPERTY_LIMITS, PROPERTY_UNITS, type Properties, type PropertyName } from '#lib/mortar/material.ts'
import { locale, type Messages, words } from '../../_words/index.ts'
import { type AmountAsked, usualOf } from './asked.ts'
import type { BenchMaterial } from './brought.ts'
import type { Given } from './calculation.ts'

type Named = PropertyName & keyof Messages['terms']['property']

/** What a lime is reckoned with where all four of its states are wanted. */
export const LIME_FIGURES = [
  'freeCaO',
  'bulkDensityLump',
  'bulkDensityGround',
  'bulkDensityHydrate',
  'puttyDensity',
  'particleDensityHydrate',
] as const

/** `freeCaO` of lime → `lime-free-cao`. */
const fieldOf = (key: string, property: string) =>
  `${key}-${property.replace(/[A-Z][a-z]*O?/g, (word) => `-${word.toLowerCase()}`)}`

/**
 * Fields for a material's figures, each with the material's own where it is left blank.
 *
 * @param key as the sums are given the material: faults on `materials.{key}.{property}` stand at its field
 */
export const ownFigures = (
  key: string,
  material: BenchMaterial | undefined,
  properties: readonly Named[],
  group: string,
): AmountAsked[] =>
  properties.map((property) => {
    const unit = PROPERTY_UNITS[property]
    return {
      kind: 'amount',
      name: fieldOf(key, property),
      path: `materials.${key}.${property}`,
      label: words('workOut')('own', {
        material: material?.label ?? '',
        property: capital(words('terms')(`property.${property}`)),
      }),
      group,
      folded: true,
      unit,
      ...(unit === '1' && { asks: '%' }),
      usual: usualOf(material, property),
      limits: PROPERTY_LIMITS[property],
    }
  })

/** A material's figures with those typed in {@link ownFigures} in place of its own. */
export function propertiesOf(
  key: string,
  material: BenchMaterial | undefined,
  properties: readonly Named[],
  given: Given,
): Properties {
  const own = properties.flatMap((property) => {
    const name = fieldOf(key, property)
    const amount = given.amount(name)
    return given.typed(name) && amount
      ? [[property, { ...amount, unit: PROPERTY_UNITS[property], basis: 'measured' }] as const]
      : []
  })
  return { ...material?.properties, ...Object.fromEntries(own) }
}

const capital = (text: string) => text.charAt(0).toLocaleUpperCase(locale()) + text.slice(1)
