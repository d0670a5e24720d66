import type { Inspection } from './inspect.ts'
import { PROPERTY_LIMITS, PROPERTY_UNITS, type Properties, type PropertyName } from './material.ts'
import { exactly, type Range } from './range.ts'

/**
 * A property that a sum cannot do without. Notes `empty` where the material does not have it, and what
 * is wrong with it where nature does not allow it.
 *
 * @param field path of the material in the input, for example `lime`
 */
export function need(check: Inspection, field: string, properties: Properties, name: PropertyName): Range {
  const property = properties[name]
  if (property === undefined) {
    check.refuse({ field: `${field}.${name}`, code: 'empty', unit: PROPERTY_UNITS[name] })
    return exactly(1)
  }
  check.range(`${field}.${name}`, property, PROPERTY_LIMITS[name])
  return property
}
