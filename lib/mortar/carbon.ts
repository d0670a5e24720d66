import { refuseBadCarbon } from './carbon-input.ts'
import { explainCarbon } from './carbon-steps.ts'
import { spreadCarbon } from './carbon-sum.ts'
import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import type { Range } from './range.ts'

/** How the figure is made; printed beside it. */
export const CARBON_METHOD = 'calcination-by-stoichiometry' as const

export interface CarbonInput {
  /** Mortar that the masses below make, L. */
  readonly mortarL: Range
  readonly limes: readonly {
    readonly massKg: Range
    /** kg of each oxide that was burnt out of carbonate, per kg of lime as bought. */
    readonly caoShare: Range
    readonly mgoShare: Range
    /** kg of CO2 from the kiln's fuel and power, per kg of lime as bought. */
    readonly fuelKgPerKg: Range
    /** kg of kiln dust burnt and thrown away per kg of lime. */
    readonly kilnDustShare?: Range | undefined
    readonly distanceKm: Range
  }[]
  /** Sand, pozzolan, fibre and all else. */
  readonly others: readonly {
    readonly massKg: Range
    /** Cradle to gate, kg of CO2 per kg. */
    readonly gateKgPerKg: Range
    readonly distanceKm: Range
  }[]
  /** kg of CO2 per tonne and km. */
  readonly transportKgPerTkm: Range
  /** Share of the lime's CaO that carbonates in the end. */
  readonly uptakeShare: Range
  /** As in `carbonate`: coefficient and thickness from one face; the uptake follows the front. */
  readonly kMmPerRootDay: Range
  readonly depthMm: Range
  /** Ages to report, years. */
  readonly years: readonly number[]
}

export interface CarbonSheet {
  readonly method: typeof CARBON_METHOD
  /** All kg of CO2 for the job. */
  readonly calcination: Range
  readonly fuel: Range
  readonly others: Range
  readonly transport: Range
  readonly released: Range
  /** Taken back from the air by each age, and what is left then. */
  readonly uptake: readonly { readonly years: number; readonly takenKg: Range; readonly leftKg: Range }[]
  /** Taken back once air has reached all of it, and what is left for good. Asks for no coefficient. */
  readonly inTheEnd: { readonly takenKg: Range; readonly leftKg: Range }
  /** Released, kg of CO2 per m³ of mortar. */
  readonly perM3: Range
  readonly steps: readonly Step[]
}

/**
 * Carbon dioxide of a job's mortar: burnt out of the stone, from the kiln's fire, from all else, from the
 * road; and what the lime takes back, along the square-root law. Magnesia's share is never counted back.
 *
 * @returns faults: negative or missing quantities, shares over 1, no ingredient at all
 */
export function countCarbon(input: CarbonInput): Outcome<CarbonSheet> {
  return attempt(() => {
    refuseBadCarbon(input)
    const [calcination, fuel, others, transport, released, perM3, takenKg, leftKg, ...ages] =
      spreadCarbon(input)
    const uptake = input.years.map((years, i) => ({
      years,
      takenKg: ages[2 * i] as Range,
      leftKg: ages[2 * i + 1] as Range,
    }))
    const inTheEnd = { takenKg, leftKg }
    const parts = { calcination, fuel, others, transport, released }
    return {
      method: CARBON_METHOD,
      ...parts,
      uptake,
      inTheEnd,
      perM3,
      steps: explainCarbon(input, parts, { uptake, inTheEnd, perM3 }),
    }
  })
}
