import { type Amount, readAmounts } from './amount.ts'
import { HEAT_CAPACITY } from './constants.ts'
import { given, type Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { type SlakingHeap, slakeHeap } from './heat.ts'
import { explainHeat } from './heat-steps.ts'
import type { Range } from './range.ts'
import { spreadVector } from './spread.ts'

export interface SlakingInput {
  readonly quicklimeKg: Amount
  /** kg of free CaO per kg of quicklime. */
  readonly freeCaO: Amount
  readonly waterKg: Amount
  /** Dry sand in the heap; 0 if absent. */
  readonly sandKg?: Amount
  /** Moisture of that sand, % of its dry mass. */
  readonly sandMoisturePercent?: Amount
  readonly waterC: Amount
  /** Of sand and lime; as the water if absent. */
  readonly sandC?: Amount
}

export interface Slaking {
  readonly heatKJ: Range
  readonly startC: Range
  /** Of all that is in the heap once slaked. */
  readonly capacityKJK: Range
  /** As if mixed evenly and no heat were lost: dry spots run far hotter, and no batch is safe by it. */
  readonly averageC: Range
  readonly boiledKg: Range
  /** Free water left. */
  readonly freeKg: Range
  readonly steps: readonly Step[]
}

/** Energy balance of one batch of quicklime, with or without sand. */
export const slakeBatch = (input: SlakingInput): Outcome<Slaking> =>
  attempt(() => {
    const r = readSlaking(input)
    const found = spreadHeap(r)
    return {
      ...found,
      steps: [
        given('q', 'quicklimeMass', r.quicklimeKg, 'kg'),
        given('c', 'property.freeCaO', r.freeCaO, '1'),
        given('W', 'slakingWater', r.waterKg, 'kg'),
        ...explainHeat(found),
      ],
    }
  })

const OUTPUTS = ['heatKJ', 'capacityKJK', 'startC', 'averageC', 'boiledKg', 'freeKg'] as const

/** The balance over the ranges: by arrays, since a page works it out anew while somebody types. */
function spreadHeap(ranges: Readonly<Record<SlakingName, Range>>): Record<(typeof OUTPUTS)[number], Range> {
  const heapOf = heapReader()
  const found = spreadVector(
    SLAKING_NAMES,
    SLAKING_NAMES.map((name) => ranges[name]),
    OUTPUTS,
    (x, out) => {
      const heap = slakeHeap(heapOf(x))
      for (let k = 0; k < OUTPUTS.length; k++) out[k] = heap[OUTPUTS[k] as (typeof OUTPUTS)[number]]
    },
  )
  return Object.fromEntries(OUTPUTS.map((output, k) => [output, found[k]])) as ReturnType<typeof spreadHeap>
}

/** Names of the inputs, in the order that draws hold them. */
export const SLAKING_NAMES = [
  'quicklimeKg',
  'freeCaO',
  'waterKg',
  'sandKg',
  'sandMoisturePercent',
  'waterC',
  'sandC',
] as const
type SlakingName = (typeof SLAKING_NAMES)[number]

/** One heap, filled anew from each draw of {@link SLAKING_NAMES}. */
export function heapReader(): (x: Float64Array) => { -readonly [K in keyof SlakingHeap]: SlakingHeap[K] } {
  const heap = {
    quicklimeKg: 0,
    freeCaO: 0,
    waterKg: 0,
    sandKg: 0,
    sandHeat: HEAT_CAPACITY.quartz,
    waterC: 0,
    sandC: 0,
    slakedShare: 1,
  }
  return (x) => {
    heap.quicklimeKg = x[0] as number
    heap.freeCaO = x[1] as number
    heap.sandKg = x[3] as number
    heap.waterKg = (x[2] as number) + (heap.sandKg * (x[4] as number)) / 100
    heap.waterC = x[5] as number
    heap.sandC = x[6] as number
    return heap
  }
}

/**
 * The inputs as ranges, with what was left out put in.
 *
 * @throws MortarFault with every input outside its limits
 */
export function readSlaking(input: SlakingInput) {
  const mass = { min: 0, max: 1e6, unit: 'kg' }
  return readAmounts(
    {
      quicklimeKg: input.quicklimeKg,
      freeCaO: input.freeCaO,
      waterKg: input.waterKg,
      sandKg: input.sandKg ?? 0,
      sandMoisturePercent: input.sandMoisturePercent ?? 0,
      waterC: input.waterC,
      sandC: input.sandC ?? input.waterC,
    },
    {
      quicklimeKg: { above: 0, max: 1e6, unit: 'kg' },
      freeCaO: { min: 0, max: 1 },
      waterKg: mass,
      sandKg: mass,
      sandMoisturePercent: { min: 0, max: 100, unit: '%' },
      waterC: { min: 0, max: 100, unit: 'C' },
      sandC: { min: -30, max: 100, unit: 'C' },
    },
  )
}
