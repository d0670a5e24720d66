import type { Basis } from './range.ts'

export type HydraulicClass = 'not' | 'feebly' | 'moderately' | 'properly' | 'eminently' | 'limit' | 'cement'

/** What a scheme sorts by: an index of the lime, oxides in the lime, or clay in the stone it came from. */
export type SchemeMeasure = 'candlot' | 'cementation' | 'oxides' | 'clay'

/** One author's classes. `from` belongs to the band, `to` to the next; all in the measure's own unit. */
export interface HydraulicScheme {
  readonly id: string
  readonly measure: SchemeMeasure
  readonly basis: Basis
  /** `source-id, locator`; absent for a scheme from memory. */
  readonly source?: string
  readonly bands: readonly { readonly class: HydraulicClass; readonly from: number; readonly to: number }[]
}

const bands = (...rows: readonly (readonly [HydraulicClass, number, number])[]) =>
  rows.map(([name, from, to]) => ({ class: name, from, to }))

/**
 * Classes of hydraulicity as their authors drew them. They differ in what they measure and where they cut,
 * leave gaps, and call different limes by one name; none of them is a modern class of a standard.
 */
export const HYDRAULIC_SCHEMES: readonly HydraulicScheme[] = [
  {
    id: 'candlot-index',
    measure: 'candlot',
    basis: 'read',
    source: 'us-cement-handbook-1905, art. 2, table 1',
    bands: bands(
      ['feebly', 0.1, 0.16],
      ['moderately', 0.16, 0.31],
      ['properly', 0.31, 0.42],
      ['eminently', 0.42, 0.6],
    ),
  },
  {
    id: 'candlot-oxides',
    measure: 'oxides',
    basis: 'read',
    source: 'us-cement-handbook-1905, art. 2, table 1',
    bands: bands(['feebly', 9, 14], ['moderately', 14, 24], ['properly', 24, 30], ['eminently', 30, 33]),
  },
  {
    id: 'candlot-clay',
    measure: 'clay',
    basis: 'read',
    source: 'us-cement-handbook-1905, art. 2, table 1',
    bands: bands(['feebly', 5, 8], ['moderately', 8, 15], ['properly', 15, 19], ['eminently', 19, 22]),
  },
  {
    id: 'notes-clay',
    measure: 'clay',
    basis: 'read',
    source: 'notes-building-construction-3, art. Classification of Hydraulic Limes',
    bands: bands(['feebly', 5, 12], ['moderately', 15, 20], ['eminently', 20, 30]),
  },
  {
    id: 'vicat-index',
    measure: 'candlot',
    basis: 'memory',
    bands: bands(
      ['feebly', 0.1, 0.16],
      ['moderately', 0.16, 0.31],
      ['properly', 0.31, 0.42],
      ['eminently', 0.42, 0.5],
      ['limit', 0.5, 0.65],
    ),
  },
  {
    id: 'cementation',
    measure: 'cementation',
    basis: 'memory',
    bands: bands(
      ['not', 0, 0.3],
      ['feebly', 0.3, 0.5],
      ['moderately', 0.5, 0.7],
      ['eminently', 0.7, 1.1],
      ['cement', 1.1, 10],
    ),
  },
]
