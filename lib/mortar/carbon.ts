import { refuseBadCarbon, variablesOf } from './carbon-input.ts'
import { explainCarbon } from './carbon-steps.ts'
import { MOLAR_MASS } from './constants.ts'
import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { exactly, type Range } from './range.ts'
import { spread } from './spread.ts'

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
  /** Released, kg of CO2 per m³ of mortar. */
  readonly perM3: Range
  readonly steps: readonly Step[]
}

/** CO2 driven out per kg of oxide burnt, kg. */
export const CO2_PER_CAO = MOLAR_MASS.CO2 / MOLAR_MASS.CaO
export const CO2_PER_MGO = MOLAR_MASS.CO2 / MOLAR_MASS.MgO

const DAYS_PER_YEAR = 365.25

/**
 * Carbon dioxide of a job's mortar: burnt out of the stone, from the kiln's fire, from all else, from the
 * road; and what the lime takes back, along the square-root law. Magnesia's share is never counted back.
 *
 * @returns faults: negative or missing quantities, shares over 1, no ingredient at all
 */
export function countCarbon(input: CarbonInput): Outcome<CarbonSheet> {
  return attempt(() => {
    refuseBadCarbon(input)
    const found = spread(variablesOf(input), (x) => sum(input, x))
    const at = (name: string) => found[name] ?? exactly(0)
    const uptake = input.years.map((years, i) => ({
      years,
      takenKg: at(`taken.${i}`),
      leftKg: at(`left.${i}`),
    }))
    const parts = {
      calcination: at('calcination'),
      fuel: at('fuel'),
      others: at('others'),
      transport: at('transport'),
      released: at('released'),
    }
    const perM3 = at('perM3')
    return {
      method: CARBON_METHOD,
      ...parts,
      uptake,
      perM3,
      steps: explainCarbon(input, parts, uptake, perM3),
    }
  })
}

function sum(input: CarbonInput, x: Readonly<Record<string, number>>): Record<string, number> {
  const v = (name: string) => x[name] as number
  let [calcination, fuel, others, tonneKm, bound] = [0, 0, 0, 0, 0]
  input.limes.forEach((_, i) => {
    const mass = v(`lime.${i}.mass`)
    const cao = mass * v(`lime.${i}.cao`)
    calcination += (cao * CO2_PER_CAO + mass * v(`lime.${i}.mgo`) * CO2_PER_MGO) * (1 + v(`lime.${i}.dust`))
    fuel += mass * v(`lime.${i}.fuel`)
    bound += cao * CO2_PER_CAO
    tonneKm += (mass * v(`lime.${i}.km`)) / 1000
  })
  input.others.forEach((_, i) => {
    const mass = v(`other.${i}.mass`)
    others += mass * v(`other.${i}.gate`)
    tonneKm += (mass * v(`other.${i}.km`)) / 1000
  })
  const transport = tonneKm * v('transport')
  const released = calcination + fuel + others + transport
  const out: Record<string, number> = { calcination, fuel, others, transport, released }
  out.perM3 = (1000 * released) / v('mortar')
  input.years.forEach((years, i) => {
    const front = Math.min(1, (v('k') * Math.sqrt(years * DAYS_PER_YEAR)) / v('depth'))
    out[`taken.${i}`] = bound * v('share') * front
    out[`left.${i}`] = released - bound * v('share') * front
  })
  return out
}
