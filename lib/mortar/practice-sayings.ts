import { MortarFault, type Outcome } from './fault.ts'
import type { LimeState } from './lime.ts'
import { convertLime, type LimeConversion } from './lime-convert.ts'
import type { Properties } from './material.ts'
import { type Proportions, proportions } from './proportions.ts'
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
  ours(tried: Tried): Range
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
    ours: (tried) => growth(tried, 'lump-to-putty'),
  },
  'lump-makes-hydrate': {
    state: 'dry-hydrate',
    low: 1.5,
    high: 2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: (tried) => growth(tried, 'lump-to-hydrate'),
  },
  'one-to-three-as-putty': {
    state: 'putty',
    low: 1.5,
    high: 2,
    reason: 'other',
    basis: 'practice',
    ours: ({ oneToThree }) => slakedRatio(oneToThree, 'putty'),
  },
  'one-to-three-as-hydrate': {
    state: 'dry-hydrate',
    low: 1.5,
    high: 2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: ({ oneToThree }) => slakedRatio(oneToThree, 'dry-hydrate'),
  },
  'one-to-two-as-putty': {
    state: 'putty',
    low: 0.8,
    high: 1.2,
    reason: 'other',
    basis: 'practice',
    ours: ({ oneToTwo }) => slakedRatio(oneToTwo, 'putty'),
  },
  'one-to-two-as-hydrate': {
    state: 'dry-hydrate',
    low: 0.8,
    high: 1.2,
    reason: 'loose-powder',
    basis: 'practice',
    ours: ({ oneToTwo }) => slakedRatio(oneToTwo, 'dry-hydrate'),
  },
  'lump-carries-three': {
    state: 'lump-quicklime',
    low: 2.5,
    high: 3.5,
    reason: 'other',
    basis: 'practice',
    source: 'building-construction-2-us, § 223',
    ours: (tried) => mostSand(tried, 'lump-to-putty'),
  },
  'ground-carries-four': {
    state: 'ground-quicklime',
    low: 3.5,
    high: 4.5,
    reason: 'other',
    basis: 'practice',
    source: 'building-construction-2-us, § 223',
    ours: (tried) => mostSand(tried, 'ground-to-putty'),
  },
  'paste-per-barrel': {
    state: 'putty',
    low: 2.6,
    high: 2.75,
    reason: 'soft-paste-packed-barrel',
    basis: 'read',
    source: 'building-construction-2-us, § 223',
    ours: (tried) => growth(tried, 'lump-to-putty'),
  },
  'paste-per-kilogram': {
    state: 'putty',
    low: 1.75,
    high: 1.8,
    reason: 'stiff-paste',
    basis: 'read',
    source: 'scientific-american-mortars, art. Mortars for Building',
    ours: (tried) => pastePerKg(tried),
  },
} as const satisfies Record<string, Saying>
export type PracticeId = keyof typeof SAYINGS

/** The value of an outcome inside another calculation; its faults pass on. */
function take<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new MortarFault(...outcome.faults)
}

/** What all sayings are held against, worked once: the lime's states, and two mixes of its lumps with the sand. */
export interface Tried {
  readonly sand: Properties
  readonly conversion: LimeConversion
  readonly oneToThree: Proportions
  readonly oneToTwo: Proportions
}

/** @throws MortarFault where the lime or the sand lacks a property */
export const tryOut = (lime: Properties, sand: Properties): Tried => ({
  sand,
  conversion: take(convertLime({ amount: 1, unit: 'kg', state: 'lump-quicklime', properties: lime })),
  oneToThree: mixed(lime, sand, 3),
  oneToTwo: mixed(lime, sand, 2),
})

function mixed(lime: Properties, sand: Properties, parts: number): Proportions {
  const measure = (low: number) => ({ low, high: low })
  return take(
    proportions({
      ingredients: [
        { material: 'lime', role: 'lime', parts: measure(1), by: 'volume', state: 'lump-quicklime' },
        { material: 'sand', role: 'aggregate', parts: measure(parts), by: 'volume', state: 'dry' },
      ],
      materials: { lime, sand },
    }),
  )
}

const growth = ({ conversion }: Tried, key: 'lump-to-putty' | 'lump-to-hydrate' | 'ground-to-putty'): Range =>
  known(conversion.growth[key], key)

const pastePerKg = ({ conversion }: Tried): Range =>
  known(conversion.states.putty?.volumeL ?? null, 'puttyDensity')

const slakedRatio = ({ states }: Proportions, state: 'putty' | 'dry-hydrate'): Range =>
  known(states[state]?.aggregateDry ?? null, state)

function mostSand(tried: Tried, key: 'lump-to-putty' | 'ground-to-putty'): Range {
  const voidsPercent = scale(known(tried.sand.voids ?? null, 'voids'), 100 * PASTE_OVER_VOIDS)
  return take(leanestProportion({ voidsPercent, pasteL: growth(tried, key) })).value
}

function known<T>(value: T | null, field: string): T {
  if (value === null) throw new MortarFault({ field, code: 'unknown' })
  return value
}
