import { MortarFault, type Outcome } from './fault.ts'
import type { LimeState } from './lime.ts'
import { convertLime } from './lime-convert.ts'
import type { Properties } from './material.ts'
import { proportions } from './proportions.ts'
import { type Basis, type Range, scale } from './range.ts'
import { leanestProportion } from './sand-voids.ts'

export const REASON_IDS = ['loose-powder', 'soft-paste-packed-barrel', 'stiff-paste', 'other'] as const
export type ReasonId = (typeof REASON_IDS)[number]

/** One saying of practice: in which state it is taken, what it says, and how the sums answer it. */
export interface Saying {
  readonly state: LimeState
  readonly low: number
  readonly high: number
  /** Known reason for a disagreement with a pure lime of usual densities. */
  readonly reason: ReasonId
  readonly basis: Basis
  readonly source?: string
  ours(lime: Properties, sand: Properties): Range
}

/** Books want half as much paste again as fills the voids, so that every grain is coated. */
const PASTE_OVER_VOIDS = 1.5

/** What masons and handbooks say in round numbers of lime and sand. */
export const SAYINGS = {
  'lump-makes-putty': {
    state: 'putty',
    low: 1.5,
    high: 2,
    reason: 'other',
    basis: 'practice',
    ours: (lime) => growth(lime, 'lump-to-putty'),
  },
  'lump-makes-hydrate': {
    state: 'dry-hydrate',
    low: 1.5,
    high: 2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: (lime) => growth(lime, 'lump-to-hydrate'),
  },
  'one-to-three-as-putty': {
    state: 'putty',
    low: 1.5,
    high: 2,
    reason: 'other',
    basis: 'practice',
    ours: (lime, sand) => slakedRatio(lime, sand, 3, 'putty'),
  },
  'one-to-three-as-hydrate': {
    state: 'dry-hydrate',
    low: 1.5,
    high: 2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: (lime, sand) => slakedRatio(lime, sand, 3, 'dry-hydrate'),
  },
  'one-to-two-as-putty': {
    state: 'putty',
    low: 0.8,
    high: 1.2,
    reason: 'other',
    basis: 'practice',
    ours: (lime, sand) => slakedRatio(lime, sand, 2, 'putty'),
  },
  'one-to-two-as-hydrate': {
    state: 'dry-hydrate',
    low: 0.8,
    high: 1.2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: (lime, sand) => slakedRatio(lime, sand, 2, 'dry-hydrate'),
  },
  'lump-carries-three': {
    state: 'lump-quicklime',
    low: 2.5,
    high: 3.5,
    reason: 'other',
    basis: 'practice',
    source: 'building-construction-2-us, § 223',
    ours: (lime, sand) => mostSand(lime, sand, 'lump-to-putty'),
  },
  'ground-carries-four': {
    state: 'ground-quicklime',
    low: 3.5,
    high: 4.5,
    reason: 'other',
    basis: 'practice',
    source: 'building-construction-2-us, § 223',
    ours: (lime, sand) => mostSand(lime, sand, 'ground-to-putty'),
  },
  'paste-per-barrel': {
    state: 'putty',
    low: 2.6,
    high: 2.75,
    reason: 'soft-paste-packed-barrel',
    basis: 'read',
    source: 'building-construction-2-us, § 223',
    ours: (lime) => growth(lime, 'lump-to-putty'),
  },
  'paste-per-kilogram': {
    state: 'putty',
    low: 1.75,
    high: 1.8,
    reason: 'stiff-paste',
    basis: 'read',
    source: 'scientific-american-mortars, art. Mortars for Building',
    ours: (lime) => pastePerKg(lime),
  },
} as const satisfies Record<string, Saying>
export type PracticeId = keyof typeof SAYINGS

/** The value of an outcome inside another calculation; its faults pass on. */
function take<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new MortarFault(...outcome.faults)
}

function growth(properties: Properties, key: 'lump-to-putty' | 'lump-to-hydrate' | 'ground-to-putty'): Range {
  const conversion = take(convertLime({ amount: 1, unit: 'kg', state: 'lump-quicklime', properties }))
  return known(conversion.growth[key], key)
}

function pastePerKg(properties: Properties): Range {
  const { putty } = take(convertLime({ amount: 1, unit: 'kg', state: 'lump-quicklime', properties })).states
  return known(putty?.volumeL ?? null, 'puttyDensity')
}

function slakedRatio(
  lime: Properties,
  sand: Properties,
  parts: number,
  state: 'putty' | 'dry-hydrate',
): Range {
  const measure = { low: parts, high: parts }
  const found = take(
    proportions({
      ingredients: [
        { material: 'lime', role: 'lime', parts: { low: 1, high: 1 }, by: 'volume', state: 'lump-quicklime' },
        { material: 'sand', role: 'aggregate', parts: measure, by: 'volume', state: 'dry' },
      ],
      materials: { lime, sand },
    }),
  )
  return known(found.states[state]?.aggregateDry ?? null, state)
}

function mostSand(lime: Properties, sand: Properties, key: 'lump-to-putty' | 'ground-to-putty'): Range {
  const voids = known(sand.voids ?? null, 'voids')
  const voidsPercent = scale(voids, 100 * PASTE_OVER_VOIDS)
  return take(leanestProportion({ voidsPercent, pasteL: growth(lime, key) })).value
}

function known<T>(value: T | null, field: string): T {
  if (value === null) throw new MortarFault({ field, code: 'unknown' })
  return value
}
