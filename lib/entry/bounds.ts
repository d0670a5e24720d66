import { PROPERTY_LIMITS } from '#lib/mortar/material.ts'
import { comparePlausible, type PlausibleId } from '#lib/mortar/plausible.ts'
import type { Proportions } from '#lib/mortar/proportions.ts'
import type { Basis } from '#lib/mortar/range.ts'
import type { BodyOf, WrittenKind } from './body.ts'
import type { Override } from './common.ts'
import { LAB_UNITS, type LabProperty, type LabResult } from './laboratory.ts'
import type { ReadingKind } from './terms.ts'

/** Where a figure usually lies. Outside it a figure may be right; its author says why. */
interface Bound {
  readonly low: number
  readonly high: number
  readonly unit: string
  readonly basis: Basis
}

const bound = (low: number, high: number, unit: string, basis: Basis = 'practice'): Bound => ({
  low,
  high,
  unit,
  basis,
})

/** Walls, works and mixers: common practice, but the hottest spots that practice reports, which are from memory. */
export const USUAL = {
  thickness: bound(90, 3000, 'mm'),
  area: bound(0.05, 2000, 'm2'),
  moisture: bound(0, 12, '%'),
  hottest: bound(5, 300, 'C', 'memory'),
  hours: bound(0, 26_300, 'h'),
  parts: bound(0.02, 20, '1'),
} as const

/** Field measures in the unit that each is usually printed in; from memory, and so no verdict on anybody. */
export const READING_BOUNDS: Readonly<Record<ReadingKind, Bound>> = {
  'moisture-oven-dry': bound(0, 30, '%', 'memory'),
  'moisture-carbide': bound(0, 30, '%', 'memory'),
  'moisture-meter-relative': bound(0, 200, 'relative', 'memory'),
  'water-uptake-tube': bound(0, 5, 'mL/min', 'memory'),
  'carbonation-depth': bound(0, 300, 'mm', 'memory'),
  'surface-hardness': bound(0, 100, 'rebound', 'memory'),
  'joint-loss-depth': bound(0, 150, 'mm'),
}

/** What laboratories report of mortars and of what goes into them; from memory. */
export const LAB_BOUNDS: Readonly<Record<LabProperty, Bound>> = {
  compressiveStrength: bound(0.1, 25, LAB_UNITS.compressiveStrength, 'memory'),
  flexuralStrength: bound(0.05, 8, LAB_UNITS.flexuralStrength, 'memory'),
  bulkDensity: bound(900, 2600, LAB_UNITS.bulkDensity, 'memory'),
  openPorosity: bound(5, 55, LAB_UNITS.openPorosity, 'memory'),
  capillarity: bound(0.05, 5, LAB_UNITS.capillarity, 'memory'),
  vapourResistance: bound(3, 60, LAB_UNITS.vapourResistance, 'memory'),
  chloride: bound(0, 2, LAB_UNITS.chloride, 'memory'),
  sulfate: bound(0, 5, LAB_UNITS.sulfate, 'memory'),
  nitrate: bound(0, 2, LAB_UNITS.nitrate, 'memory'),
  carbonationDepth: bound(0, 300, LAB_UNITS.carbonationDepth, 'memory'),
}

/** A figure that lies outside what is usual: worth a second look, no more. */
export interface Finding extends Bound {
  readonly id: 'unusual' | 'impossible' | PlausibleId
  /** Path of the field in the body. */
  readonly field: string
  /** What was given; of a range the end that lies outside. */
  readonly value: number
  /** Why its author stands by it, where they said so. */
  readonly reason?: string
}

type Given = readonly [field: string, value: number | undefined, bound: Bound]

/**
 * Every figure of a body that lies outside the bounds of practice, with the reason its author gave for it.
 *
 * @param found a recipe's proportions as the sums work them out, for the bounds of its family
 */
export function findingsOf<K extends WrittenKind>(
  kind: K,
  body: BodyOf<K>,
  found?: Proportions | undefined,
): readonly Finding[] {
  const findings = FINDERS[kind](body, found)
  const reasons = new Map((body.overrides ?? []).map(({ field, reason }: Override) => [field, reason]))
  return findings.map((finding) => {
    const reason = reasons.get(finding.field)
    return reason === undefined ? finding : { ...finding, reason }
  })
}

const FINDERS: {
  readonly [K in WrittenKind]: (body: BodyOf<K>, found: Proportions | undefined) => readonly Finding[]
} = {
  case: ({ fabric, works }) =>
    outside([
      ['fabric.thicknessMm', fabric.thicknessMm, USUAL.thickness],
      ...works.flatMap(({ areaM2, mixed }, i): Given[] => [
        [`works.${i}.areaM2`, areaM2, USUAL.area],
        [`works.${i}.mixed.sandMoisturePercent`, mixed?.sandMoisturePercent, USUAL.moisture],
        [`works.${i}.mixed.hottestC`, mixed?.hottestC, USUAL.hottest],
        [`works.${i}.mixed.hoursToUse`, mixed?.hoursToUse, USUAL.hours],
        ...partsOf(`works.${i}.mixed.ingredients`, mixed?.ingredients ?? []),
      ]),
    ]),
  visit: ({ readings }) =>
    outside(
      readings.flatMap(({ kind, value, unit }, i): Given[] =>
        unit === READING_BOUNDS[kind].unit ? [[`readings.${i}.value`, value, READING_BOUNDS[kind]]] : [],
      ),
    ),
  recipe: (body, found) => [
    ...outside([...partsOf('ingredients', body.ingredients), ...labOf(body.laboratory)]),
    ...(found === undefined ? [] : unlikeFamily(body.family, found)),
  ],
  material: ({ properties, laboratory }) => [
    ...properties.flatMap((figure, i) => beyondNature(figure, `properties.${i}`)),
    ...outside(labOf(laboratory)),
  ],
  source: () => [],
  row: ({ ingredients }) => outside(partsOf('ingredients', ingredients)),
}

const outside = (given: readonly Given[]): readonly Finding[] =>
  given.flatMap(([field, value, bound]) =>
    value === undefined || (bound.low <= value && value <= bound.high)
      ? []
      : [{ id: 'unusual' as const, field, value, ...bound }],
  )

const partsOf = (
  path: string,
  items: readonly { readonly parts?: { readonly low: number; readonly high: number } | undefined }[],
): Given[] =>
  items.flatMap(({ parts }, i): Given[] => [[`${path}.${i}.parts`, worst(parts, USUAL.parts), USUAL.parts]])

const labOf = (results: readonly LabResult[] = []): Given[] =>
  results.map(({ property, value }, i) => [
    `laboratory.${i}.value`,
    worst(value, LAB_BOUNDS[property]),
    LAB_BOUNDS[property],
  ])

/** Of a range the end that lies outside, or any of it. */
const worst = (range: { low: number; high: number } | undefined, { high }: Bound): number | undefined =>
  range && (range.high > high ? range.high : range.low)

/** Figures of a material that no material can have. */
function beyondNature(
  { property, low, high }: BodyOf<'material'>['properties'][number],
  field: string,
): Finding[] {
  const { above, min = above ?? -Infinity, max = Infinity, unit = '1' } = PROPERTY_LIMITS[property]
  const value = high > max ? high : low
  if (min <= value && value <= max && (above === undefined || value > above)) return []
  return [
    {
      id: 'impossible',
      field: `${field}.${high > max ? 'high' : 'low'}`,
      value,
      low: min,
      high: max,
      unit,
      basis: 'derived',
    },
  ]
}

/** A family's bounds in practice beside what the sums find. */
const unlikeFamily = (family: string, found: Proportions): Finding[] =>
  comparePlausible(family, found).flatMap(({ id, low, high, unit, basis, found, touches }) =>
    touches ? [] : [{ id, field: 'ingredients', value: found.typical, low, high, unit, basis }],
  )
