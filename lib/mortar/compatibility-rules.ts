import type { Basis } from './range.ts'

/** What is compared, each in one unit. */
export const COMPARED = {
  compressiveStrength: 'MPa',
  /** Diffusion resistance; the lower, the more open to vapour. */
  vapourResistance: '1',
  capillarity: 'kg/(m2.min^0.5)',
} as const
export type ComparedMeasure = keyof typeof COMPARED

export const SALT_IONS = ['nitrate', 'sulfate', 'chloride'] as const
export type SaltIon = (typeof SALT_IONS)[number]

/** What a mortar contains and what a wall is, as far as the rules ask. */
export const MORTAR_CONTENTS = [
  'air-lime',
  'hydraulic-lime',
  'dolomitic-lime',
  'cement',
  'gypsum',
  'earth',
] as const
export type MortarContent = (typeof MORTAR_CONTENTS)[number]
export const WALL_CONDITIONS = [
  'before-portland-cement',
  'damp',
  'rain-exposed',
  'gypsum-present',
  'sulfur-air',
] as const
export type WallCondition = (typeof WALL_CONDITIONS)[number]

interface RuleHead {
  readonly id: string
  /** A rule from memory can ask for a check and no more. */
  readonly basis: Basis
  /** `source-id, locator`; absent for memory. */
  readonly source?: string
}

/** The mortar's figure should not lie above (or below) the unit's or the old mortar's. */
export interface OrderRule extends RuleHead {
  readonly kind: 'not-above' | 'not-below'
  readonly measure: ComparedMeasure
  readonly against: 'unit' | 'old-mortar'
}

/** A salt in the wall, % by mass: from `watch` on a check, whatever the mortar. */
export interface SaltRule extends RuleHead {
  readonly kind: 'salt'
  readonly ion: SaltIon
  readonly watch: number
  readonly high: number
}

/** A content of the mortar that a condition of the wall speaks against. */
export interface PairRule extends RuleHead {
  readonly kind: 'pair'
  readonly contents: readonly MortarContent[]
  readonly conditions: readonly WallCondition[]
  readonly outcome: 'check' | 'conflict-reported'
}

export type CompatibilityRule = OrderRule | SaltRule | PairRule

const BRIEF = 'nps-brief-2, § Mortar analysis'
const COMPENDIUM = 'istructe-2016, no. 2'
const WTA = 'wta-4-5'

export const COMPATIBILITY_RULES: readonly CompatibilityRule[] = [
  {
    id: 'strength-unit',
    kind: 'not-above',
    measure: 'compressiveStrength',
    against: 'unit',
    basis: 'read',
    source: BRIEF,
  },
  {
    id: 'strength-old-mortar',
    kind: 'not-above',
    measure: 'compressiveStrength',
    against: 'old-mortar',
    basis: 'memory',
  },
  {
    id: 'vapour-unit',
    kind: 'not-above',
    measure: 'vapourResistance',
    against: 'unit',
    basis: 'read',
    source: COMPENDIUM,
  },
  {
    id: 'capillarity-unit',
    kind: 'not-below',
    measure: 'capillarity',
    against: 'unit',
    basis: 'memory',
  },
  { id: 'nitrate', kind: 'salt', ion: 'nitrate', watch: 0.1, high: 0.3, basis: 'quoted', source: WTA },
  { id: 'sulfate', kind: 'salt', ion: 'sulfate', watch: 0.5, high: 1.5, basis: 'quoted', source: WTA },
  { id: 'chloride', kind: 'salt', ion: 'chloride', watch: 0.2, high: 0.5, basis: 'quoted', source: WTA },
  {
    id: 'cement-old-wall',
    kind: 'pair',
    contents: ['cement'],
    conditions: ['before-portland-cement'],
    outcome: 'conflict-reported',
    basis: 'read',
    source: COMPENDIUM,
  },
  {
    id: 'hydraulic-beside-gypsum',
    kind: 'pair',
    contents: ['hydraulic-lime', 'cement'],
    conditions: ['gypsum-present'],
    outcome: 'check',
    basis: 'read',
    source: 'thaumasite-gypsum-lime, abstract',
  },
  {
    id: 'gypsum-in-rain',
    kind: 'pair',
    contents: ['gypsum'],
    conditions: ['rain-exposed', 'damp'],
    outcome: 'check',
    basis: 'memory',
  },
  {
    id: 'magnesia-in-sulfur-air',
    kind: 'pair',
    contents: ['dolomitic-lime'],
    conditions: ['sulfur-air'],
    outcome: 'check',
    basis: 'memory',
  },
  {
    id: 'earth-in-rain',
    kind: 'pair',
    contents: ['earth'],
    conditions: ['rain-exposed', 'damp'],
    outcome: 'check',
    basis: 'memory',
  },
]
