import { MF } from 'mf-parser'
import { HEAT_OF_FORMATION, MOLAR_MASS, SLAKING_HEAT_CAO } from '#lib/mortar/constants.ts'
import { hydratePerQuicklime, puttySolids } from '#lib/mortar/lime.ts'
import { convertLime } from '#lib/mortar/lime-convert.ts'
import { slakeBatch } from '#lib/mortar/slaking.ts'
import { yieldOf } from '#lib/mortar/yield.ts'
import { type OutsideCheck, value } from './check.ts'
import { GOOD, known, lime, PURE, water } from './core-fixtures.ts'

const ONTARIO = 'Ontario exposure limits, as carried by the open data set CalebBell/chemicals'
const CRC = 'CRC Handbook of Chemistry and Physics, as carried by the open data set CalebBell/chemicals'
const LIME_INSTITUTE = 'Canadian Lime Institute, questions and answers'
const MASONRY_1908 = 'Masonry Construction (1908)'

/** MO printed beside a substance by the exposure limits: an independent table of molar masses. */
const molar = (id: string, ours: number, expected: number, why: string): OutsideCheck => ({
  id,
  source: ONTARIO,
  locator: 'column MW',
  basis: 'read',
  input: 'sum of atomic weights',
  run: () => ours,
  expected,
  tolerance: 0.001,
  unit: 'g/mol',
  why,
})

/** Molar mass by a library with an isotope table of its own. */
const formula = (id: string, text: string, ours: number): OutsideCheck => ({
  id,
  source: 'mf-parser 3.9.3 (npm)',
  locator: `MF('${text}').getInfo().mass`,
  basis: 'derived',
  input: 'sum of atomic weights',
  run: () => ours,
  expected: new MF(text).getInfo().mass ?? Number.NaN,
  tolerance: 0.003,
  unit: 'g/mol',
  why: 'it averages isotopes and does not use the conventional weights; they differ by less than 3 mg/mol',
})

const growth = (key: 'lump-to-hydrate' | 'ground-to-hydrate' | 'lump-to-putty') =>
  value(convertLime({ amount: 1, unit: 'L', state: 'lump-quicklime', properties: PURE })).growth[key]
    ?.typical ?? Number.NaN

const slaked = (waterKg: number, celsius = 15) =>
  value(slakeBatch({ quicklimeKg: 1, freeCaO: 1, waterKg, waterC: celsius }))

/** Hydrate of a quicklime of two oxides: share of each, and of the water bound, %. */
const hydrate = (freeCaO: number, freeMgO: number, hydratedMgO: number) => {
  const mass = hydratePerQuicklime(freeCaO, hydratedMgO)
  return { cao: (100 * freeCaO) / mass, mgo: (100 * freeMgO) / mass, water: (100 * (mass - 1)) / mass }
}

/** A printed range, as its middle and its half width. */
const within = (low: number, high: number) => ({ expected: (low + high) / 2, tolerance: (high - low) / 2 })

const hydrateCheck = (id: string, input: string, found: number, low: number, high: number): OutsideCheck => ({
  id,
  source: LIME_INSTITUTE,
  locator: 'typical analyses of hydrates',
  basis: 'read',
  input,
  run: () => found,
  ...within(low, high),
  unit: '%',
  why: 'the source prints this range for a commercial hydrate; ours must fall inside it',
})

/** Pure dolomite burns to 58 % CaO and 42 % MgO; here with 3.5 % of impurities. */
const DOLOMITE_PLAIN = '56.5 % CaO, 40 % MgO that stays as it is'
const DOLOMITE_PRESSURE_INPUT = '56.5 % CaO, 40 % MgO, both hydrated'
const HIGH_CALCIUM = hydrate(0.96, 0.01, 0)
const DOLOMITIC = hydrate(0.565, 0.4, 0)
const DOLOMITIC_PRESSURE = hydrate(0.565, 0.4, 0.4)

/** Litres of paste from quicklime and water, kg, with no air and no steam lost. */
const paste = (quicklimeKg: number, waterKg: number, freeCaO: number) =>
  value(
    yieldOf({
      ingredients: [lime(quicklimeKg, 'lump-quicklime', 'mass'), water(waterKg, 'mass')],
      materials: { lime: { ...PURE, ...known({ freeCaO }) }, water: {} },
      draws: 1,
    }),
  ).mortarL.typical

export const LIME_CHECKS: readonly OutsideCheck[] = [
  molar('m-cao', MOLAR_MASS.CaO, 56.0774, 'printed to 0.1 mg; its Ca is 40.0784 rounded otherwise'),
  molar('m-caoh2', MOLAR_MASS.CaOH2, 74.09268, 'printed to 0.01 mg'),
  molar('m-mgo', MOLAR_MASS.MgO, 40.3044, 'printed to 0.1 mg'),
  molar('m-co2', MOLAR_MASS.CO2, 44.0095, 'printed to 0.1 mg'),
  formula('m-caco3-lib', 'CaCO3', MOLAR_MASS.CaCO3),
  formula('m-sio2-lib', 'SiO2', MOLAR_MASS.SiO2),
  formula('m-al2o3-lib', 'Al2O3', MOLAR_MASS.Al2O3),
  formula('m-fe2o3-lib', 'Fe2O3', MOLAR_MASS.Fe2O3),
  {
    id: 'st-hydrate-per-cao',
    source: ONTARIO,
    locator: 'column MW: Ca(OH)2 over CaO',
    basis: 'derived',
    input: '1 kg of pure CaO',
    run: () => hydratePerQuicklime(1),
    expected: 74.09268 / 56.0774,
    tolerance: 0.0001,
    unit: 'kg',
    why: 'one division of two printed figures',
  },
  {
    id: 'st-hydrate-composition',
    source: 'SSHADE database, fundamental constituents',
    locator: 'Portlandite, oxides: H2O 24.31 %',
    basis: 'derived',
    input: 'pure Ca(OH)2; the rest is CaO',
    run: () => 100 / hydratePerQuicklime(1),
    expected: 75.69,
    tolerance: 0.005,
    unit: '% CaO',
    why: 'printed to two decimals',
  },
  hydrateCheck('hydrate-hc-cao', 'quicklime of 96 % CaO, slaked', HIGH_CALCIUM.cao, 72, 74),
  hydrateCheck('hydrate-hc-water', 'quicklime of 96 % CaO, slaked', HIGH_CALCIUM.water, 23, 24),
  hydrateCheck('hydrate-dolo-n-cao', DOLOMITE_PLAIN, DOLOMITIC.cao, 46, 48),
  hydrateCheck('hydrate-dolo-n-mgo', DOLOMITE_PLAIN, DOLOMITIC.mgo, 33, 34),
  hydrateCheck('hydrate-dolo-n-water', DOLOMITE_PLAIN, DOLOMITIC.water, 15, 17),
  hydrateCheck('hydrate-dolo-s-cao', DOLOMITE_PRESSURE_INPUT, DOLOMITIC_PRESSURE.cao, 40, 42),
  hydrateCheck('hydrate-dolo-s-mgo', DOLOMITE_PRESSURE_INPUT, DOLOMITIC_PRESSURE.mgo, 29, 30),
  hydrateCheck('hydrate-dolo-s-water', DOLOMITE_PRESSURE_INPUT, DOLOMITIC_PRESSURE.water, 25, 27),
  {
    id: 'heat-slake-jmol-other',
    source: 'Worked school problem on slaking (invlad.ru)',
    locator: 'heats of formation −635.09, −285.83, −985.12 kJ/mol',
    basis: 'derived',
    input: '1 mol of CaO with liquid water',
    run: () => (SLAKING_HEAT_CAO * MOLAR_MASS.CaO) / 1000,
    expected: 64.2,
    tolerance: 1,
    unit: 'kJ/mol',
    why: 'the sum of the figures printed there; another tabulation, so within 1.5 %',
  },
  {
    id: 'heat-calcination',
    source: CRC,
    locator: 'table Standard thermodynamic properties',
    basis: 'derived',
    input: 'CaCO3 to CaO and CO2',
    run: () => HEAT_OF_FORMATION.CaO + HEAT_OF_FORMATION.CO2 - HEAT_OF_FORMATION.CaCO3,
    expected: 179.2,
    tolerance: 0.05,
    unit: 'kJ/mol',
    why: 'arithmetic on the printed heats: −634.9 − 393.5 + 1207.6',
  },
  {
    id: 'slake-test-rise',
    source: CRC,
    locator: 'table Standard thermodynamic properties',
    basis: 'derived',
    input: '0.15 kg of pure CaO in 0.6 kg of water at 20 °C, nothing lost',
    run: () =>
      value(slakeBatch({ quicklimeKg: 0.15, freeCaO: 1, waterKg: 0.6, waterC: 20 })).averageC.typical,
    expected: 87.9,
    tolerance: 0.2,
    unit: '°C',
    why: 'worked by hand: 172.5 kJ over 2.541 kJ/K',
  },
  {
    id: 'slake-water-36',
    source: CRC,
    locator: 'table Standard thermodynamic properties',
    basis: 'derived',
    input: '1 kg of pure CaO with 3.6 kg of water at 15 °C',
    run: () => slaked(3.6).averageC.typical,
    expected: 90.3,
    tolerance: 0.2,
    unit: '°C',
    why: 'worked by hand: 1150 kJ over 15.266 kJ/K; so much water does not boil',
  },
  {
    id: 'slake-water-30-boils',
    source: CRC,
    locator: 'table Standard thermodynamic properties',
    basis: 'derived',
    input: '1 kg of pure CaO with 3.0 kg of water at 15 °C',
    run: () => slaked(3).averageC.typical,
    expected: 100,
    tolerance: 0,
    unit: '°C',
    why: 'by hand it would reach 105 °C, so it boils and stays at 100',
  },
  {
    id: 'slake-water-20-steam',
    source: 'CRC Handbook of Chemistry and Physics, heat of vaporisation (CalebBell/chemicals)',
    locator: 'table Heat of vaporization, water at 100 °C',
    basis: 'derived',
    input: '1 kg of pure CaO with 2.0 kg of water at 15 °C',
    run: () => slaked(2).boiledKg.typical,
    expected: 0.187,
    tolerance: 0.002,
    unit: 'kg',
    why: 'worked by hand: 421 kJ of surplus over 2256 kJ/kg',
  },
  {
    id: 'slake-dry-powder',
    source: 'CRC Handbook of Chemistry and Physics, heat of vaporisation (CalebBell/chemicals)',
    locator: 'table Heat of vaporization, water at 100 °C',
    basis: 'derived',
    input: '1 kg of pure CaO with 0.72 kg of water at 15 °C',
    run: () => slaked(0.72).freeKg.typical,
    expected: 0,
    tolerance: 0.03,
    unit: 'kg left',
    why: 'by hand 0.32 kg is bound and 0.40 kg boils off: a dry powder; the hand sum leaves out warming',
  },
  {
    id: 'putty-solids-135',
    source: 'NIOSH Pocket Guide to Chemical Hazards',
    locator: 'calcium hydroxide, specific gravity 2.24',
    basis: 'derived',
    input: 'putty of 1.35 kg/L without air',
    run: () => 1.35 * puttySolids(1350, 2240),
    expected: 0.632,
    tolerance: 0.0005,
    unit: 'kg/L',
    why: 'worked by hand from the printed gravity: (1 − 1/1.35)/(1 − 1/2.24) of 1.35',
  },
  {
    id: 'putty-solids-rule',
    source: 'How to find the density of lime paste (mirrorinfo.online)',
    locator: 'good paste is about half lime',
    basis: 'read',
    input: 'putty of 1.35 kg/L, its first to third grades being 1.3 to 1.4',
    run: () => 100 * puttySolids(1350, 2240),
    expected: 50,
    tolerance: 8,
    unit: '% solids',
    why: 'a rule of thumb; its own grades span 42 to 52 %',
  },
  {
    id: 'exp-rich-lime',
    source: MASONRY_1908,
    locator: 'Limes: rich lime grows 2 to 3½ times',
    basis: 'read',
    input: 'pure lump lime to loose dry hydrate',
    run: () => growth('lump-to-hydrate'),
    ...within(2, 3.5),
    unit: 'times',
    why: 'inside the printed range',
  },
  {
    id: 'exp-fat-india',
    source: 'Poor, fat and hydraulic lime (civilengineeringx.com)',
    locator: 'fat lime grows 2 to 2½ times',
    basis: 'read',
    input: 'pure lump lime to loose dry hydrate',
    run: () => growth('lump-to-hydrate'),
    ...within(2, 2.5),
    unit: 'times',
    why: 'inside the printed range',
  },
  {
    id: 'hale-doubles',
    source: 'S. J. Hale, Receipts for the Million (1857)',
    locator: 'no. 1015',
    basis: 'read',
    input: 'lump lime to slaked powder, by measure',
    run: () => growth('lump-to-hydrate'),
    expected: 2,
    tolerance: 0.35,
    unit: 'times',
    why: 'a farm receipt in whole numbers',
  },
  {
    id: 'putty-per-barrel-stiff',
    source: 'Building Trades Pocketbook',
    locator: 'Lime: 230 lb of lump lime make 0.3 cubic yard of stiff putty',
    basis: 'read',
    input: '104.33 kg of lime of 92 % at a putty of 1.35 kg/L',
    run: () =>
      value(convertLime({ amount: 104.33, unit: 'kg', state: 'lump-quicklime', properties: GOOD })).states
        .putty?.volumeL?.typical ?? Number.NaN,
    expected: 229.4,
    tolerance: 0.08 * 229.4,
    unit: 'L',
    why: 'printed to one digit; a putty stiffer or softer than ours by 0.03 kg/L moves it 8 %',
  },
  {
    id: 'putty-per-barrel-growth',
    source: 'Building Trades Pocketbook',
    locator: 'Lime: 53 lb per cubic foot, 2¼ barrels of putty per barrel of lime',
    basis: 'derived',
    input: 'pure lump lime to putty of 1.35 kg/L',
    run: () => growth('lump-to-putty'),
    expected: 1.867,
    tolerance: 0.1,
    unit: 'times',
    why: '8.1 cubic feet of putty from 4.34 of lump, both printed',
  },
  {
    id: 'paste-with-given-water',
    source: 'Cyclopedia of Architecture, Carpentry and Building (c. 1907)',
    locator: '§§ 88, 93: 230 lb and 8½ cubic feet of water make about 9 cubic feet',
    basis: 'read',
    input: '104.33 kg of good lime and 240.7 kg of water, nothing lost as steam',
    run: () => paste(104.33, 240.7, 0.92),
    expected: 254.9,
    tolerance: 0.08 * 254.9,
    unit: 'L',
    why: '"about"; water lost as steam, which this sum does not take off, brings ours down to it',
  },
  {
    id: 'limewash-andalusia',
    source: 'Junta de Andalucía, Base de Costes de la Construcción 2024',
    locator: 'item AGL00200',
    basis: 'read',
    input: '309 kg of CL 90 quicklime and 876 L of water',
    run: () => paste(309, 876, 0.92),
    expected: 1000,
    tolerance: 50,
    unit: 'L',
    why: 'quantities for one cubic metre that hold about 3 % of allowance',
  },
  {
    id: 'putty-andalusia',
    source: 'Junta de Andalucía, Base de Costes de la Construcción 2024',
    locator: 'item AGK00100',
    basis: 'read',
    input: '397 kg of CL 90 quicklime and 793 L of water',
    run: () => paste(397, 793, 0.92),
    expected: 1000,
    tolerance: 130,
    unit: 'L',
    why: 'its solids and free water fill 0.87 to 0.91 m³ only; the item does not close on volume',
  },
  {
    id: 'putty-per-quicklime-spain',
    source: 'La cal aérea en pasta (sobrelacal.wordpress.com)',
    locator: '400 to 550 kg of quicklime for one cubic metre of putty',
    basis: 'read',
    input: 'quicklime of 92 % behind 1000 L of putty of 1.35 kg/L',
    run: () =>
      value(convertLime({ amount: 1000, unit: 'L', state: 'putty', properties: GOOD })).states[
        'lump-quicklime'
      ]?.massKg.typical ?? Number.NaN,
    ...within(400, 550),
    unit: 'kg',
    why: 'inside the printed range',
  },
]
