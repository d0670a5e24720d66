import { type Amount, readAmounts } from './amount.ts'
import { HEAT_CAPACITY } from './constants.ts'
import { given, type Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { slakeHeap } from './heat.ts'
import { explainHeat } from './heat-steps.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

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
    const mass = { min: 0, max: 1e6, unit: 'kg' }
    const r = readAmounts(
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
    const found = spread(r, (x) => ({
      ...slakeHeap({
        ...x,
        waterKg: x.waterKg + (x.sandKg * x.sandMoisturePercent) / 100,
        sandHeat: HEAT_CAPACITY.quartz,
      }),
    }))
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
