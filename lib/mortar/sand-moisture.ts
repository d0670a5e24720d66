import { type Amount, readAmounts } from './amount.ts'
import { given, type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import type { Range } from './range.ts'
import { spread } from './spread.ts'

/** Sand weighed dry or damp; moistures in % of the dry mass. */
export interface MoistSandInput {
  readonly kg: Amount
  readonly weighed: 'dry' | 'damp'
  readonly moisturePercent: Amount
  /** Water that the grains take in and hold; 0 if absent. */
  readonly absorptionPercent?: Amount
}

export interface MoistSand {
  readonly dryKg: Range
  readonly dampKg: Range
  /** In and on the grains. */
  readonly waterKg: Range
  /** Beyond what the grains absorb: to be left out of the mixing water. */
  readonly freeWaterKg: Range
  readonly steps: readonly Step[]
}

/**
 * Between sand weighed dry and sand weighed damp, either way. Damp sand weighs more, never less.
 *
 * @example correctMoisture({ kg: 300, weighed: 'dry', moisturePercent: 6, absorptionPercent: 1 })
 *   // dampKg 318, freeWaterKg 15
 */
export const correctMoisture = (input: MoistSandInput): Outcome<MoistSand> =>
  attempt(() => {
    const percent = { min: 0, max: 100, unit: '%' }
    const r = readAmounts(
      {
        kg: input.kg,
        moisturePercent: input.moisturePercent,
        absorptionPercent: input.absorptionPercent ?? 0,
      },
      { kg: { min: 0, max: 1e9, unit: 'kg' }, moisturePercent: percent, absorptionPercent: percent },
    )
    const fromDry = input.weighed === 'dry'
    const found = spread(r, (x) => {
      const dryKg = fromDry ? x.kg : x.kg / (1 + x.moisturePercent / 100)
      return {
        dryKg,
        dampKg: dryKg * (1 + x.moisturePercent / 100),
        waterKg: (dryKg * x.moisturePercent) / 100,
        freeWaterKg: (dryKg * Math.max(0, x.moisturePercent - x.absorptionPercent)) / 100,
      }
    })
    return { ...found, steps: explain(fromDry, r, found) }
  })

function explain(
  fromDry: boolean,
  r: Readonly<Record<'kg' | 'moisturePercent' | 'absorptionPercent', Range>>,
  found: Omit<MoistSand, 'steps'>,
): Step[] {
  const w = r.moisturePercent.typical
  const a = r.absorptionPercent.typical
  const dry = given('m_dry', 'sandDry', found.dryKg, 'kg')
  const damp = given('m_damp', 'sandDamp', found.dampKg, 'kg')
  return [
    ...(fromDry
      ? [dry, { ...damp, formula: 'm_dry · (1 + w)', numbers: working`${r.kg.typical} · (1 + ${w / 100})` }]
      : [
          damp,
          { ...dry, formula: 'm_damp / (1 + w)', numbers: working`${r.kg.typical} / (1 + ${w / 100})` },
        ]),
    given('w', 'sandMoisture', r.moisturePercent, '%'),
    given('w_a', 'absorption', r.absorptionPercent, '%'),
    {
      ...given('W', 'sandFreeWater', found.freeWaterKg, 'kg'),
      formula: 'm_dry · (w − w_a)',
      numbers: working`${found.dryKg.typical} · (${w / 100} − ${a / 100})`,
    },
  ]
}
