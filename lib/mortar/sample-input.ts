import { inspect } from './inspect.ts'
import { need } from './need.ts'
import { exactly, type Range } from './range.ts'
import type { SampleInput } from './sample.ts'
import { CO2_PER_CACO3, type SampleRanges } from './sample-sum.ts'

/** The numbers of a sample as ranges; refuses what cannot be, all at once. */
export function readSample(input: SampleInput): SampleRanges {
  const check = inspect()
  check.number('sampleG', input.sampleG, { above: 0, unit: 'g' })
  check.number('aggregateG', input.aggregateG, { min: 0, unit: 'g' })
  check.number('finesG', input.finesG, { min: 0, unit: 'g' })
  check.number('balanceG', input.balanceG ?? 0, { min: 0, max: input.sampleG / 20, unit: 'g' })
  if (input.co2G !== undefined) check.range('co2G', input.co2G, { min: 0, unit: 'g' })
  // At 1 the aggregate would leave nothing behind and its mass could be anything.
  check.range('calcareousShare', input.calcareousShare, { min: 0, max: 0.95, unit: '1' })
  check.range('carbonation', input.carbonation, { min: 0, max: 1, unit: '1' })
  check.range('otherSolubleShare', input.otherSolubleShare, { min: 0, max: 1, unit: '1' })
  if (input.fines === 'binder' && input.aggregateG === 0) check.refuse({ field: 'aggregateG', code: 'empty' })
  const lime = (name: Parameters<typeof need>[3]) => need(check, 'lime', input.lime, name)
  const properties = {
    freeCaO: lime('freeCaO'),
    lump: lime('bulkDensityLump'),
    ground: lime('bulkDensityGround'),
    hydrateDensity: lime('bulkDensityHydrate'),
    puttyDensity: lime('puttyDensity'),
    solidDensity: lime('particleDensityHydrate'),
    aggregateDensity: need(check, 'aggregate', input.aggregate, 'bulkDensity'),
  }
  if (properties.freeCaO.low === 0) check.refuse({ field: 'lime.freeCaO', code: 'not-positive', value: 0 })
  check.finish()
  refuseImpossible(input)
  const error = input.balanceG ?? 0
  const weighed = (massG: number): Range => ({
    low: Math.max(0, massG - error),
    typical: massG,
    high: massG + error,
  })
  return {
    ...properties,
    sample: weighed(input.sampleG),
    kept: weighed(input.aggregateG),
    fines: weighed(input.finesG),
    co2: input.co2G ?? exactly(0),
    calcareous: input.calcareousShare,
    carbonated: input.carbonation,
    other: input.otherSolubleShare,
  }
}

/** A sample that is all carbonate gives off just what it can hold; rounding must not refuse it. */
const ROUNDING = 1e-9

/** Every corner of the ranges must leave some lime, or the ratio of aggregate to lime has no end. */
function refuseImpossible(input: SampleInput): void {
  const check = inspect()
  const insoluble = input.aggregateG + input.finesG
  const soluble = input.sampleG - insoluble - 3 * (input.balanceG ?? 0)
  if (insoluble <= 3 * (input.balanceG ?? 0)) check.refuse({ field: 'aggregateG', code: 'empty', unit: 'g' })
  if (soluble <= 0)
    check.refuse({
      field: 'aggregateG',
      code: 'too-large',
      value: insoluble,
      limit: input.sampleG,
      exclusive: true,
      unit: 'g',
    })
  check.finish()
  const filler = input.fines === 'binder' ? input.aggregateG : insoluble
  const dissolvedRock = (share: number) => (filler * share) / (1 - share)
  const room = soluble - input.otherSolubleShare.high * input.sampleG
  if (room <= 0)
    check.refuse({
      field: 'otherSolubleShare',
      code: 'too-large',
      value: input.otherSolubleShare.high,
      limit: soluble / input.sampleG,
      exclusive: true,
      unit: '1',
    })
  else if (dissolvedRock(input.calcareousShare.high) >= room)
    check.refuse({
      field: 'calcareousShare',
      code: 'too-large',
      value: input.calcareousShare.high,
      limit: room / (room + filler),
      exclusive: true,
      unit: '1',
    })
  const held = CO2_PER_CACO3 * (soluble - input.otherSolubleShare.low * input.sampleG)
  if (input.co2G !== undefined && input.co2G.low > held * (1 + ROUNDING))
    check.refuse({ field: 'co2G', code: 'too-large', value: input.co2G.low, limit: held, unit: 'g' })
  check.finish()
}
