import type { Properties, PropertyName } from '#lib/mortar/material.ts'
import { PROPERTY_UNITS } from '#lib/mortar/material.ts'
import { exactly } from '#lib/mortar/range.ts'
import type { Grading, SieveInput } from '#lib/mortar/sieve.ts'
import type { RangedCurve } from '#lib/mortar/sieve-limits.ts'

/** A stack from its openings and the masses on them, the pan's last. */
export const grade = (openings: readonly number[], retained: readonly number[]): SieveInput => ({
  sieves: openings.map((openingMm, i) => ({ openingMm, retainedG: retained[i] ?? 0 })),
  panG: retained[openings.length] ?? 0,
})

/** A curve known exactly. */
export const curveOf = (openings: readonly number[], passing: readonly number[]): RangedCurve =>
  openings.map((openingMm, i) => ({ openingMm, passing: exactly(passing[i] ?? 0) }))

export const passingOf = (grading: Grading, row: number): number =>
  grading.rows[row]?.passing.typical ?? Number.NaN

/** A lime with densities that the lime dossier's worked examples take; any can be set. */
export function limeOf(set: Partial<Record<PropertyName, number>>): Properties {
  const figures: Partial<Record<PropertyName, number>> = {
    freeCaO: 1,
    bulkDensityLump: 850,
    bulkDensityGround: 1200,
    bulkDensityHydrate: 480,
    puttyDensity: 1350,
    particleDensityHydrate: 2240,
    ...set,
  }
  const entries = Object.entries(figures) as [PropertyName, number][]
  return Object.fromEntries(
    entries.map(([name, figure]) => [
      name,
      { ...exactly(figure), unit: PROPERTY_UNITS[name], basis: 'read' as const },
    ]),
  )
}
