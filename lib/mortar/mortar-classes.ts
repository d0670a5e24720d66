import type { Basis } from './range.ts'

/** A class of mortar with what it allows of one property: either end may be open. */
export interface MortarClass {
  readonly id: string
  readonly property: 'compressiveStrength' | 'capillarity'
  readonly low?: number
  readonly high?: number
  readonly source: string
  readonly basis: Basis
}

const from = { source: 'en-998-1, table 1', basis: 'memory' } as const

/**
 * Classes of mortar for render and plaster: strength in MPa, capillary uptake in kg/(m²·√min). For comparison only:
 * they are from memory, so no check rests on them.
 */
export const MORTAR_CLASSES: readonly MortarClass[] = [
  { id: 'CS I', property: 'compressiveStrength', low: 0.4, high: 2.5, ...from },
  { id: 'CS II', property: 'compressiveStrength', low: 1.5, high: 5, ...from },
  { id: 'CS III', property: 'compressiveStrength', low: 3.5, high: 7.5, ...from },
  { id: 'CS IV', property: 'compressiveStrength', low: 6, ...from },
  { id: 'W 1', property: 'capillarity', high: 0.4, ...from },
  { id: 'W 2', property: 'capillarity', high: 0.2, ...from },
]
