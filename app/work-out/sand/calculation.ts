import { attempt, MortarFault, type Outcome } from '#lib/mortar/fault.ts'
import { LIME_STATES, type LimeState } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import type { Range } from '#lib/mortar/range.ts'
import { bulkingByMoisture, bulkingFromJar, type Found } from '#lib/mortar/sand-bulking.ts'
import { correctMoisture, type MoistSand } from '#lib/mortar/sand-moisture.ts'
import { leanestProportion, voidsFromDensities, voidsFromWater } from '#lib/mortar/sand-voids.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { ASKED, type Asked, fieldsOf } from './fields.ts'
import { show } from './show.ts'

/** Voids with the leanest proportion for each lime state, bulking, or sand weighed dry and damp. */
export type SandFound =
  | { readonly what: 'voids'; readonly voids: Found; readonly leanest: readonly Leanest[] }
  | { readonly what: 'bulking'; readonly bulking: Found }
  | { readonly what: 'moisture'; readonly moist: MoistSand }

/** The least lime that fills the voids: dry sand to one of the lime, by volume. */
export interface Leanest {
  readonly state: LimeState
  /** Putty that one litre of the lime makes. */
  readonly paste: Range
  readonly found: Found
}

/** The sand in its heap: what lies between its grains, how it swells when damp, how much of it is water. */
export const sand: Calculation<SandFound> = {
  name: 'sand',
  uses: ({ role }) => role === 'aggregate' || role === 'lime',
  sources: ['iupac-atomic-weights'],
  vocabularies: ['measured-states'],
  fields: fieldsOf,
  work: (given, data) => WORK[given.choice('what', ASKED)](given, data),
  show,
}

const WORK: Readonly<Record<Asked, (given: Given, data: BenchData) => Outcome<SandFound>>> = {
  'voids-water': (given, data) =>
    withLeanest(
      voidsFromWater({ sandMl: given.need('sand-ml'), waterMl: given.need('water-ml') }),
      given,
      data,
    ),
  'voids-densities': (given, data) =>
    withLeanest(
      voidsFromDensities({ bulkKgM3: given.need('bulk'), particleKgM3: given.need('particle') }),
      given,
      data,
    ),
  'bulking-jar': (given) =>
    bulked(bulkingFromJar({ dampMm: given.need('damp-mm'), floodedMm: given.need('flooded-mm') })),
  'bulking-moisture': (given) =>
    bulked(
      bulkingByMoisture({
        moisturePercent: given.need('moisture'),
        peakPercent: given.need('peak'),
        peakMoisturePercent: given.need('peak-at'),
        saturationPercent: given.need('saturation'),
      }),
    ),
  moisture: (given) => {
    const moist = correctMoisture({
      kg: given.need('kg'),
      weighed: given.choice('weighed', ['dry', 'damp']),
      moisturePercent: given.need('moisture'),
      absorptionPercent: given.need('absorption'),
    })
    return moist.ok ? { ok: true, value: { what: 'moisture', moist: moist.value } } : moist
  },
}

const bulked = (found: Outcome<Found>): Outcome<SandFound> =>
  found.ok ? { ok: true, value: { what: 'bulking', bulking: found.value } } : found

/** Voids, and for each state of the lime the proportion whose putty still fills them. */
function withLeanest(voids: Outcome<Found>, given: Given, data: BenchData): Outcome<SandFound> {
  if (!voids.ok) return voids
  const properties = data.materials[given.chosen('lime')]?.properties ?? {}
  return attempt(() => {
    // One conversion: litres of every state that one litre of putty was; the other way round, putty of each.
    const { states } = worthOf(convertLime({ amount: 1, unit: 'L', state: 'putty', properties }))
    return {
      what: 'voids',
      voids: voids.value,
      leanest: LIME_STATES.flatMap((state) => {
        const perPutty = states[state]?.volumeL
        if (!perPutty) return []
        const paste = inverse(perPutty)
        return [
          {
            state,
            paste,
            found: worthOf(leanestProportion({ voidsPercent: voids.value.value, pasteL: paste })),
          },
        ]
      }),
    }
  })
}

const inverse = ({ low, typical, high }: Range): Range => ({
  low: 1 / high,
  typical: 1 / typical,
  high: 1 / low,
})

function worthOf<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new MortarFault(...outcome.faults)
}
