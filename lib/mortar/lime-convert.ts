import { type Amount, toRange } from './amount.ts'
import type { Step } from './explain.ts'
import { attempt, type Outcome } from './fault.ts'
import { bulkPropertyOf } from './ingredient.ts'
import { inspect } from './inspect.ts'
import {
  HYDRATE_SOLID_DENSITY,
  hydratePerQuicklime,
  LIME_STATES,
  type LimeState,
  puttySolids,
} from './lime.ts'
import { explainConversion } from './lime-convert-steps.ts'
import { PROPERTY_LIMITS, type Properties, type PropertyName } from './material.ts'
import type { Range } from './range.ts'
import { DRAWS, spreadVector } from './spread.ts'
import { ABSENT, at, variables } from './variables.ts'

export interface LimeConversionInput {
  readonly amount: Amount
  readonly unit: 'kg' | 'L'
  /** State that the amount was measured in. */
  readonly state: LimeState
  readonly properties: Properties
  /** Share of the free MgO that hydrates: 0 on site, up to 1 under pressure or after years. */
  readonly hydratedMgOShare?: Amount
  readonly draws?: number
}

/** The same lime in another state. */
export interface LimeAmount {
  readonly massKg: Range
  /** Null where the bulk density in that state is not known. */
  readonly volumeL: Range | null
}

export interface LimeConversion {
  /** Null for putty where its density is not known. */
  readonly states: Readonly<Record<LimeState, LimeAmount | null>>
  /** Water taken up by the free lime, kg. */
  readonly boundWaterKg: Range
  /** Free water that makes it a putty, kg; null where the putty's density is not known. */
  readonly puttyWaterKg: Range | null
  /** Growth on slaking: litres of the slaked state from one litre of the quicklime. An outcome. */
  readonly growth: Readonly<Record<GrowthKey, Range | null>>
  readonly steps: readonly Step[]
}

const GROWTHS = [
  ['lump-to-hydrate', 'lump-quicklime', 'dry-hydrate'],
  ['lump-to-putty', 'lump-quicklime', 'putty'],
  ['ground-to-hydrate', 'ground-quicklime', 'dry-hydrate'],
  ['ground-to-putty', 'ground-quicklime', 'putty'],
] as const
export type GrowthKey = (typeof GROWTHS)[number][0]

const NEEDED: readonly PropertyName[] = [
  'freeCaO',
  'freeMgO',
  'bulkDensityLump',
  'bulkDensityGround',
  'bulkDensityHydrate',
  'puttyDensity',
  'particleDensityHydrate',
]

/**
 * An amount of lime in each of its states, by mass and volume, with its growth on slaking.
 *
 * Free CaO takes up its water (and so does as much of the MgO as is said to hydrate); what is inert
 * stays. Putty is solids and water alone, without air.
 */
export const convertLime = (input: LimeConversionInput): Outcome<LimeConversion> =>
  attempt(() => {
    const { places, vars } = plan(input)
    const outputs = ['quicklimeKg', 'hydrateKg', 'puttyKg', ...LIME_STATES, ...GROWTHS.map(([key]) => key)]
    const kernel = (x: Float64Array, out: Float64Array) => {
      const hydrate = hydratePerQuicklime(
        at(x, places.freeCaO),
        at(x, places.freeMgO) * at(x, places.hydratedMgOShare),
      )
      const solid =
        places.particleDensityHydrate === ABSENT
          ? HYDRATE_SOLID_DENSITY
          : at(x, places.particleDensityHydrate)
      const solids = places.puttyDensity === ABSENT ? 0 : puttySolids(at(x, places.puttyDensity), solid)
      const kgPerQuicklime = {
        'lump-quicklime': 1,
        'ground-quicklime': 1,
        'dry-hydrate': hydrate,
        putty: solids > 0 ? hydrate / solids : 0,
      }
      const bulk = (state: LimeState) => at(x, places[bulkPropertyOf(state)]) / 1000
      const given = at(x, places.amount) * (input.unit === 'L' ? bulk(input.state) : 1)
      const quicklimeKg = given / kgPerQuicklime[input.state]
      const litres = (state: LimeState) => (bulk(state) > 0 ? kgPerQuicklime[state] / bulk(state) : 0)
      out[0] = quicklimeKg
      out[1] = quicklimeKg * hydrate
      out[2] = quicklimeKg * kgPerQuicklime.putty
      LIME_STATES.forEach((state, s) => {
        out[3 + s] = quicklimeKg * litres(state)
      })
      GROWTHS.forEach(([, from, to], g) => {
        out[7 + g] = litres(from) > 0 ? litres(to) / litres(from) : 0
      })
    }
    const ranges = spreadVector(vars.names, vars.ranges, outputs, kernel, input.draws ?? DRAWS)
    return assemble(input, places, ranges)
  })

type Places = Record<PropertyName | 'amount' | 'hydratedMgOShare', number>

function plan({ amount, unit, state, properties, hydratedMgOShare }: LimeConversionInput) {
  const check = inspect()
  const vars = variables()
  check.range('amount', toRange(amount), { min: 0, max: 1e9, unit })
  check.range('hydratedMgOShare', toRange(hydratedMgOShare ?? 0), { min: 0, max: 1 })
  if (!LIME_STATES.includes(state)) check.refuse({ field: 'state', code: 'unknown', value: String(state) })
  const places = { amount: vars.add('amount', amount) } as Places
  for (const name of NEEDED) {
    const property = properties[name]
    if (property !== undefined) check.range(`properties.${name}`, property, PROPERTY_LIMITS[name])
    places[name] = property === undefined ? ABSENT : vars.add(`properties.${name}`, property)
  }
  places.hydratedMgOShare = vars.add('hydratedMgOShare', hydratedMgOShare ?? 0)
  const bulk = bulkPropertyOf(state)
  for (const name of new Set<PropertyName>(['freeCaO', ...(unit === 'L' || state === 'putty' ? [bulk] : [])]))
    if (places[name] === ABSENT) check.refuse({ field: `properties.${name}`, code: 'unknown' })
  check.finish()
  return { places, vars }
}

function assemble(input: LimeConversionInput, places: Places, ranges: readonly Range[]): LimeConversion {
  const [quicklimeKg, hydrateKg, puttyKg] = ranges as [Range, Range, Range]
  const known = (state: LimeState) => places[bulkPropertyOf(state)] !== ABSENT
  const mass: Record<LimeState, Range> = {
    'lump-quicklime': quicklimeKg,
    'ground-quicklime': quicklimeKg,
    'dry-hydrate': hydrateKg,
    putty: puttyKg,
  }
  const states = {} as Record<LimeState, LimeAmount | null>
  LIME_STATES.forEach((state, s) => {
    const volumeL = known(state) ? (ranges[3 + s] as Range) : null
    states[state] = state === 'putty' && volumeL === null ? null : { massKg: mass[state], volumeL }
  })
  const growth = {} as Record<GrowthKey, Range | null>
  GROWTHS.forEach(([key, from, to], g) => {
    growth[key] = known(from) && known(to) ? (ranges[7 + g] as Range) : null
  })
  const difference = (a: Range, b: Range): Range => {
    const typical = a.typical - b.typical
    return { low: Math.min(typical, a.low - b.low), typical, high: Math.max(typical, a.high - b.high) }
  }
  return {
    states,
    boundWaterKg: difference(hydrateKg, quicklimeKg),
    puttyWaterKg: states.putty === null ? null : difference(puttyKg, hydrateKg),
    growth,
    steps: explainConversion(input, quicklimeKg, hydrateKg, states),
  }
}
