import type { Method } from './job-types.ts'
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
  'measure-dry',
  'sand-ring',
  'dry-mix',
  'soak-hydrate',
  'slake-in-water',
  'mature-putty',
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
  'fibre',
  'fibre-when-cool',
  'trial-pat',
  'wet-wall',
  'use-hot',
  'use-within',
  'place',
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
    { id: 'soak-hydrate', ...hours(12, DAY, 2 * DAY) },
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

/** What the order of work turns on. */
export interface Making {
  readonly method: Method
  readonly quicklimeOnSite: boolean
  readonly fibre: boolean
  /** Plaster, pointing and fine joints show a late grain; thick beds hide it. */
  readonly fineWork: boolean
}

/** The steps from the eyewash to the leftovers. */
export function orderSteps({ method, quicklimeOnSite, fibre, fineWork }: Making): SequenceStep[] {
  const steps: SequenceStep[] = [{ id: 'eyewash' }, { id: 'protect-people' }]
  const slakesApart = quicklimeOnSite && !SLAKES_WITH_SAND.has(method)
  if (slakesApart)
    steps.push(
      { id: 'slake-in-water', ...hours(0.5, 2, DAY) },
      { id: 'mature-putty', ...hours(14 * DAY, 60 * DAY, 180 * DAY) },
      { id: 'screen' },
    )
  const making = MAKING[method].filter(({ id }) => id !== 'soak-hydrate' || !slakesApart)
  steps.push(...(fibre ? withFibre(making, method) : making))
  if (quicklimeOnSite && fineWork) steps.push({ id: 'trial-pat', ...hours(DAY, 3 * DAY, 14 * DAY) })
  steps.push({ id: 'wet-wall' }, { id: 'place' }, { id: 'protect-work' }, { id: 'keep-leftovers' })
  return steps
}

const SLAKES_WITH_SAND: ReadonlySet<Method> = new Set([
  'hot-mixed-used-hot',
  'hot-mixed-laid-down',
  'sand-slaked',
])

/** Hair and fibre go into cool mortar, a day after slaking, and last of all. */
function withFibre(making: readonly SequenceStep[], method: Method): SequenceStep[] {
  const fibre: SequenceStep = SLAKES_WITH_SAND.has(method)
    ? {
        id: 'fibre-when-cool',
        ...hours(DAY, DAY, 2 * DAY),
        source: 'cyclopedia-building-1907, art. Mixing',
      }
    : { id: 'fibre' }
  const hot = making.findIndex(({ id }) => id === 'use-hot')
  return hot < 0 ? [...making, fibre] : [...making.slice(0, hot), fibre, { id: 'knock-up' }]
}
