import Qty from 'js-quantities'
import type { IngredientInput, Materials } from '#lib/mortar/ingredient.ts'
import { workJob } from '#lib/mortar/job.ts'
import { orderPacks } from '#lib/mortar/packs.ts'
import { proportions } from '#lib/mortar/proportions.ts'
import { exactly } from '#lib/mortar/range.ts'
import { restateRecipe } from '#lib/mortar/restate.ts'
import { bulkingByMoisture, bulkingFromJar } from '#lib/mortar/sand-bulking.ts'
import { correctMoisture } from '#lib/mortar/sand-moisture.ts'
import { leanestProportion, voidsFromDensities, voidsFromWater } from '#lib/mortar/sand-voids.ts'
import { takeOff, type Work } from '#lib/mortar/takeoff.ts'
import { convert } from '#lib/mortar/units.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { type OutsideCheck, value } from './check.ts'
import { cement, GOOD, known, lime, PURE, part, SAND, sand } from './core-fixtures.ts'

const IN = 25.4
const FT2 = 0.09290304
const FT3 = 28.316846592
const BCCA = 'Junta de Andalucía, Base de Costes de la Construcción 2024'
const CPWD = 'CPWD, Delhi Schedule of Rates 2018'
const TRADE_JLC = 'Brick field guide (jlconline.com)'
const NAVY = 'US Navy course NAVEDTRA 14045'
const GILLETTE = 'Gillette & Hill, Concrete Construction (1908)'

const brick = (
  lengthMm: number,
  heightMm: number,
  widthMm: number,
  jointMm: number,
  halfBricks = 1,
  areaM2 = 1,
): Work => ({
  kind: 'bedding-brick',
  areaM2,
  brickLengthMm: lengthMm,
  brickHeightMm: heightMm,
  brickWidthMm: widthMm,
  jointMm,
  halfBricks,
})
const usBrick = (jointIn: number, areaM2: number) =>
  brick(8 * IN, 2.25 * IN, 3.75 * IN, jointIn * IN, 1, areaM2)
const net = (work: Work) => value(takeOff(work)).netL.typical
const count = (work: Work) => value(takeOff(work)).unitCount?.typical ?? Number.NaN

const yielded = (ingredients: readonly IngredientInput[], materials: Materials) =>
  value(yieldOf({ ingredients, materials, draws: 1 }))
const mortarOf = (ingredients: readonly IngredientInput[], materials: Materials) =>
  yielded(ingredients, materials).mortarL.typical

/** kg of cement in a cubic metre of 1 cement : n sand, cement counted at 1440 kg/m³ as that source does. */
const cementPerM3 = (n: number) =>
  (1000 * 1.44) / mortarOf([part('cement', 'cement', 1), sand(n)], { cement: cement(1440), sand: SAND })
/** Barrels of 380 lb and 4 cubic feet in a cubic yard of 1 cement : n sand. */
const barrelsPerYd3 = (n: number) =>
  764.554858 /
  mortarOf([part('cement', 'cement', 1), sand(n)], { cement: cement(1522), sand: SAND }) /
  (4 * FT3)

const ratio = (parts: number, from: 'lump-quicklime' | 'ground-quicklime', to: 'putty' | 'dry-hydrate') =>
  value(
    proportions({
      ingredients: [lime(1, from), sand(parts)],
      materials: { lime: GOOD, sand: SAND },
      draws: 1,
    }),
  ).states[to]?.aggregateDry?.typical ?? Number.NaN

const unit = (
  id: string,
  amount: number,
  from: string,
  to: string,
  theirs: string,
  tolerance = 1e-9,
): OutsideCheck => ({
  id,
  source: 'js-quantities 1.8.0 (npm)',
  locator: theirs,
  basis: 'derived',
  input: `${amount} ${from} in ${to}`,
  run: () => convert(amount, from, to),
  expected: Qty(theirs.split(' to ')[0] ?? '').to(theirs.split(' to ')[1] ?? '').scalar,
  tolerance,
  unit: to,
  why: tolerance === 1e-9 ? 'both rest on exact definitions' : 'the library rounds this unit',
})

const jar = (
  id: string,
  source: string,
  dampMm: number,
  floodedMm: number,
  expected: number,
  tolerance: number,
  why: string,
  basis: OutsideCheck['basis'] = 'read',
): OutsideCheck => ({
  id,
  source,
  locator: 'worked bulking test',
  basis,
  input: `damp ${dampMm}, flooded ${floodedMm}`,
  run: () => value(bulkingFromJar({ dampMm, floodedMm })).value.typical,
  expected,
  tolerance,
  unit: '%',
  why,
})

const voids = (id: string, waterMl: number, sandMl: number, expected: number): OutsideCheck => ({
  id,
  source: 'To determine percentage of voids (civilatwork.blogspot.com)',
  locator: 'worked test',
  basis: 'read',
  input: `${waterMl} mL of water into ${sandMl} mL of sand`,
  run: () => value(voidsFromWater({ sandMl, waterMl })).value.typical,
  expected,
  tolerance: 0.01,
  unit: '%',
  why: 'printed to two decimals',
})

const freeMoisture = (
  id: string,
  wetG: number,
  dryG: number,
  absorptionPercent: number,
  expected: number,
): OutsideCheck => ({
  id,
  source: 'Moisture of three sands (homeworklib.com, question 758345)',
  locator: 'inputs; its own answer gives grams as if percentages',
  basis: 'derived',
  input: `${wetG} g wet, ${dryG} g dry, ${absorptionPercent} % absorbed`,
  run() {
    const kg = dryG / 1000
    const moist = value(
      correctMoisture({ kg, weighed: 'dry', moisturePercent: 100 * (wetG / dryG - 1), absorptionPercent }),
    )
    return (100 * moist.freeWaterKg.typical) / kg
  },
  expected,
  tolerance: 0.001,
  unit: '%',
  why: 'total moisture less absorption, by hand from the printed weights',
})

const packs = (id: string, kg: number, expected: number): OutsideCheck => ({
  id,
  source: 'Calculating materials by weight (zhclg.com)',
  locator: 'block wall, mix 1:2:4 by mass, bags of 25 kg',
  basis: 'read',
  input: `${kg} kg`,
  run: () => orderPacks(exactly(kg), 25).packs.typical,
  expected,
  tolerance: 0,
  unit: 'bags',
  why: 'whole bags',
})

/** kg of free parts when a volume recipe is weighed, per kg of the first. */
const weighed = (ingredients: readonly IngredientInput[], materials: Materials, i: number) =>
  value(
    restateRecipe({
      ingredients,
      materials,
      as: { limeState: 'dry-hydrate', aggregate: 'dry', by: 'mass' },
      draws: 1,
    }),
  )[i]?.parts.typical ?? Number.NaN

const LB_FT3 = 16.01846337396
/** The American convention: cement 94, hydrate 40, dry sand 80 lb in a cubic foot. */
const CONVENTION: Materials = {
  cement: cement(94 * LB_FT3),
  lime: { ...PURE, ...known({ bulkDensityHydrate: 40 * LB_FT3 }) },
  sand: known({ bulkDensity: 80 * LB_FT3, particleDensity: 2650 }),
}
const typeN = [part('cement', 'cement', 1), lime(1, 'dry-hydrate'), sand(6)]

export const QUANTITY_CHECKS: readonly OutsideCheck[] = [
  unit('u-lb-ft3', 1, 'lb/ft3', 'kg/m3', '1 lb/ft3 to kg/m3'),
  unit('u-ft3', 1, 'ft3', 'L', '1 ft3 to l'),
  unit('u-yd3', 1, 'yd3', 'L', '1 yd3 to l'),
  unit('u-gal', 1, 'gal', 'L', '1 gal to l', 1e-6),
  unit('u-lb', 1, 'lb', 'kg', '1 lb to kg'),
  unit('u-in', 1, 'in', 'mm', '1 in to mm'),
  unit('u-btu', 1, 'Btu', 'kJ', '1 btu to kJ', 1e-3),
  jar('bulk-height', 'Bulking of sand (theconstructioncivil.org)', 200, 160, 25, 0, 'exact'),
  jar('bulk-depth', 'Proportioning of concrete mixes (civinnovate.com)', 150, 120, 25, 0, 'exact'),
  jar(
    'bulk-site-1',
    'Site tests on sand (slideplayer.com 3426948)',
    540,
    430,
    25.58,
    0.005,
    'it prints 25 %; exact to two decimals by hand',
    'derived',
  ),
  jar(
    'bulk-site-2',
    'Site tests on sand (slideplayer.com 3426948)',
    320,
    280,
    14.29,
    0.005,
    'it prints 14.25 %; exact to two decimals by hand',
    'derived',
  ),
  jar(
    'bulk-peak',
    'Site tests on sand (slideplayer.com 3426948)',
    440,
    365,
    20.5,
    0.05,
    'the peak of its five heights over the dry one',
    'derived',
  ),
  jar(
    'bulk-cylinder',
    'Bulking of sand test (wecivilengineers.wordpress.com)',
    200,
    155,
    29.03,
    0.005,
    'its formula 100 (200 − b) / b with b = 155',
    'derived',
  ),
  {
    id: 'bulk-saturated',
    source: 'I. O. Baker, A Treatise on Masonry Construction (1909)',
    locator: 'Sand, p. 4 of the page seen: saturated sand fills no more than dry',
    basis: 'read',
    input: 'a sand at its saturation',
    run: () =>
      value(
        bulkingByMoisture({
          moisturePercent: 20,
          peakPercent: 30,
          peakMoisturePercent: 5,
          saturationPercent: 20,
        }),
      ).value.typical,
    expected: 0,
    tolerance: 0,
    unit: '%',
    why: 'the curve must come back to the dry volume',
  },
  voids('void-lab-1', 77, 225, 34.22),
  voids('void-lab-2', 63, 205, 30.73),
  {
    id: 'void-three-eighths',
    source: 'US cement handbook (1905)',
    locator: 'art. 36: natural sand of about 100 lb per cubic foot, voids 3/8',
    basis: 'read',
    input: '1602 kg/m³ of quartz sand',
    run: () => value(voidsFromDensities({ bulkKgM3: 1602, particleKgM3: 2650 })).value.typical,
    expected: 37.5,
    tolerance: 2.5,
    unit: '%',
    why: '"about" 100 lb; 4 lb more brings them together',
  },
  {
    id: 'void-two-fifths',
    source: 'G. L. Vose, Handbook of Railroad Construction',
    locator: '§ 267: common sand 2/5 void',
    basis: 'read',
    input: '1600 kg/m³ of quartz sand',
    run: () => value(voidsFromDensities({ bulkKgM3: 1600, particleKgM3: 2650 })).value.typical,
    expected: 40,
    tolerance: 1,
    unit: '%',
    why: 'a simple fraction',
  },
  {
    id: 'leanest-third',
    source: 'Artis, Mortar mix ratios (2022)',
    locator: 'building sand with a third of voids takes 1 : 3',
    basis: 'read',
    input: 'voids of 1/3, putty',
    run: () => value(leanestProportion({ voidsPercent: 100 / 3, pasteL: 1 })).value.typical,
    expected: 3,
    tolerance: 1e-9,
    unit: 'sand to 1',
    why: 'exact',
  },
  {
    id: 'leanest-lab',
    source: 'To determine percentage of voids (civilatwork.blogspot.com)',
    locator: 'worked test, first sand',
    basis: 'derived',
    input: 'voids of 34.22 %',
    run: () => value(leanestProportion({ voidsPercent: 34.22, pasteL: 1 })).value.typical,
    expected: 2.92,
    tolerance: 0.005,
    unit: 'sand to 1',
    why: 'one over the printed voids',
  },
  freeMoisture('moisture-1', 622.6, 591.7, 2.6, 2.622),
  freeMoisture('moisture-2', 620.9, 593.0, 2.5, 2.205),
  freeMoisture('moisture-3', 620.0, 592.6, 2.2, 2.424),
  {
    id: 'artis-binder',
    source: 'Artis, Mortar mix ratios (2022)',
    locator: 'relative bulk density 0.63, mix 1 : 3, 150 L',
    basis: 'derived',
    input: '1 : 3 by volume, to kilograms of binder for 150 L of sand',
    run: () =>
      150 *
      (1.516 /
        weighed(
          [lime(1, 'dry-hydrate'), sand(3)],
          { lime: { ...PURE, ...known({ bulkDensityHydrate: 630 }) }, sand: SAND },
          1,
        )),
    expected: 31.5,
    tolerance: 1e-9,
    unit: 'kg',
    why: '50 L at 0.63 kg/L',
  },
  {
    id: 'gillette-weight-to-volume',
    source: GILLETTE,
    locator: 'p. 21 of the page seen: 1 cement : 2 sand by weight',
    basis: 'read',
    input: 'barrel of 380 lb and 4 cubic feet, sand of 90 lb per cubic foot',
    run: () =>
      value(
        restateRecipe({
          ingredients: [part('cement', 'cement', 1, 'dry', 'mass'), sand(2, 'dry', 'mass')],
          materials: {
            cement: cement(95 * LB_FT3),
            sand: known({ bulkDensity: 90 * LB_FT3, particleDensity: 2650 }),
          },
          as: { limeState: 'dry-hydrate', aggregate: 'dry', by: 'volume' },
          draws: 1,
        }),
      )[1]?.parts.typical ?? Number.NaN,
    expected: 2.11,
    tolerance: 0.005,
    unit: 'sand to 1',
    why: 'printed to two decimals',
  },
  {
    id: 'c270-n-sand',
    source: 'Masonry Magazine, March 1978 (brick trade specification reprinted)',
    locator: 'p. 14, note 1: 94, 40 and 80 lb per cubic foot',
    basis: 'derived',
    input: '1 cement : 1 hydrate : 6 sand by volume',
    run: () => 94 * (weighed(typeN, CONVENTION, 2) / weighed(typeN, CONVENTION, 0)),
    expected: 480,
    tolerance: 1e-6,
    unit: 'lb of sand to a bag',
    why: '6 cubic feet of 80 lb',
  },
  {
    id: 'c270-n-lime',
    source: 'Masonry Magazine, March 1978 (brick trade specification reprinted)',
    locator: 'p. 14, note 1: 94, 40 and 80 lb per cubic foot',
    basis: 'derived',
    input: '1 cement : 1 hydrate : 6 sand by volume',
    run: () => 94 / weighed(typeN, CONVENTION, 0),
    expected: 40,
    tolerance: 1e-6,
    unit: 'lb of hydrate to a bag',
    why: '1 cubic foot of 40 lb',
  },
  {
    id: 'quicklime-doubles',
    source: 'At last, humidity control that works (heritage-consulting.org)',
    locator: '1 : 3 quicklime is about 1 : 1½ putty',
    basis: 'read',
    input: '1 lump : 3 dry sand, lime of 92 %',
    run: () => ratio(3, 'lump-quicklime', 'putty'),
    expected: 1.5,
    tolerance: 0.35,
    unit: 'sand to 1 putty',
    why: 'a surveyor’s "roughly half"',
  },
  {
    id: 'dry-slaked-equals',
    source: 'Lynch, The Myth in the Mix (Building Conservation Directory)',
    locator: 'caption: 1 : 3 quicklime matched by 1 : 2 slaked lime',
    basis: 'read',
    input: '1 lump : 3 dry sand, lime of 92 %, to putty',
    run: () => ratio(3, 'lump-quicklime', 'putty'),
    expected: 2,
    tolerance: 0.35,
    unit: 'sand to 1 putty',
    why: 'whole parts; together with the surveyor’s 1½ it brackets ours',
  },
  {
    id: 'mortar-gain-none',
    source: 'Kalk-Milchmädchenrechnung (mauerreste.blogspot.com, 2013)',
    locator: '200 mL of putty and 600 mL of sand make 600 mL',
    basis: 'read',
    input: '1 putty : 3 dry sand of 1516 kg/m³',
    run: () => 200 * mortarOf([lime(1, 'putty'), sand(3)], { lime: PURE, sand: SAND }),
    expected: 600,
    tolerance: 0.07 * 600,
    unit: 'mL',
    why: 'one home test; air and water of the fresh mortar were not measured',
  },
  {
    id: 'mortar-gain-eighth',
    source: 'Building Trades Pocketbook',
    locator: 'Mortar: 20 cubic feet of sand and 4 of quicklime make about 22½',
    basis: 'read',
    input: '1 lump : 5 dry sand, lime of 92 %',
    run: () => 4 * mortarOf([lime(1, 'lump-quicklime'), sand(5)], { lime: GOOD, sand: SAND }),
    expected: 22.5,
    tolerance: 0.07 * 22.5,
    unit: 'cubic feet',
    why: '"about"; the sand’s own bulk density is not given',
  },
  {
    id: 'hardened-plaster-density',
    source: 'Cyclopedia of Architecture, Carpentry and Building (c. 1907)',
    locator: 'Plaster Materials: hardened lime plaster, 110 lb per cubic foot',
    basis: 'read',
    input: '1 putty : 3 dry sand, dried out and carbonated',
    run() {
      const mix = yielded([lime(1, 'putty'), sand(3)], { lime: PURE, sand: SAND })
      const hydrateKg = 1.35 * 0.4683
      return (1000 * (hydrateKg * 1.3508 + 3 * 1.516)) / mix.mortarL.typical
    },
    expected: 1762,
    tolerance: 0.05 * 1762,
    unit: 'kg/m³',
    why: 'its proportion is not given; carbonation adds 35 % to the hydrate’s mass',
  },
  ...([4, 5, 6] as const).map(
    (n, i): OutsideCheck => ({
      id: `cpwd-1-${n}`,
      source: CPWD,
      locator: 'coefficients 3.1 to 3.11, cement per cubic metre',
      basis: 'read',
      input: `1 cement : ${n} sand`,
      run: () => cementPerM3(n),
      expected: [380, 310, 250][i] as number,
      tolerance: 0.09 * ([380, 310, 250][i] as number),
      unit: 'kg',
      why: 'round numbers in uneven steps; 1 : 1 to 1 : 3 lie 13 to 24 % off and stand with their reason on the page of method',
    }),
  ),
  {
    id: 'gillette-barrels-3',
    source: GILLETTE,
    locator: 'table of barrels per cubic yard, barrel of 4 cubic feet',
    basis: 'read',
    input: '1 cement : 3 sand',
    run: () => barrelsPerYd3(3),
    expected: 2.05,
    tolerance: 0.09 * 2.05,
    unit: 'barrels',
    why: 'it supposes its own voids and water; 1 : 1 to 1 : 2½ lie 14 to 17 % off and stand with their reason on the page of method',
  },
  {
    id: 'gillette-barrels-4',
    source: GILLETTE,
    locator: 'table of barrels per cubic yard, barrel of 4 cubic feet',
    basis: 'read',
    input: '1 cement : 4 sand',
    run: () => barrelsPerYd3(4),
    expected: 1.54,
    tolerance: 0.1 * 1.54,
    unit: 'barrels',
    why: 'as for 1 : 3; its own sand column does not close with its barrels by as much',
  },
  {
    id: 'water-for-slaking-in-sand',
    source: 'Building Trades Pocketbook',
    locator: 'Mortar: 1½ to 2 measures of water to one of lime',
    basis: 'read',
    input: '1 lump : 3 dry sand slaked together, water likely in all',
    run() {
      const sheet = value(
        workJob({
          ingredients: [lime(1, 'lump-quicklime'), sand(3)],
          materials: { lime: GOOD, sand: SAND },
          method: 'sand-slaked',
          work: { kind: 'volume', volumeL: 1000 },
          draws: 1,
        }),
      )
      return sheet.water.likelyTotalL.typical / (sheet.ingredients[0]?.siteL?.typical ?? Number.NaN)
    },
    expected: 1.75,
    tolerance: 0.25,
    unit: 'measures',
    why: 'inside the printed range',
  },
  {
    id: 'navy-bricks',
    source: NAVY,
    locator: 'square-foot method: wall 8 × 14 ft, joints of ½ in',
    basis: 'read',
    input: 'US standard brick 8 × 2¼ × 3¾ in',
    run: () => count(usBrick(0.5, 112 * FT2)),
    expected: 690,
    tolerance: 1,
    unit: 'bricks',
    why: 'it rounds to 6.16 per square foot on the way',
  },
  {
    id: 'navy-mortar',
    source: NAVY,
    locator: 'square-foot method: 11.7 cubic feet per 1,000',
    basis: 'read',
    input: '1,000 of the same bricks in a half-brick wall',
    run() {
      const wall = usBrick(0.5, 100)
      return (1000 * net(wall)) / count(wall) / FT3
    },
    expected: 11.7,
    tolerance: 0.05,
    unit: 'cubic feet',
    why: 'printed to one decimal',
  },
  {
    id: 'navy-with-waste',
    source: NAVY,
    locator: 'square-foot method: 760 bricks, 20 % waste',
    basis: 'read',
    input: '8.90 cubic feet in place, 20 % lost',
    run: () =>
      value(
        workJob({
          ingredients: [lime(1, 'putty'), sand(3)],
          materials: { lime: PURE, sand: SAND },
          method: 'putty',
          work: { kind: 'volume', volumeL: 8.9 * FT3 },
          lossPercent: 20,
          draws: 1,
        }),
      ).mortarL.typical / FT3,
    expected: 10.7,
    tolerance: 0.05,
    unit: 'cubic feet',
    why: 'printed to one decimal',
  },
  {
    id: 'trade-bricks-quarter',
    source: TRADE_JLC,
    locator: 'bricks per 100 square feet, joints of ¼ in',
    basis: 'read',
    input: 'brick 8 × 2¼ × 3¾ in, no waste on bricks',
    run: () => count(usBrick(0.25, 100 * FT2)),
    expected: 698,
    tolerance: 0.5,
    unit: 'bricks',
    why: 'whole bricks; the middle of its column does not fit geometry and is not used',
  },
  {
    id: 'trade-bricks-three-quarters',
    source: TRADE_JLC,
    locator: 'bricks per 100 square feet, joints of ¾ in',
    basis: 'read',
    input: 'brick 8 × 2¼ × 3¾ in, no waste on bricks',
    run: () => count(usBrick(0.75, 100 * FT2)),
    expected: 549,
    tolerance: 0.5,
    unit: 'bricks',
    why: 'whole bricks',
  },
  {
    id: 'bcca-half-bricks',
    source: BCCA,
    locator: 'item 06LMC00301: 70 bricks with 5 % spare',
    basis: 'read',
    input: 'brick 240 × 50 × 115, joints of 10 mm, per m²',
    run: () => 1.05 * count(brick(240, 50, 115, 10)),
    expected: 70,
    tolerance: 0.5,
    unit: 'bricks',
    why: 'whole bricks',
  },
  {
    id: 'bcca-half-mortar',
    source: BCCA,
    locator: 'item 06LMC00301: 0.023 m³',
    basis: 'read',
    input: 'brick 240 × 50 × 115, joints of 10 mm, per m²',
    run: () => net(brick(240, 50, 115, 10)),
    expected: 23,
    tolerance: 0.5,
    unit: 'L',
    why: 'whole litres, no waste in it',
  },
  {
    id: 'bcca-handmade-mortar',
    source: BCCA,
    locator: 'item 06LEC00013: 0.047 m³ in lime mortar',
    basis: 'read',
    input: 'handmade brick 240 × 35 × 115, joints of 20 mm, per m²',
    run: () => net(brick(240, 35, 115, 20)),
    expected: 47,
    tolerance: 0.5,
    unit: 'L',
    why: 'whole litres',
  },
  {
    id: 'bcca-handmade-one-brick',
    source: BCCA,
    locator: 'item 06LEM00011: 0.094 m³ in lime mortar',
    basis: 'read',
    input: 'the same, one brick thick, the joint between the leaves (20 L) taken off as the item does',
    run: () => net(brick(240, 35, 115, 20, 2)) - 20,
    expected: 94,
    tolerance: 1,
    unit: 'L',
    why: 'whole litres; the item doubles the half brick and leaves the middle joint out',
  },
  {
    id: 'bcca-thin-bricks',
    source: BCCA,
    locator: 'item 06LEC00002: 82 pressed bricks with 5 % spare',
    basis: 'read',
    input: 'brick 240 × 50 × 115, joints of 3 mm, per m²',
    run: () => 1.05 * count(brick(240, 50, 115, 3)),
    expected: 82,
    tolerance: 0.6,
    unit: 'bricks',
    why: 'whole bricks',
  },
  {
    id: 'uk-sixty',
    source: 'How many bricks to the square metre (reference.com)',
    locator: 'rule of thumb 60',
    basis: 'read',
    input: 'brick 215 × 65 × 102.5, joints of 10 mm',
    run: () => count(brick(215, 65, 102.5, 10)),
    expected: 60,
    tolerance: 1,
    unit: 'bricks',
    why: 'a rounded rule',
  },
  {
    id: 'india-half-brick',
    source: 'Indian analysis of rates (scribd.com 405060083)',
    locator: 'module 0.20 × 0.10 × 0.10 m: 500 bricks to the cubic metre',
    basis: 'read',
    input: 'brick 190 × 90 × 90, joints of 10 mm, ten square metres of half brick with its joint',
    run: () => count(brick(190, 90, 90, 10, 1, 10)),
    expected: 500,
    tolerance: 1e-6,
    unit: 'bricks',
    why: 'ten square metres, 0.1 m thick with the joint, are one cubic metre',
  },
  {
    id: 'ashlar-large',
    source: 'Cyclopedia of Architecture, Carpentry and Building, vol. 3',
    locator: 'Ashlar: larger blocks about 1 cubic foot per cubic yard',
    basis: 'read',
    input: 'blocks 24 × 20 in and a yard deep, joints of ⅜ in, one square yard',
    run: () =>
      net({
        kind: 'bedding-ashlar',
        areaM2: 0.83612736,
        unitLengthMm: 24 * IN,
        unitHeightMm: 20 * IN,
        unitDepthMm: 914.4,
        jointMm: 0.375 * IN,
      }) / FT3,
    expected: 1,
    tolerance: 0.15,
    unit: 'cubic feet',
    why: '"about"; its joint widths are lost in the scan',
  },
  {
    id: 'rubble-sand',
    source: 'Building Trades Pocketbook',
    locator: 'Concrete: 100 cubic yards of coarse rubble, mortar a third, take 30 of sand',
    basis: 'read',
    input: '100 cubic yards of wall, 0.9 of sand to one of mortar',
    run: () =>
      (0.9 *
        net({
          kind: 'bedding-rubble',
          areaM2: (100 * 764.554857984) / 500,
          thicknessMm: 500,
          mortarShare: 1 / 3,
        })) /
      764.554857984,
    expected: 30,
    tolerance: 0.1,
    unit: 'cubic yards',
    why: 'round numbers',
  },
  {
    id: 'plaster-india',
    source: 'Plaster of 12 mm at 1 : 5 (allinterview.com 106991)',
    locator: '100 m² of 12 mm, a fifth more for joints and hollows: 1.44 m³',
    basis: 'read',
    input: 'one coat of 12 mm and 2.4 mm of unevenness',
    run: () => net({ kind: 'plaster', areaM2: 100, coat1Mm: 12, unevennessMm: 2.4 }),
    expected: 1440,
    tolerance: 1e-6,
    unit: 'L',
    why: 'exact',
  },
  {
    id: 'plaster-pakistan',
    source: 'Analysis of plaster (scribd.com 93775305)',
    locator: '13 mm on 10 m², 10 % lost: 0.143 m³',
    basis: 'read',
    input: 'one coat of 13 mm on 10 m²',
    run: () => 1.1 * net({ kind: 'plaster', areaM2: 10, coat1Mm: 13 }),
    expected: 143,
    tolerance: 0.5,
    unit: 'L',
    why: 'printed to a litre, by way of feet',
  },
  packs('order-cement', 110, 5),
  packs('order-lime', 221, 9),
  packs('order-sand', 441, 18),
  {
    id: 'cob-clay',
    source: 'C. Williams-Ellis, Cottage Building in Cob, Pisé, Chalk and Clay (1920)',
    locator: 'analysis of old Devon cob: clay 20.6 % of all, straw and water included',
    basis: 'derived',
    input: 'its stones, sands and clay by mass',
    run: () =>
      value(
        proportions({
          ingredients: [
            part('stones', 'aggregate', 24.4, 'dry', 'mass'),
            part('grit', 'aggregate', 19.7, 'dry', 'mass'),
            part('fines', 'aggregate', 32.5, 'dry', 'mass'),
            part('clay', 'earth', 20.6, 'dry', 'mass'),
            part('straw', 'fibre', 1.25, 'dry', 'mass'),
          ],
          materials: {
            stones: SAND,
            grit: SAND,
            fines: SAND,
            clay: { ...SAND, ...known({ clayFraction: 1 }) },
            straw: {},
          },
          draws: 1,
        }),
      ).clayPercent?.typical ?? Number.NaN,
    expected: 20.6 / 0.9845,
    tolerance: 0.01,
    unit: '% of the dry mass',
    why: 'the analysis counts 1.55 % of water, which we do not',
  },
]
