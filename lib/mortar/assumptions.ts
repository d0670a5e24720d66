import { type Amount, toRange } from './amount.ts'
import type { Inspection, Limits } from './inspect.ts'
import type { Property } from './range.ts'
import type { Variables } from './variables.ts'

const practice = (low: number, typical: number, high: number, unit: string): Property => ({
  low,
  typical,
  high,
  unit,
  basis: 'practice',
})

/**
 * What no recipe, material or survey says and the sums must take all the same. All are common practice
 * without a source, none is exact, and the pages list them beside the figures they touch.
 */
export const ASSUMED = {
  /** Share of fresh mortar that is air, knocked up by hand or mixer. */
  air: practice(0.02, 0.05, 0.1, '1'),
  /** Free water that grains hold at a working consistency, kg per kg of dry grain. */
  grainWater: practice(0.03, 0.06, 0.1, 'kg/kg'),
  /** Free water that fine powders hold (pozzolans, cements, limes without a putty), kg per kg. */
  powderWater: practice(0.3, 0.45, 0.6, 'kg/kg'),
  /** Free water that clay holds, kg per kg of clay. */
  clayWater: practice(0.3, 0.5, 0.8, 'kg/kg'),
  /** Moisture of sand from an open heap where the recipe says damp and no more, kg per kg dry. */
  dampMoisture: practice(0.02, 0.04, 0.07, 'kg/kg'),
  /** Share of the likely water to put in first; the rest is judged at the mixer. */
  firstCharge: practice(0.7, 0.8, 0.9, '1'),
} as const satisfies Record<string, Property>

export type Assumption = keyof typeof ASSUMED
/** A job's own figures in place of {@link ASSUMED}. */
export type OwnAssumptions = Readonly<Partial<Record<Assumption, Amount>>>

/** What each of them may be. */
export const ASSUMED_LIMITS: Readonly<Record<Assumption, Limits>> = {
  air: { min: 0, max: 0.5 },
  grainWater: { min: 0, max: 1, unit: 'kg/kg' },
  powderWater: { min: 0, max: 3, unit: 'kg/kg' },
  clayWater: { min: 0, max: 3, unit: 'kg/kg' },
  dampMoisture: { min: 0, max: 1, unit: 'kg/kg' },
  firstCharge: { above: 0, max: 1 },
}

/**
 * Gives a job's own figures the places of what is assumed, before anything asks for them: the first to name a
 * variable says what it is.
 */
export function takeOwnAssumptions(own: OwnAssumptions, vars: Variables, check: Inspection): void {
  for (const name of Object.keys(ASSUMED) as Assumption[]) {
    const amount = own[name]
    if (amount === undefined) continue
    check.range(`assumed.${name}`, toRange(amount), ASSUMED_LIMITS[name])
    vars.add(`assumed.${name}`, amount)
  }
}
