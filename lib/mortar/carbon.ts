import { MOLAR_MASS } from './constants.ts'
import { type Step, working } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
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
    readonly kilnDustShare?: Range
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
const PROCESS = 'ipcc-2006-v3, ch. 2, Table 2.4'

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
    return { method: CARBON_METHOD, ...parts, uptake, perM3, steps: explain(input, parts, uptake, perM3) }
  })
}

function refuseBadCarbon(input: CarbonInput): void {
  const check = inspect()
  const kg = { min: 0, unit: 'kg' }
  const km = { min: 0, max: 50_000, unit: 'km' }
  if (input.limes.length + input.others.length === 0) check.refuse({ field: 'limes', code: 'empty' })
  check.range('mortarL', input.mortarL, { above: 0, unit: 'L' })
  input.limes.forEach((lime, i) => {
    check.range(`limes.${i}.massKg`, lime.massKg, kg)
    check.range(`limes.${i}.caoShare`, lime.caoShare, { min: 0, max: 1 })
    check.range(`limes.${i}.mgoShare`, lime.mgoShare, { min: 0, max: 1 })
    if (lime.caoShare.high + lime.mgoShare.high > 1.0000001)
      check.refuse({
        field: `limes.${i}.mgoShare`,
        code: 'inconsistent',
        value: lime.caoShare.high + lime.mgoShare.high,
        limit: 1,
      })
    check.range(`limes.${i}.fuelKgPerKg`, lime.fuelKgPerKg, { min: 0, max: 10 })
    check.range(`limes.${i}.kilnDustShare`, lime.kilnDustShare ?? exactly(0), { min: 0, max: 1 })
    check.range(`limes.${i}.distanceKm`, lime.distanceKm, km)
  })
  input.others.forEach((other, i) => {
    check.range(`others.${i}.massKg`, other.massKg, kg)
    check.range(`others.${i}.gateKgPerKg`, other.gateKgPerKg, { min: -100, max: 1000 })
    check.range(`others.${i}.distanceKm`, other.distanceKm, km)
  })
  check.range('transportKgPerTkm', input.transportKgPerTkm, { min: 0, max: 100 })
  check.range('uptakeShare', input.uptakeShare, { min: 0, max: 1 })
  check.range('kMmPerRootDay', input.kMmPerRootDay, { above: 0, max: 50, unit: 'mm/d^0.5' })
  check.range('depthMm', input.depthMm, { above: 0, max: 5000, unit: 'mm' })
  input.years.forEach((years, i) => {
    check.number(`years.${i}`, years, { min: 0, max: 2000, unit: 'a' })
  })
  check.finish()
}

function variablesOf(input: CarbonInput): Record<string, Range> {
  const all: Record<string, Range> = {
    mortar: input.mortarL,
    transport: input.transportKgPerTkm,
    share: input.uptakeShare,
    k: input.kMmPerRootDay,
    depth: input.depthMm,
  }
  input.limes.forEach((lime, i) => {
    all[`lime.${i}.mass`] = lime.massKg
    all[`lime.${i}.cao`] = lime.caoShare
    all[`lime.${i}.mgo`] = lime.mgoShare
    all[`lime.${i}.fuel`] = lime.fuelKgPerKg
    all[`lime.${i}.dust`] = lime.kilnDustShare ?? exactly(0)
    all[`lime.${i}.km`] = lime.distanceKm
  })
  input.others.forEach((other, i) => {
    all[`other.${i}.mass`] = other.massKg
    all[`other.${i}.gate`] = other.gateKgPerKg
    all[`other.${i}.km`] = other.distanceKm
  })
  return all
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

function explain(
  input: CarbonInput,
  parts: Readonly<Record<'calcination' | 'fuel' | 'others' | 'transport' | 'released', Range>>,
  uptake: CarbonSheet['uptake'],
  perM3: Range,
): Step[] {
  const { calcination, fuel, others, transport, released } = parts
  const kg = 'kg'
  return [
    {
      symbol: 'C_c',
      means: 'carbon-calcination',
      formula: 'Σ m · (CaO · 44.009/56.077 + MgO · 44.009/40.304) · (1 + dust)',
      numbers: working`${calcination.typical}`,
      result: calcination,
      unit: kg,
      source: PROCESS,
    },
    {
      symbol: 'C_f',
      means: 'carbon-fuel',
      formula: 'Σ m · e_fuel',
      numbers: working`${fuel.typical}`,
      result: fuel,
      unit: kg,
    },
    {
      symbol: 'C_o',
      means: 'carbon-others',
      formula: 'Σ m · e_gate',
      numbers: working`${others.typical}`,
      result: others,
      unit: kg,
    },
    {
      symbol: 'C_t',
      means: 'carbon-transport',
      formula: 'Σ m / 1000 · km · e_t',
      numbers: working`${transport.typical}`,
      result: transport,
      unit: kg,
    },
    {
      symbol: 'C',
      means: 'carbon-released',
      formula: 'C_c + C_f + C_o + C_t',
      numbers: working`${calcination.typical} + ${fuel.typical} + ${others.typical} + ${transport.typical}`,
      result: released,
      unit: kg,
    },
    {
      symbol: 'C/V',
      means: 'carbon-per-m3',
      formula: '1000 · C / V',
      numbers: working`1000 · ${released.typical} / ${input.mortarL.typical}`,
      result: perM3,
      unit: 'kg/m3',
    },
    ...uptake.map(({ years, takenKg }) => ({
      symbol: `U(${years})`,
      means: 'carbon-uptake',
      formula: 'CaO · 44.009/56.077 · share · min(1, k √t / d)',
      numbers: working`${takenKg.typical}`,
      result: takenKg,
      unit: kg,
      source: 'grosso-campo-2022',
    })),
  ]
}
