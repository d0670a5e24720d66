import { attempt, type Outcome } from './fault.ts'
import { LIME_STATES, type LimeState } from './lime.ts'
import type { Properties } from './material.ts'
import type { Range } from './range.ts'
import { readSample } from './sample-input.ts'
import { explainSample } from './sample-steps.ts'
import { spreadSample } from './sample-sum.ts'

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
    const masses = readSample(input)
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

function doubtsOf(input: SampleInput): SampleDoubt[] {
  const doubts: SampleDoubt[] = ['soluble-silica', 'unburnt-counted-as-lime', 'calcareous-assumed']
  doubts.push(input.co2G === undefined ? 'carbonation-assumed' : 'full-carbonation-hides-limestone')
  if (input.finesG > 0) doubts.push('fines-unidentified')
  if (input.fines === 'clay')
    doubts.push('earth-clay-or-brick-dust', 'earth-chalky-soil-or-lime', 'earth-lime-bound-by-clay')
  return doubts
}
