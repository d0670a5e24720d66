import { WATER_PER_CAO } from '#lib/mortar/constants.ts'
import type { Outcome } from '#lib/mortar/fault.ts'
import { convertLime, type LimeConversion } from '#lib/mortar/lime-convert.ts'
import type { Range } from '#lib/mortar/range.ts'
import { type Slaking, slakeBatch } from '#lib/mortar/slaking.ts'
import { type SlakingPoint, slakingCourse } from '#lib/mortar/slaking-course.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import type { Calculation, Given } from '../../_ui/workshop/calculation.ts'
import { propertiesOf } from '../../_ui/workshop/own-figures.ts'
import { fieldsOf, limeProperties, STATES } from './fields.ts'
import { show } from './show.tsx'

/** What one batch makes, how hot it gets on average, and the way there. */
export interface SlakingFound {
  readonly lime: LimeConversion
  readonly balance: Slaking
  readonly course: readonly SlakingPoint[]
  /** Water that the free lime binds at the most, kg. */
  readonly mostBoundKg: number
  readonly waterKg: Range
}

/** Slaking one batch of quicklime: what becomes of it, heat, water. */
export const slaking: Calculation<SlakingFound> = {
  name: 'slaking',
  uses: ({ role }) => role === 'lime',
  sources: ['iupac-atomic-weights', 'crc-handbook'],
  vocabularies: ['measured-states'],
  fields: fieldsOf,
  work,
  show,
}

function work(given: Given, data: BenchData): Outcome<SlakingFound> {
  const properties = limeOf(given, data)
  const { freeCaO } = properties
  const quicklimeKg = given.need('quicklime')
  // A litre of water weighs a kilogram near enough for a bucket.
  const waterKg = given.need('water')
  const sandKg = given.need('sand')
  const input = {
    quicklimeKg,
    freeCaO: freeCaO ?? 0,
    waterKg,
    sandKg,
    sandMoisturePercent: given.need('moisture'),
    waterC: given.need('water-c'),
    sandC: given.need('heap-c'),
  }
  const lime = convertLime({
    amount: quicklimeKg,
    unit: 'kg',
    state: given.choice('state', STATES),
    properties,
  })
  if (!lime.ok) return lime
  const balance = slakeBatch(input)
  if (!balance.ok) return balance
  const course = slakingCourse(input)
  if (!course.ok) return course
  return {
    ok: true,
    value: {
      lime: lime.value,
      balance: balance.value,
      course: course.value,
      mostBoundKg: quicklimeKg.high * (freeCaO?.high ?? 0) * WATER_PER_CAO,
      waterKg,
    },
  }
}

const limeOf = (given: Given, data: BenchData) =>
  propertiesOf(
    'lime',
    data.materials[given.chosen('lime')],
    limeProperties(given.choice('state', STATES)),
    given,
  )
