import type { Method } from './job-types.ts'
import type { LimeState } from './lime.ts'
import type { Range } from './range.ts'

/** One step of the making, in order; words for each id live in the catalogue. */
export interface SequenceStep {
  readonly id: SequenceId
  /** How long it lasts, or must be waited, in hours; common practice unless a source is named. */
  readonly hours?: Range
  readonly source?: string
}

export const SEQUENCE_IDS = [
  'eyewash',
  'protect-people',
  'keep-back',
  'measure-dry',
  'sand-ring',
  'dry-mix',
  'soak-hydrate',
  'slake-in-water',
  'mature-putty',
  'slake-to-powder',
  'first-charge',
  'cover-with-sand',
  'slake-in-mixer',
  'screen',
  'rest-coarse',
  'lay-down',
  'break-down-earth',
  'soak-earth',
  'mix',
  'water-by-eye',
  'stand',
  'knock-up',
  'gauge-last',
  'fibre',
  'fibre-when-cool',
  'trial-pat',
  'wet-wall',
  'use-hot',
  'use-within',
  'place',
  'pour',
  'protect-work',
  'keep-leftovers',
] as const
export type SequenceId = (typeof SEQUENCE_IDS)[number]

const hours = (low: number, typical: number, high: number): { hours: Range } => ({
  hours: { low, typical, high },
})
const DAY = 24

const MAKING: Record<Method, readonly SequenceStep[]> = {
  'hot-mixed-used-hot': [
    { id: 'measure-dry' },
    { id: 'dry-mix' },
    { id: 'first-charge' },
    { id: 'slake-in-mixer', ...hours(0.2, 0.5, 1.5) },
    { id: 'water-by-eye' },
    { id: 'use-hot', ...hours(0.5, 2, 6) },
  ],
  'hot-mixed-laid-down': [
    { id: 'measure-dry' },
    { id: 'dry-mix' },
    { id: 'first-charge' },
    { id: 'slake-in-mixer', ...hours(0.2, 0.5, 1.5) },
    { id: 'water-by-eye' },
    { id: 'lay-down', ...hours(DAY, 7 * DAY, 90 * DAY) },
    { id: 'knock-up' },
  ],
  'sand-slaked': [
    { id: 'sand-ring' },
    { id: 'first-charge' },
    { id: 'cover-with-sand', ...hours(12, DAY, 3 * DAY) },
    { id: 'screen' },
    { id: 'mix' },
    { id: 'water-by-eye' },
    { id: 'rest-coarse', ...hours(DAY, 3 * DAY, 14 * DAY) },
    { id: 'knock-up' },
  ],
  putty: [
    { id: 'measure-dry' },
    { id: 'mix' },
    { id: 'water-by-eye' },
    { id: 'stand', ...hours(DAY, 7 * DAY, 28 * DAY) },
    { id: 'knock-up' },
  ],
  'dry-hydrate': [
    { id: 'measure-dry' },
    { id: 'mix' },
    { id: 'water-by-eye' },
    { id: 'stand', ...hours(1, DAY, 7 * DAY) },
    { id: 'knock-up' },
  ],
  'bagged-hydraulic': [
    { id: 'measure-dry' },
    { id: 'dry-mix' },
    { id: 'first-charge' },
    { id: 'mix', ...hours(0.15, 0.25, 0.35) },
    { id: 'water-by-eye' },
    { id: 'use-within', ...hours(1, 3, 24) },
  ],
  'earth-wet-mixed': [
    { id: 'break-down-earth' },
    { id: 'soak-earth', ...hours(12, DAY, 7 * DAY) },
    { id: 'mix' },
    { id: 'water-by-eye' },
    { id: 'stand', ...hours(0, DAY, 7 * DAY) },
    { id: 'knock-up' },
  ],
  'not-stated': [{ id: 'measure-dry' }, { id: 'mix' }, { id: 'water-by-eye' }],
}

/** Roles of what sets by itself, and how long a mortar with it can be used, in hours. */
const USABLE = {
  gypsum: hours(0.25, 0.5, 0.75),
  cement: hours(1, 1.5, 2),
  pozzolan: hours(2, 8, DAY),
} as const
export type Setting = keyof typeof USABLE
const SETTING = Object.keys(USABLE) as Setting[]

/** Those roles of a mix that set by themselves, the quickest first. */
export const settingOf = (roles: readonly string[]): Setting[] =>
  SETTING.filter((role) => roles.includes(role))

/** Steps in which a mortar stays for hours or weeks before it is used. */
const WAITING: ReadonlySet<SequenceId> = new Set(['stand', 'lay-down', 'rest-coarse'])

/** What the order of work turns on. */
export interface Making {
  readonly method: Method
  /** States of the limes on site; empty where there is none. */
  readonly limes: readonly LimeState[]
  /** Does one of them set under water? Then none may stand as putty, nor the wet mortar for days. */
  readonly hydraulic?: boolean
  readonly fibre: boolean
  /** What sets by itself once wet: it may not stand with the rest. */
  readonly setting: readonly Setting[]
  /** Is all of it poured into voids? */
  readonly grout?: boolean
  /** Plaster, pointing and fine joints show a late grain; thick beds hide it. */
  readonly fineWork: boolean
}

/** Methods whose quicklime slakes among the sand. */
export const SLAKES_IN_SAND: ReadonlySet<Method> = new Set([
  'hot-mixed-used-hot',
  'hot-mixed-laid-down',
  'sand-slaked',
])

/** Is any of these limes still to be slaked? */
export const hasQuicklime = (limes: readonly LimeState[]): boolean =>
  limes.includes('lump-quicklime') || limes.includes('ground-quicklime')

/**
 * The steps from the eyewash to the leftovers, for the lime that is on site: slaked lime is not slaked
 * again whatever the recipe's method, and quicklime for a putty is slaked and matured first.
 */
export function orderSteps(job: Making): SequenceStep[] {
  const { method, limes, hydraulic = false, grout = false, fibre, setting, fineWork } = job
  const quicklime = hasQuicklime(limes)
  const effective = SLAKES_IN_SAND.has(method) && !quicklime ? 'putty' : method
  const steps: SequenceStep[] = [{ id: 'eyewash' }, { id: 'protect-people' }]
  if (quicklime && fineWork) steps.push({ id: 'trial-pat', ...hours(DAY, 3 * DAY, 14 * DAY) })
  if (quicklime && !SLAKES_IN_SAND.has(method))
    steps.push(
      ...(hydraulic
        ? [{ id: 'slake-to-powder', ...hours(12, DAY, 3 * DAY) } as const]
        : [
            { id: 'slake-in-water', ...hours(0.5, 2, DAY) } as const,
            { id: 'mature-putty', ...hours(14 * DAY, 60 * DAY, 180 * DAY) } as const,
          ]),
      { id: 'screen' },
    )
  const soaks =
    !hydraulic && limes.includes('dry-hydrate') && (effective === 'putty' || effective === 'dry-hydrate')
  if (soaks) steps.push({ id: 'soak-hydrate', ...hours(12, DAY, 2 * DAY) })
  const plain = fibre ? withFibre(MAKING[effective], effective) : MAKING[effective]
  const making = withSetting(hydraulic ? usedSoon(plain) : plain, setting)
  const using = making.filter(({ id }) => USING.has(id))
  return [
    ...steps,
    ...making.filter(({ id }) => !USING.has(id)),
    { id: 'wet-wall' },
    ...using,
    { id: grout ? 'pour' : 'place' },
    { id: 'protect-work' },
    { id: 'keep-leftovers' },
  ]
}

/** How soon it must be used: said once the wall is ready for it. */
const USING: ReadonlySet<SequenceId> = new Set(['use-hot', 'use-within'])

/** A lime that sets by itself leaves its mortar as long as bagged hydraulic lime does; where it lies dry it may lie. */
function usedSoon(making: readonly SequenceStep[]): readonly SequenceStep[] {
  if (!making.some(({ id }) => id === 'stand')) return making
  const wet = making.filter(({ id }) => id !== 'stand' && id !== 'knock-up')
  return [...wet, ...MAKING['bagged-hydraulic'].filter(({ id }) => id === 'use-within')]
}

/** What sets by itself stays out of a mortar that stands, and goes into as much as is used at once. */
function withSetting(
  making: readonly SequenceStep[],
  [quickest]: readonly Setting[],
): readonly SequenceStep[] {
  if (quickest === undefined) return making
  const use: SequenceStep = { id: 'use-within', ...USABLE[quickest] }
  if (making.some(({ id }) => WAITING.has(id)))
    return [{ id: 'keep-back' }, ...making, { id: 'gauge-last' }, use]
  return making.some(({ id }) => USING.has(id)) ? making : [...making, use]
}

/** Hair and fibre go into cool mortar, a day after slaking, and last of all. */
function withFibre(making: readonly SequenceStep[], method: Method): SequenceStep[] {
  const fibre: SequenceStep = SLAKES_IN_SAND.has(method)
    ? {
        id: 'fibre-when-cool',
        ...hours(DAY, DAY, 2 * DAY),
        source: 'cyclopedia-building-1907, art. Mixing',
      }
    : { id: 'fibre' }
  const hot = making.findIndex(({ id }) => id === 'use-hot')
  return hot < 0 ? [...making, fibre] : [...making.slice(0, hot), fibre, { id: 'knock-up' }]
}
