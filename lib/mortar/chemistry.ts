import { HYDRAULIC_SCHEMES, type HydraulicClass, type SchemeMeasure } from './chemistry-schemes.ts'
import { explainChemistry } from './chemistry-steps.ts'
import { MOLAR_MASS } from './constants.ts'
import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { inspect } from './inspect.ts'
import { type Basis, exactly, type Range } from './range.ts'
import { spread } from './spread.ts'

/** Mass % of a lime as analysed. `co2` and `so3` only sharpen the free lime. */
export interface ChemistryInput {
  readonly sio2: Range
  readonly al2o3: Range
  readonly fe2o3: Range
  readonly cao: Range
  readonly mgo: Range
  readonly co2?: Range | undefined
  readonly so3?: Range | undefined
  /** Clay in the limestone before burning, %, where the stone is known. */
  readonly clayInStone?: Range | undefined
}

export interface SchemeClass {
  readonly scheme: string
  readonly measure: SchemeMeasure
  readonly value: Range
  /** Every class that the range touches, weakest first; empty where the scheme names none. */
  readonly classes: readonly HydraulicClass[]
  /** The class of the typical value; null in a gap of the scheme. */
  readonly typical: HydraulicClass | null
  readonly basis: Basis
  readonly source?: string
}

export interface LimeChemistry {
  /** (SiO2 + Al2O3) / CaO */
  readonly candlotIndex: Range
  /** (SiO2 + Al2O3 + Fe2O3) / (CaO + MgO) */
  readonly fullIndex: Range
  /** (2.8 SiO2 + 1.1 Al2O3 + 0.7 Fe2O3) / (CaO + 1.4 MgO) */
  readonly cementationIndex: Range
  /** CaO that no acid oxide holds, %: none combined at the high end, all of it combined at the low end. */
  readonly freeCaO: Range
  /** The same as Ca(OH)2, as certificates print it. */
  readonly freeHydrate: Range
  readonly classes: readonly SchemeClass[]
  readonly steps: readonly Step[]
}

/** CaO bound per kg of each oxide in the silicates and aluminates of a well-burnt lime, kg. */
const HELD = {
  /** 2 CaO·SiO2 */
  sio2: (2 * MOLAR_MASS.CaO) / MOLAR_MASS.SiO2,
  /** 2 CaO·Al2O3 and 2 CaO·Fe2O3, the combination that the cementation index takes */
  al2o3: (2 * MOLAR_MASS.CaO) / MOLAR_MASS.Al2O3,
  fe2o3: (2 * MOLAR_MASS.CaO) / MOLAR_MASS.Fe2O3,
  co2: MOLAR_MASS.CaO / MOLAR_MASS.CO2,
  so3: MOLAR_MASS.CaO / MOLAR_MASS.SO3,
} as const

/**
 * Indices of a lime from its oxides, its class under each named scheme, and the bounds of its free lime.
 * A calculated class is chemistry alone: neither the historic term nor a modern class follows from it.
 *
 * @returns faults: shares that are negative, not numbers, or add up to more than 100 %; no lime at all
 */
export function classifyLime(input: ChemistryInput): Outcome<LimeChemistry> {
  return attempt(() => {
    refuseBadOxides(input)
    const found = spread(
      {
        sio2: input.sio2,
        al2o3: input.al2o3,
        fe2o3: input.fe2o3,
        cao: input.cao,
        mgo: input.mgo,
        co2: input.co2 ?? exactly(0),
        so3: input.so3 ?? exactly(0),
      },
      (x) => {
        const unbound = Math.max(0, x.cao - HELD.co2 * x.co2 - HELD.so3 * x.so3)
        const held = HELD.sio2 * x.sio2 + HELD.al2o3 * x.al2o3 + HELD.fe2o3 * x.fe2o3
        return {
          candlot: (x.sio2 + x.al2o3) / x.cao,
          full: (x.sio2 + x.al2o3 + x.fe2o3) / (x.cao + x.mgo),
          cementation: (2.8 * x.sio2 + 1.1 * x.al2o3 + 0.7 * x.fe2o3) / (x.cao + 1.4 * x.mgo),
          oxides: x.sio2 + x.al2o3,
          most: unbound,
          least: Math.max(0, unbound - held),
        }
      },
    )
    const freeCaO = {
      low: found.least.low,
      typical: (found.least.typical + found.most.typical) / 2,
      high: found.most.high,
    }
    const perCaO = MOLAR_MASS.CaOH2 / MOLAR_MASS.CaO
    const freeHydrate = {
      low: freeCaO.low * perCaO,
      typical: freeCaO.typical * perCaO,
      high: freeCaO.high * perCaO,
    }
    const values: Record<SchemeMeasure, Range | undefined> = {
      candlot: found.candlot,
      cementation: found.cementation,
      oxides: found.oxides,
      clay: input.clayInStone,
    }
    return {
      candlotIndex: found.candlot,
      fullIndex: found.full,
      cementationIndex: found.cementation,
      freeCaO,
      freeHydrate,
      classes: classesOf(values),
      steps: explainChemistry(input, found, freeCaO),
    }
  })
}

function refuseBadOxides(input: ChemistryInput): void {
  const check = inspect()
  const { clayInStone, ...rest } = input
  const oxides = Object.entries(rest).flatMap(([field, value]) =>
    value === undefined ? [] : [[field, value] as const],
  )
  for (const [field, value] of oxides)
    check.range(
      field,
      value,
      field === 'cao' ? { above: 0, max: 100, unit: '%' } : { min: 0, max: 100, unit: '%' },
    )
  if (clayInStone !== undefined) check.range('clayInStone', clayInStone, { min: 0, max: 100, unit: '%' })
  check.finish()
  const total = oxides.reduce((sum, [, value]) => sum + value.typical, 0)
  // Half a per cent for the rounding of a printed analysis.
  if (total > 100.5) check.refuse({ field: 'cao', code: 'inconsistent', value: total, limit: 100, unit: '%' })
  check.finish()
}

/** The class of each scheme that sorts by one of these measures; a measure that is not known is left out. */
export function classesOf(values: Readonly<Record<SchemeMeasure, Range | undefined>>): SchemeClass[] {
  return HYDRAULIC_SCHEMES.flatMap(({ id, measure, basis, source, bands }) => {
    const value = values[measure]
    if (value === undefined) return []
    const holds = (x: number) => bands.find((band) => x >= band.from && x < band.to)?.class ?? null
    const touched = bands.filter((band) => value.high >= band.from && value.low < band.to)
    return [
      {
        scheme: id,
        measure,
        value,
        classes: touched.map((band) => band.class),
        typical: holds(value.typical),
        basis,
        ...(source === undefined ? {} : { source }),
      },
    ]
  })
}
