import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { Properties } from './material.ts'
import { need } from './need.ts'
import { exactly, type Range } from './range.ts'
import { explainSample } from './sample-steps.ts'
import { CO2_PER_CACO3, type SampleRanges, spreadSample } from './sample-sum.ts'

/** What the insoluble fines are taken to be; the acid cannot say. */
export const FINES_KINDS = ['aggregate', 'clay', 'binder'] as const
export type FinesKind = (typeof FINES_KINDS)[number]

export interface SampleInput {
  /** Dry mass dissolved. */
  readonly sampleG: number
  /** Insoluble, kept by the finest sieve. */
  readonly aggregateG: number
  /** Insoluble, washed through that sieve and caught on the filter. */
  readonly finesG: number
  readonly fines: FinesKind
  /** How far off each weighing may be, either way. */
  readonly balanceG?: number | undefined
  /** Carbon dioxide given off, if it was measured; it then decides the degree of carbonation. */
  readonly co2G?: Range | undefined
  /** kg of acid-soluble rock or shell per kg of the original aggregate. */
  readonly calcareousShare: Range
  /** Share of the lime that had carbonated; not used where `co2G` is given. */
  readonly carbonation: Range
  /** kg of gypsum, salts, soluble silica and the like per kg of sample. */
  readonly otherSolubleShare: Range
  /** The lime it may have been made with: freeCaO, its three bulk densities, putty and particle density. */
  readonly lime: Properties
  /** The aggregate, or for earth-lime the whole soil: bulkDensity. */
  readonly aggregate: Properties
}

/** Aggregate (with clay, where there is some) for one of lime in one state; lime % of the dry mix by mass. */
export interface SampleRatio {
  readonly state: LimeState
  readonly byMass: Range
  readonly byVolume: Range
  /** Putty counts with its dry solids alone. */
  readonly limePercent: Range
}

/** What an acid cannot tell apart in this sample; the words catalogue has a sentence for each. */
export type SampleDoubt =
  | 'carbonation-assumed'
  | 'calcareous-assumed'
  | 'full-carbonation-hides-limestone'
  | 'fines-unidentified'
  | 'soluble-silica'
  | 'unburnt-counted-as-lime'
  | 'earth-clay-or-brick-dust'
  | 'earth-chalky-soil-or-lime'
  | 'earth-lime-bound-by-clay'

export interface SampleAnalysis {
  /** Ca(OH)2 that the sample held before it hardened, g. */
  readonly hydrateG: Range
  readonly caoG: Range
  /** Share of it that has carbonated. */
  readonly carbonation: Range
  /** Aggregate with the soluble part put back, g. */
  readonly aggregateG: Range
  /** Clay in the dry original mix, %; null unless the fines are clay. */
  readonly clayPercent: Range | null
  readonly ratios: readonly SampleRatio[]
  readonly doubts: readonly SampleDoubt[]
  readonly steps: ReturnType<typeof explainSample>
}

/**
 * Original proportions of a hardened mortar from what acid dissolved and left, on each lime state.
 *
 * Rests on: mortar of one lime; what dissolved, less the soluble aggregate and other soluble matter, was
 * that lime; what stayed was aggregate or clay. A petrographer's eye comes first; chemistry alone misleads.
 *
 * @returns faults: masses that do not fit into the sample, shares outside 0 to 1, more soluble aggregate or
 *   CO2 than what dissolved can hold, a property missing
 */
export function analyseSample(input: SampleInput): Outcome<SampleAnalysis> {
  return attempt(() => {
    const masses = refuseBadSample(input)
    const found = spreadSample(masses, { fines: input.fines, co2Measured: input.co2G !== undefined })
    const ratios = LIME_STATES.map((state) => ({
      state,
      byMass: found[`mass.${state}`],
      byVolume: found[`volume.${state}`],
      limePercent: found[`percent.${state}`],
    }))
    return {
      hydrateG: found.hydrate,
      caoG: found.cao,
      carbonation: found.carbonation,
      aggregateG: found.aggregate,
      clayPercent: input.fines === 'clay' ? found.clayPercent : null,
      ratios,
      doubts: doubtsOf(input),
      steps: explainSample(input, found, masses),
    }
  })
}

function refuseBadSample(input: SampleInput): SampleRanges {
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
      unit: '1',
    })
  else if (dissolvedRock(input.calcareousShare.high) >= room)
    check.refuse({
      field: 'calcareousShare',
      code: 'too-large',
      value: input.calcareousShare.high,
      limit: room / (room + filler),
      unit: '1',
    })
  const held = CO2_PER_CACO3 * (soluble - input.otherSolubleShare.low * input.sampleG)
  if (input.co2G !== undefined && input.co2G.low > held * (1 + ROUNDING))
    check.refuse({ field: 'co2G', code: 'too-large', value: input.co2G.low, limit: held, unit: 'g' })
  check.finish()
}

function doubtsOf(input: SampleInput): SampleDoubt[] {
  const doubts: SampleDoubt[] = ['soluble-silica', 'unburnt-counted-as-lime', 'calcareous-assumed']
  doubts.push(input.co2G === undefined ? 'carbonation-assumed' : 'full-carbonation-hides-limestone')
  if (input.finesG > 0) doubts.push('fines-unidentified')
  if (input.fines === 'clay')
    doubts.push('earth-clay-or-brick-dust', 'earth-chalky-soil-or-lime', 'earth-lime-bound-by-clay')
  return doubts
}
