import { createHash } from 'node:crypto'
import { PROPERTY_UNITS, type PropertyName } from '#lib/mortar/material.ts'
import type { Material, TableRow } from './types.ts'

const NAMES = Object.keys(PROPERTY_UNITS).sort() as PropertyName[]

/**
 * Names the state of all that figures are made from: the materials' properties and the rows' parts. It
 * changes when a printed figure could, and not when a sentence does.
 */
export function editionOf(materials: Iterable<Material>, rows: Iterable<TableRow>): string {
  const figures = {
    materials: [...materials].map(({ id, role, properties }) => [
      id,
      role,
      ...NAMES.map((name) => {
        const property = properties[name]
        return property ? [property.low, property.typical, property.high] : null
      }),
    ]),
    rows: [...rows].map(({ ref, ingredients, standing }) => [
      ref,
      standing,
      ...ingredients.map(({ material, role, parts, by, state }) => [
        material,
        role,
        parts && [parts.low, parts.typical ?? null, parts.high],
        by,
        state,
      ]),
    ]),
  }
  return createHash('sha256').update(JSON.stringify(figures)).digest('hex').slice(0, 12)
}
