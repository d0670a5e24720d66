import type { Basis } from './range.ts'

/** The shares that may pass each sieve, %, by a named standard, with its rules on what one sieve may hold. */
export interface GradingLimits {
  readonly id: string
  readonly source: string
  readonly basis: Basis
  readonly passing: readonly { readonly openingMm: number; readonly low: number; readonly high: number }[]
  /** The most that may stay between two consecutive sieves, %. */
  readonly gaps: readonly { readonly fromMm: number; readonly toMm: number; readonly high: number }[]
}

const limits = (rows: readonly (readonly [number, number, number])[]) =>
  rows.map(([openingMm, low, high]) => ({ openingMm, low, high }))

const C144_SIEVES = [4.75, 2.36, 1.18, 0.6, 0.3, 0.15]
const c144Gaps = C144_SIEVES.slice(1).map((toMm, i) => ({
  fromMm: C144_SIEVES[i] as number,
  toMm,
  high: toMm === 0.15 ? 25 : 50,
}))

/** The gradings that a sand can be held against. `quoted`: the standard was seen in another publication. */
export const GRADING_LIMITS: readonly GradingLimits[] = [
  {
    id: 'astm-c144-natural',
    source: 'astm-c144',
    basis: 'quoted',
    passing: limits([
      [4.75, 100, 100],
      [2.36, 95, 100],
      [1.18, 70, 100],
      [0.6, 40, 75],
      [0.3, 10, 35],
      [0.15, 2, 15],
    ]),
    gaps: c144Gaps,
  },
  {
    id: 'astm-c144-manufactured',
    source: 'astm-c144',
    basis: 'quoted',
    passing: limits([
      [4.75, 100, 100],
      [2.36, 95, 100],
      [1.18, 70, 100],
      [0.6, 40, 75],
      [0.3, 20, 40],
      [0.15, 10, 25],
    ]),
    gaps: c144Gaps,
  },
  {
    id: 'bs-1200-general',
    source: 'bs-1200-1976',
    basis: 'quoted',
    passing: limits([
      [5, 100, 100],
      [2.36, 90, 100],
      [1.18, 70, 100],
      [0.6, 40, 100],
      [0.3, 5, 70],
      [0.15, 0, 15],
    ]),
    gaps: [],
  },
]
