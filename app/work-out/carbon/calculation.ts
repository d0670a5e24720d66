import { type CarbonSheet, countCarbon } from '#lib/mortar/carbon.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { exactly, type Range } from '#lib/mortar/range.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { fieldsOf, OTHER_ROLES } from './fields.ts'
import { show } from './show.ts'

/** Parts that nobody gave a figure for: they stand as nought in the sums, and as not known on the page. */
export const UNKNOWNS = ['fuel', 'gate', 'road'] as const
export type UnknownPart = (typeof UNKNOWNS)[number]

export interface CarbonFound {
  readonly sheet: CarbonSheet
  readonly unknown: readonly UnknownPart[]
  /** Is there a coefficient and a thickness, so that the uptake has a course? */
  readonly timed: boolean
}

/** Carbon dioxide of a mortar, given off and taken back. What is not known stays not known. */
export const carbon: Calculation<CarbonFound> = {
  name: 'carbon',
  uses: ({ role }) =>
    role === 'lime' || role === 'aggregate' || (OTHER_ROLES as readonly string[]).includes(role),
  sources: ['ipcc-2006-v3', 'grosso-campo-2022', 'iupac-atomic-weights'],
  fields: fieldsOf,
  work(given): Outcome<CarbonFound> {
    const others = ['sand', 'other'].filter((name) => name === 'sand' || given.chosen('other') !== '')
    const [k, depth] = [given.amount('k'), given.amount('thickness')]
    const timed = k !== undefined && depth !== undefined
    const sheet = countCarbon({
      mortarL: given.need('mortar'),
      limes: [
        {
          massKg: given.need('lime-kg'),
          caoShare: given.need('cao'),
          mgoShare: given.need('mgo'),
          fuelKgPerKg: orNone(given.amount('fuel')),
          kilnDustShare: given.amount('dust'),
          distanceKm: orNone(given.amount('lime-km')),
        },
      ],
      others: others.map((name) => ({
        massKg: given.need(`${name}-kg`),
        gateKgPerKg: orNone(given.amount(`${name}-gate`)),
        distanceKm: orNone(given.amount(`${name}-km`)),
      })),
      transportKgPerTkm: given.need('haulage'),
      uptakeShare: given.need('uptake'),
      // Where there are no ages, neither of the two is in any figure.
      kMmPerRootDay: k ?? exactly(1),
      depthMm: depth ?? exactly(1),
      years: timed ? yearsOf(given) : [],
    })
    if (!sheet.ok) return sheet
    return { ok: true, value: { sheet: sheet.value, unknown: unknownIn(given, others), timed } }
  },
  show,
}

const orNone = (amount: Range | undefined): Range => amount ?? exactly(0)

/** The ages asked for. */
export const yearsOf = (given: Given): number[] => given.list('years').flatMap((year) => year ?? [])

function unknownIn(given: Given, others: readonly string[]): UnknownPart[] {
  const none = (...names: readonly string[]) => names.some((name) => given.amount(name) === undefined)
  const missing: Record<UnknownPart, boolean> = {
    fuel: none('fuel'),
    gate: none(...others.map((name) => `${name}-gate`)),
    road: none('lime-km', ...others.map((name) => `${name}-km`)),
  }
  return UNKNOWNS.filter((part) => missing[part])
}
