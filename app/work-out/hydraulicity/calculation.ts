import { classesOf, classifyLime, type LimeChemistry, type SchemeClass } from '#lib/mortar/chemistry.ts'
import { burnStone } from '#lib/mortar/chemistry-stone.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { ASKED, fieldsOf } from './fields.ts'
import { show } from './show.ts'

/** A lime from its oxides, or what its stone's clay lets one expect. */
export type HydraulicFound =
  | { readonly from: 'oxides'; readonly chemistry: LimeChemistry }
  | {
      readonly from: 'stone'
      readonly oxides: Range
      readonly candlotIndex: Range
      readonly classes: readonly SchemeClass[]
    }

/** How hydraulic a lime is by its chemistry, under each author's classes. */
export const hydraulicity: Calculation<HydraulicFound> = {
  name: 'hydraulicity',
  sources: ['us-cement-handbook-1905', 'notes-building-construction-3', 'eckel-1905'],
  fields: fieldsOf,
  work: (given) => (given.choice('from', ASKED) === 'oxides' ? fromOxides(given) : fromStone(given)),
  show,
}

function fromOxides(given: Given): Outcome<HydraulicFound> {
  const found = classifyLime({
    sio2: given.need('sio2'),
    al2o3: given.need('al2o3'),
    fe2o3: given.need('fe2o3'),
    cao: given.need('cao'),
    mgo: given.need('mgo'),
    co2: given.amount('co2'),
    so3: given.amount('so3'),
    clayInStone: given.amount('clay'),
  })
  return found.ok ? { ok: true, value: { from: 'oxides', chemistry: found.value } } : found
}

function fromStone(given: Given): Outcome<HydraulicFound> {
  const clay = given.need('clay')
  const found = burnStone(clay)
  if (!found.ok) return found
  const { oxides, candlotIndex } = found.value
  const classes = classesOf({ candlot: candlotIndex, oxides, clay, cementation: undefined })
  return { ok: true, value: { from: 'stone', oxides, candlotIndex, classes } }
}
