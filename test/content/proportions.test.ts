import { expect, test } from 'vitest'
import { content } from '#lib/content/index.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { exactly } from '#lib/mortar/range.ts'

const { rows, materials } = content()

const figure = (value: number, unit: string) => ({ ...exactly(value), unit, basis: 'memory' as const })
const sand = (bulkingPeak: number, bulkingPeakMoisture = 0.05) => ({
  bulkDensity: figure(1520, 'kg/m3'),
  bulkingPeak: figure(bulkingPeak, '1'),
  bulkingPeakMoisture: figure(bulkingPeakMoisture, '1'),
  saturationMoisture: figure(0.2, '1'),
})

/** Fixed figures, so that the working below stays right when content's own figures are improved. */
const MATERIALS = {
  'lime-fat': {
    freeCaO: figure(0.88, '1'),
    bulkDensityLump: figure(850, 'kg/m3'),
    bulkDensityGround: figure(1080, 'kg/m3'),
    bulkDensityHydrate: figure(490, 'kg/m3'),
    puttyDensity: figure(1350, 'kg/m3'),
    particleDensityHydrate: figure(2240, 'kg/m3'),
  },
  'sand-not-stated': sand(0.28),
  'sand-pit': sand(0.3),
  'sand-river': sand(0.27),
  'sand-coarse': sand(0.18),
  'sand-fine': sand(0.36),
  'sand-sharp': sand(0.25),
  'stone-broken': sand(0),
  'hair-cattle': {},
  'blood-ox': {},
}

/*
 * Worked by hand for each row. Molar masses give 18.015 / 56.077 = 0.32125 kg of water for 1 kg of CaO, so
 * 1 kg of this lime makes 1 + 0.88 × 0.32125 = 1.2827 kg of dry hydrate. One litre holds, in kg of quicklime:
 *   lump 0.850; ground 1.080; dry hydrate 0.490 / 1.2827 = 0.382;
 *   putty 1.35 × (1 − 1/1.35) / (1 − 1/2.24) / 1.2827 = 0.493;
 *   slaked, state not stated (0.382 + 0.493) / 2 = 0.437; quicklime, state not stated 0.965; any state 0.701.
 * Sand of no stated state is taken half dry and half damp: a litre holds 1 / (1 + b/2) litres dry, with b the
 * bulking at 4 % of moisture, 0.96 of the peak (pit 0.288, river 0.259, coarse 0.173, fine 0.346, sharp 0.240,
 * other 0.269). Then: kg of quicklime in the row, litres of dry sand in the row, and dry sand to one of lime
 * as lump quicklime, ground quicklime, dry hydrate and putty.
 */
test.each([
  ['vitruvius-mortar#pit-sand', 0.437, 2.622, 5.1, 6.47, 2.29, 2.95],
  ['vitruvius-mortar#river-sand', 0.437, 1.771, 3.44, 4.37, 1.55, 1.99],
  ['pliny-mortar#pit-sand-quarter-of-mix', 0.701, 2.622, 3.18, 4.04, 1.43, 1.84],
  ['pliny-mortar#pit-sand-quarter-of-sand', 0.701, 3.497, 4.24, 5.39, 1.9, 2.46],
  ['vitruvius-floors#rubble-new-stone', 0.701, 3.0, 3.64, 4.62, 1.63, 2.11],
  ['german-handbook-1800s#finest', 0.493, 0.853, 1.47, 1.87, 0.66, 0.85],
  ['german-handbook-1800s#fine', 0.875, 2.679, 2.6, 3.31, 1.17, 1.51],
  ['german-handbook-1800s#claudel-fat-lime', 0.182, 0.837, 3.9, 4.96, 1.75, 2.26],
  ['vienna-and-saxony#vienna-general', 0.493, 2.204, 3.8, 4.83, 1.71, 2.2],
  ['willich-1802#dossie-hot', 0.965, 2.645, 2.33, 2.96, 1.05, 1.35],
  ['notes-building-construction#rich-or-poor', 0.85, 3.085, 3.09, 3.92, 1.39, 1.79],
  ['useful-arts-1851#crack-wash', 1.93, 0.882, 0.39, 0.49, 0.17, 0.23],
  ['useful-arts-1851#vicat-frost', 49.29, 44.08, 0.76, 0.97, 0.34, 0.44],
  ['fresco-1909#intonaco', 0.493, 2.558, 4.41, 5.6, 1.98, 2.56],
  ['us-common-lime-mortar#pocketbook-example', 3.4, 20.0, 5.0, 6.35, 2.25, 2.9],
  ['us-common-lime-mortar#cyclopedia-common', 0.493, 2.645, 4.56, 5.79, 2.05, 2.64],
  ['us-plaster-1900#unslaked', 0.85, 4.848, 4.85, 6.16, 2.18, 2.81],
  ['us-plaster-1900#cyclopedia-unslaked', 0.85, 3.306, 3.31, 4.2, 1.49, 1.92],
  ['us-estimating-1908#brickwork', 0.701, 4.787, 5.8, 7.37, 2.61, 3.36],
  ['us-brickwork-quantities#face-brick-hydrate', 0.382, 2.204, 4.9, 6.23, 2.2, 2.84],
  ['household-receipts#beaten-floor', 0.382, 1.841, 4.1, 5.2, 1.84, 2.38],
  // By mass: 133 / 1.2827 kg of quicklime; 400 / (1 + 0.04/2) kg of dry sand at 1.52 kg/L.
  ['us-plaster-1923#scratch-coat', 103.69, 258.0, 2.11, 2.69, 0.95, 1.23],
])(
  'proportions(%s) agree with the working by hand',
  (ref, quicklimeKg, sandL, lump, ground, hydrate, putty) => {
    expect(sandL / (quicklimeKg / 0.85)).toBeCloseTo(lump, 1)
    const row = rows.get(ref)
    const outcome = proportions({ ingredients: row?.ingredients ?? [], materials: MATERIALS, draws: 200 })
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults))
    const { states } = outcome.value
    expect(states['lump-quicklime']?.aggregateDry?.typical).toBeCloseTo(lump, 1.5)
    expect(states['ground-quicklime']?.aggregateDry?.typical).toBeCloseTo(ground, 1.5)
    expect(states['dry-hydrate']?.aggregateDry?.typical).toBeCloseTo(hydrate, 1.5)
    expect(states.putty?.aggregateDry?.typical).toBeCloseTo(putty, 1.5)
  },
)

test('proportions(row) of every row with parts can be worked from content’s own figures', () => {
  const figures = Object.fromEntries([...materials].map(([id, { properties }]) => [id, properties]))
  const failed = [...rows.values()].flatMap(({ ref, ingredients }) => {
    if (ingredients.every(({ parts }) => parts === null)) return []
    const outcome = proportions({ ingredients, materials: figures, draws: 50 })
    return outcome.ok
      ? []
      : [`${ref}: ${outcome.faults.map(({ field, code }) => `${field} ${code}`).join(', ')}`]
  })
  expect(failed).toEqual([])
})
