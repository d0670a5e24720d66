import { fcnnlsVector } from 'ml-fcnnls'
import { countCarbon } from '#lib/mortar/carbon.ts'
import { CO2_PER_CAO } from '#lib/mortar/carbon-sum.ts'
import { checkCertificate } from '#lib/mortar/certificate.ts'
import type { CertificateItem, LimeClass } from '#lib/mortar/certificate-limits.ts'
import { classifyLime } from '#lib/mortar/chemistry.ts'
import { burnStone } from '#lib/mortar/chemistry-stone.ts'
import { COLD_LIMITS } from '#lib/mortar/frost.ts'
import { exactly } from '#lib/mortar/range.ts'
import { analyseSample } from '#lib/mortar/sample.ts'
import { CAO_PER_HYDRATE, CO2_PER_CACO3 } from '#lib/mortar/sample-sum.ts'
import { gradeSand } from '#lib/mortar/sieve.ts'
import { blendSands } from '#lib/mortar/sieve-blend.ts'
import { GRADING_LIMITS } from '#lib/mortar/sieve-gradings.ts'
import { checkGrading } from '#lib/mortar/sieve-limits.ts'
import { blendToModulus } from '#lib/mortar/sieve-modulus.ts'
import { readHydrometer } from '#lib/mortar/subsoil-hydrometer.ts'
import { effectiveDepthCm, stokesMm } from '#lib/mortar/subsoil-hydrometer-sum.ts'
import { limeOnSoil } from '#lib/mortar/subsoil-lime.ts'
import { readShrinkage } from '#lib/mortar/subsoil-shrinkage.ts'
import { readWetSieve } from '#lib/mortar/subsoil-sieve.ts'
import { waterDensity, waterViscosity } from '#lib/mortar/water-physics.ts'
import { curveOf, grade, limeOf, passingOf } from './analysis-fixtures.ts'
import { type OutsideCheck, value } from './check.ts'

const ASTM = [9.5, 4.75, 2.36, 1.18, 0.6, 0.3, 0.15]
const C144 = ASTM.slice(1)
const modulus = (openings: readonly number[], retained: readonly number[]) =>
  value(gradeSand(grade(openings, retained))).finenessModuli.find((found) => found.set === 'astm-c136')?.value
    .typical ?? Number.NaN

/** FM from the shares that pass the C144 sieves: what the pan keeps is what passes the finest. */
const modulusOfPassing = (passing: readonly number[]) =>
  modulus(C144, [
    ...passing.map((share, i) => (i === 0 ? 100 : (passing[i - 1] ?? 0)) - share),
    passing[5] ?? 0,
  ])

const JOVE = [0, 5, 55, 65, 90, 160, 90, 35]
const SOIL = {
  openings: [4.75, 2, 0.85, 0.425, 0.25, 0.15, 0.075],
  retained: [0, 18.5, 53.2, 90.5, 81.8, 92.2, 58.5, 26.5],
}
const MIXED = [31.5, 16, 8, 4, 2, 1, 0.5, 0.25]
const AGGREGATES = [
  [100, 90, 85, 55, 10, 0, 0, 0],
  [100, 100, 100, 100, 75, 37.5, 12.5, 0],
  [100, 40, 5, 0, 0, 0, 0, 0],
]
const third = (sieve: number) => {
  const blend = value(
    blendSands({
      sands: AGGREGATES.map((passing) => ({ curve: curveOf(MIXED, passing) })),
      target: MIXED.map((openingMm, i) => ({
        openingMm,
        passing: AGGREGATES.reduce((sum, passing) => sum + (passing[i] ?? 0) / 3, 0),
      })),
    }),
  )
  return {
    share: blend.shares[sieve]?.typical ?? Number.NaN,
    retained: 100 - (blend.rows[sieve]?.passing.typical ?? 0),
  }
}

const stone = (clay: number) => value(burnStone(exactly(clay)))

const CLAY_LOAM = {
  massG: 50,
  finesPercent: exactly(100),
  finesOnly: false,
  particleDensityKgM3: exactly(2650),
  // The blank of 2 less the table's temperature correction of 0.7 at 23 °C, which that source adds instead.
  blankGL: exactly(1.3),
  meniscusGL: 0,
  readings: [
    [0.66, 39],
    [2, 33],
    [5, 29],
    [15, 23],
    [30, 22],
    [60, 20],
    [180, 18],
  ].map(([minutes = 0, readingGL = 0]) => ({ minutes, readingGL, celsius: 23 })),
}
const loam = (row: number) => value(readHydrometer(CLAY_LOAM)).points[row]

const calcined = (caoShare: number, mgoShare: number, kilnDustShare = 0) =>
  value(
    countCarbon({
      mortarL: exactly(1000),
      limes: [
        {
          massKg: exactly(1),
          caoShare: exactly(caoShare),
          mgoShare: exactly(mgoShare),
          fuelKgPerKg: exactly(0),
          kilnDustShare: exactly(kilnDustShare),
          distanceKm: exactly(0),
        },
      ],
      others: [],
      transportKgPerTkm: exactly(0),
      uptakeShare: exactly(0),
      kMmPerRootDay: exactly(1),
      depthMm: exactly(10),
      years: [],
    }),
  ).calcination.typical

/** kg of CO2 taken back in the end by a lime of pure CaO, whole. */
const takenBack = (share: number) =>
  value(
    countCarbon({
      mortarL: exactly(1000),
      limes: [
        {
          massKg: exactly(1),
          caoShare: exactly(1),
          mgoShare: exactly(0),
          fuelKgPerKg: exactly(0),
          distanceKm: exactly(0),
        },
      ],
      others: [],
      transportKgPerTkm: exactly(0),
      uptakeShare: exactly(share),
      kMmPerRootDay: exactly(1),
      depthMm: exactly(10),
      years: [50],
    }),
  ).uptake[0]?.takenKg.typical ?? Number.NaN

/** 1 where the result meets the limit, 0 where it breaks it, −1 where it judges nothing. */
const certificate = (limeClass: LimeClass, item: CertificateItem, result: number) => {
  const rows = value(checkCertificate({ class: limeClass, results: { [item]: result } }))
  const outcome = rows.find((row) => row.item === item && row.kind === 'single-result')?.outcome
  return outcome === 'meets' ? 1 : outcome === 'breaks' ? 0 : -1
}

/** A hardened mortar of so much quicklime and sand, dissolved: what the acid leaves of it is the sand. */
const dissolved = (quicklimeKg: number, freeCaO: number, sandKg: number) => {
  const carbonate = (quicklimeKg * freeCaO) / (CO2_PER_CACO3 / CO2_PER_CAO)
  return { sampleG: sandKg + carbonate, aggregateG: sandKg }
}
const ratio = (
  state: string,
  masses: { sampleG: number; aggregateG: number },
  lime = limeOf({}),
  sand = 1600,
) =>
  value(
    analyseSample({
      ...masses,
      finesG: 0,
      fines: 'aggregate',
      calcareousShare: exactly(0),
      carbonation: exactly(1),
      otherSolubleShare: exactly(0),
      lime,
      aggregate: { bulkDensity: { ...exactly(sand), unit: 'kg/m3', basis: 'read' } },
    }),
  ).ratios.find((row) => row.state === state)?.byVolume.typical ?? Number.NaN

const c144 = (passing: readonly number[], kind: 'sieves' | 'gaps') => {
  const limit = GRADING_LIMITS.find((candidate) => candidate.id === 'astm-c144-natural')
  if (limit === undefined) return Number.NaN
  const rows = value(checkGrading(curveOf(C144, passing), limit)).rows
  return rows.filter((row) => (row.fromMm === undefined) === (kind === 'sieves') && row.outcome !== 'within')
    .length
}

const JOVE_SOURCE = 'JoVE Science Education 16872, Fineness modulus'
const DAS = 'B. M. Das, Principles of Geotechnical Engineering, 9th ed.'
const PCA = 'Portland Cement Association, Trowel Tips: Mortar sand, Masonry Magazine, August 1993, p. 17'
const IPCC = 'IPCC 2006 Guidelines, vol. 3, ch. 2 (as quoted by transitionelements.org, E-2A2)'
const ICT = 'International Critical Tables in Encyclopedia of Environmental Science and Engineering, Appendix'
const LSBU = 'M. Chaplin, Water structure and science, data page (London South Bank University)'
const ENVALYSIS = 'Z. Steinmetz, envalysis for R, vignette Particle size estimation (ASTM D422)'
const HANDBOOK = 'US cement handbook, c. 1905 (bookdome.com, Cement-Concrete)'
const SSHADE = 'SSHADE database, fundamental constituents'
const A4 = 'EN 459-1, Annex A, Table A.4'

/** Outside checks of the analytic sums: sieve, sample, chemistry, carbon, frost and subsoil. */
export const ANALYSIS_CHECKS: readonly OutsideCheck[] = [
  {
    id: 'jove-fm',
    source: JOVE_SOURCE,
    locator: 'table of results',
    basis: 'read',
    input: '0/5/55/65/90/160/90/35 g on 3/8 in, No. 4 to 100 and pan',
    run: () => modulus(ASTM, JOVE),
    expected: 2.49,
    tolerance: 0.005,
    unit: '1',
    why: 'Printed to two decimals.',
  },
  {
    id: 'jove-cumulative-no-30',
    source: JOVE_SOURCE,
    locator: 'table of results',
    basis: 'read',
    input: 'the same masses',
    run: () => value(gradeSand(grade(ASTM, JOVE))).rows[4]?.cumulative.typical ?? Number.NaN,
    expected: 43,
    tolerance: 0.001,
    unit: '%',
    why: 'Whole per cents of a 500 g sample.',
  },
  {
    id: 'calcdomain-fm',
    source: 'calcdomain.com, Aggregate gradation',
    locator: 'example of 1000 g',
    basis: 'derived',
    input:
      '20/80/180/260/240/170/50 g on No. 4 to 100 and pan; cumulative 2, 10, 28, 54, 78, 95 add up to 267',
    run: () => modulus(C144, [20, 80, 180, 260, 240, 170, 50]),
    expected: 2.67,
    tolerance: 1e-9,
    unit: '1',
    why: 'Masses read there; the sum of the cumulative column is exact.',
  },
  {
    id: 'fm-ignores-75-um',
    source: 'Dictionary of Construction, Fineness modulus',
    locator: 'definition: No. 100 is the finest counted',
    basis: 'read',
    input: 'the masses of calcdomain-fm with 30 g of the pan caught on No. 200',
    run: () => modulus([...C144, 0.075], [20, 80, 180, 260, 240, 170, 30, 20]),
    expected: 2.67,
    tolerance: 1e-9,
    unit: '1',
    why: 'A finer sieve must not move the modulus.',
  },
  {
    id: 'interview-fm',
    source: 'interviewsolution.com 3750599, fineness modulus of 1000 g of sand',
    locator: 'worked answer',
    basis: 'read',
    input: '0/100/150/200/350/200 g on 4.75 to 0.15 mm',
    run: () => modulus(C144, [0, 100, 150, 200, 350, 200, 0]),
    expected: 2.6,
    tolerance: 1e-9,
    unit: '1',
    why: 'Its cumulative column adds up to 260.',
  },
  {
    id: 'single-size-fm',
    source: 'cejobsolution.blogspot.com, Determination of fineness modulus',
    locator: 'problem 2',
    basis: 'read',
    input: 'all of a sand retained on No. 30',
    run: () => modulus(C144, [0, 0, 0, 100, 0, 0, 0]),
    expected: 3,
    tolerance: 1e-9,
    unit: '1',
    why: 'Three sieves at 100.',
  },
  {
    id: 'fm-ignores-425-um',
    source: 'cejobsolution.blogspot.com, Determination of fineness modulus',
    locator: 'problem 1 with the reader’s correction',
    basis: 'read',
    input: '25 % on each of 0.60, 0.425, 0.30 and 0.15 mm; 0.425 mm is not of the set',
    run: () => modulus([4.75, 2.36, 1.18, 0.6, 0.425, 0.3, 0.15], [0, 0, 0, 25, 25, 25, 25, 0]),
    expected: 2,
    tolerance: 1e-9,
    unit: '1',
    why: 'The printed 1.5 counts neither; the correction to 2.0 below it is right.',
  },
  {
    id: 'c144-finest-fm',
    source: PCA,
    locator: 'Table 1, natural sand, upper limits',
    basis: 'derived',
    input: 'passing 100/100/100/75/35/15 %: (0 + 0 + 0 + 25 + 65 + 85) / 100',
    run: () => modulusOfPassing([100, 100, 100, 75, 35, 15]),
    expected: 1.75,
    tolerance: 1e-9,
    unit: '1',
    why: 'Limits read; one sum.',
  },
  {
    id: 'c144-coarsest-fm',
    source: PCA,
    locator: 'Table 1, natural sand, lower limits',
    basis: 'derived',
    input: 'passing 100/95/70/40/10/2 %: (0 + 5 + 30 + 60 + 90 + 98) / 100',
    run: () => modulusOfPassing([100, 95, 70, 40, 10, 2]),
    expected: 2.83,
    tolerance: 1e-9,
    unit: '1',
    why: 'Limits read; one sum.',
  },
  {
    id: 'c144-middle-within',
    source: PCA,
    locator: 'Table 1, natural sand',
    basis: 'derived',
    input: 'passing 100/98/85/60/22/8 %, inside each limit by hand',
    run: () => c144([100, 98, 85, 60, 22, 8], 'sieves'),
    expected: 0,
    tolerance: 0,
    unit: 'sieves outside',
    why: 'Compared by hand with the six rows.',
  },
  {
    id: 'c144-too-fine',
    source: PCA,
    locator: 'Table 1, natural sand',
    basis: 'derived',
    input: 'passing 100/100/100/80/40/12 %: over at 0.60 and 0.30 mm',
    run: () => c144([100, 100, 100, 80, 40, 12], 'sieves'),
    expected: 2,
    tolerance: 0,
    unit: 'sieves outside',
    why: 'Compared by hand with the six rows.',
  },
  {
    id: 'c144-gap',
    source: 'transcalc.com, AASHTO M 45 / ASTM C144 masonry mortar aggregate',
    locator: 'at most 50 % between consecutive sieves, 25 % between No. 50 and No. 100',
    basis: 'read',
    input: 'passing 100/98/75/40/30/3 %: 27 % between the last two',
    run: () => c144([100, 98, 75, 40, 30, 3], 'gaps'),
    expected: 1,
    tolerance: 0,
    unit: 'rules broken',
    why: 'One gap of 27, all others under 50.',
  },
  ...(
    [
      [1, 95.61],
      [2, 82.98],
      [4, 42.08],
      [5, 20.19],
      [6, 6.3],
    ] as const
  ).map(
    ([row, expected]): OutsideCheck => ({
      id: `das-passing-${row}`,
      source: `${DAS}, sieve problem of ch. 2`,
      locator: `worked answer, row ${row + 1}`,
      basis: 'read',
      input: '0/18.5/53.2/90.5/81.8/92.2/58.5/26.5 g on No. 4, 10, 20, 40, 60, 100, 200, pan',
      run: () => passingOf(value(gradeSand(grade(SOIL.openings, SOIL.retained))), row),
      expected,
      tolerance: 0.02,
      unit: '%',
      why: 'The answer rounds each row before it adds.',
    }),
  ),
  {
    id: 'das-uniformity',
    source: `${DAS}, problem 2.2`,
    locator: 'worked answer',
    basis: 'read',
    input: 'a curve with D10 0.30, D30 0.41, D60 0.77 mm',
    run: () =>
      value(gradeSand(grade([1, 0.77, 0.41, 0.3, 0.15], [0, 40, 30, 20, 10, 0]))).uniformity?.typical ??
      Number.NaN,
    expected: 2.57,
    tolerance: 0.005,
    unit: '1',
    why: 'Printed to two decimals.',
  },
  {
    id: 'blend-lever',
    source: 'curioustab.com 68934, aggregate of FM 2.6 with coarse of 6.8',
    locator: 'the formula of its answer',
    basis: 'read',
    input: 'F1 2.6, F2 6.8, wanted 5.4',
    run: () => 100 * value(blendToModulus(2.6, 6.8, 5.4)),
    expected: 33.333,
    tolerance: 0.001,
    unit: '%',
    why: 'It then chooses ‘30 %’; its own formula gives a third.',
  },
  {
    id: 'blend-thirds-share',
    source: 'wizedu.com 945595, three aggregates in equal shares',
    locator: 'mixture columns',
    basis: 'read',
    input: 'the three gradings, with the equal mixture as the target',
    run: () => 100 * third(1).share,
    expected: 100 / 3,
    tolerance: 0.001,
    unit: '%',
    why: 'The least squares must find the shares that the mixture was made with.',
  },
  {
    id: 'blend-thirds-8-mm',
    source: 'wizedu.com 945595, three aggregates in equal shares',
    locator: 'mixture, cumulative retained, 8 mm',
    basis: 'read',
    input: 'the three gradings, with the equal mixture as the target',
    run: () => third(2).retained,
    expected: 36.67,
    tolerance: 0.005,
    unit: '%',
    why: 'Printed to two decimals.',
  },
  {
    id: 'nnls-scipy-1',
    source: 'SciPy 1.11 reference, scipy.optimize.nnls',
    locator: 'Examples, first system',
    basis: 'read',
    input: 'A = [[1,0],[1,0],[0,1]], b = [2,1,1]',
    run: () =>
      fcnnlsVector(
        [
          [1, 0],
          [1, 0],
          [0, 1],
        ],
        [2, 1, 1],
      ).K.to1DArray()[0] ?? Number.NaN,
    expected: 1.5,
    tolerance: 1e-9,
    unit: '1',
    why: 'The library that we blend with, against Lawson and Hanson’s own code.',
  },
  {
    id: 'nnls-scipy-2',
    source: 'SciPy 1.11 reference, scipy.optimize.nnls',
    locator: 'Examples, second system',
    basis: 'read',
    input: 'the same A, b = [-1,-1,-1]',
    run: () =>
      Math.max(
        ...fcnnlsVector(
          [
            [1, 0],
            [1, 0],
            [0, 1],
          ],
          [-1, -1, -1],
        ).K.to1DArray(),
      ),
    expected: 0,
    tolerance: 1e-12,
    unit: '1',
    why: 'No share below nothing.',
  },
  ...(
    [
      [8, 14],
      [15, 24],
      [19, 30],
      [22, 33],
    ] as const
  ).map(
    ([clay, expected]): OutsideCheck => ({
      id: `candlot-oxides-${clay}`,
      source: HANDBOOK,
      locator: 'Art. 2, Table 1: silica and alumina in the finished product',
      basis: 'read',
      input: `limestone with ${clay} % clay`,
      run: () => stone(clay).oxides.typical,
      expected,
      tolerance: 0.7,
      unit: '%',
      why: 'The table rounds to whole per cents and its author’s clay held some water.',
    }),
  ),
  ...(
    [
      [5, 0.1],
      [8, 0.16],
      [15, 0.31],
      [19, 0.42],
    ] as const
  ).map(
    ([clay, expected]): OutsideCheck => ({
      id: `candlot-index-${clay}`,
      source: HANDBOOK,
      locator: 'Art. 2, Table 1: hydraulic index',
      basis: 'read',
      input: `limestone with ${clay} % clay`,
      run: () => stone(clay).candlotIndex.typical,
      expected,
      tolerance: 0.01,
      unit: '1',
      why: 'Printed to two decimals; 22 % against 0.60 is left out, which no arithmetic reaches.',
    }),
  ),
  {
    id: 'candlot-roman-cement',
    source: 'Encyclopaedia Britannica, 11th ed., Cement',
    locator: 'analysis of Roman cement',
    basis: 'read',
    input: 'SiO2 19.62, Al2O3 10.30, Fe2O3 7.44, CaO 44.54, MgO 2.92, CO2 3.43, SO3 2.61 %',
    run: () => {
      const chemistry = value(
        classifyLime({
          sio2: exactly(19.62),
          al2o3: exactly(10.3),
          fe2o3: exactly(7.44),
          cao: exactly(44.54),
          mgo: exactly(2.92),
          co2: exactly(3.43),
          so3: exactly(2.61),
        }),
      )
      return chemistry.classes.find((found) => found.scheme === 'candlot-index')?.classes.length ?? Number.NaN
    },
    expected: 0,
    tolerance: 0,
    unit: 'lime classes',
    why: 'It is a cement and no lime, so Candlot’s classes of limes must end below it.',
  },
  {
    id: 'limestone-1817',
    source: 'Transactions of the Geological Society, 1st series, vol. 4 (Wikisource)',
    locator: 'p. 443, analysis of a limestone',
    basis: 'read',
    input: 'lime 49.65 %',
    run: () => 49.65 * CO2_PER_CAO,
    expected: 40.1,
    tolerance: 1.3,
    unit: '%',
    why: 'Carbonic acid found by a chemist of 1817; his weights were some 3 % off modern ones.',
  },
  {
    id: 'calcite-co2',
    source: SSHADE,
    locator: 'Calcite, oxides',
    basis: 'read',
    input: 'pure calcite',
    run: () => 100 * CO2_PER_CACO3,
    expected: 43.97,
    tolerance: 0.005,
    unit: '%',
    why: 'Printed to two decimals.',
  },
  {
    id: 'portlandite-cao',
    source: SSHADE,
    locator: 'Portlandite, oxides: H2O 24.31 %',
    basis: 'derived',
    input: 'pure portlandite; the rest is CaO',
    run: () => 100 * CAO_PER_HYDRATE,
    expected: 75.69,
    tolerance: 0.005,
    unit: '%',
    why: 'Its CaO field is misprinted; the water is right.',
  },
  {
    id: 'barrel-sample',
    source: 'Cyclopedia of Architecture, Carpentry and Building, c. 1907',
    locator: '§88 and §93: 230 lb of lump lime to 9 ft³ of paste, with 1 yd³ of sand',
    basis: 'derived',
    input:
      '104.33 kg of pure lime and 764.6 L of sand at 1600 kg/m³, hardened and dissolved; paste at 1354 kg/m³',
    run: () =>
      ratio(
        'putty',
        dissolved(104.33, 1, 764.6 * 1.6),
        limeOf({ freeCaO: 1, puttyDensity: 1354, particleDensityHydrate: 2240 }),
      ),
    expected: 3,
    tolerance: 0.7,
    unit: 'sand per paste',
    why: 'What went in by measure must come back; the paste of pure lime is thinner by density than by their measure, 2.05 against 2.44 L/kg.',
  },
  {
    id: 'mythmix-sample',
    source: 'G. Lynch, The Myth in the Mix, buildingconservation.com',
    locator: 'caption: 1 : 3 quicklime matched by 1 : 2 slaked',
    basis: 'read',
    input: '1 L of lump at 850 kg/m³, 92 % free lime, and 3 L of sand; read back as putty',
    run: () => ratio('putty', dissolved(0.85, 0.92, 3 * 1.6), limeOf({ freeCaO: 0.92 })),
    expected: 2,
    tolerance: 0.3,
    unit: 'sand per slaked lime',
    why: 'A practical match of two mortars to the nearest half measure.',
  },
  {
    id: 'ipcc-cao',
    source: IPCC,
    locator: 'Table 2.4, stoichiometric ratio of high-calcium lime',
    basis: 'quoted',
    input: '1 kg of CaO',
    run: () => calcined(1, 0),
    expected: 0.785,
    tolerance: 0.0005,
    unit: 'kg CO2',
    why: 'Printed to three decimals.',
  },
  {
    id: 'ipcc-dolime',
    source: IPCC,
    locator: 'Table 2.4, stoichiometric ratio of dolomitic lime',
    basis: 'quoted',
    input: '1 kg of CaO·MgO: 0.5818 CaO, 0.4182 MgO',
    run: () => calcined(0.58184, 0.41816),
    expected: 0.913,
    tolerance: 0.0005,
    unit: 'kg CO2',
    why: 'Printed to three decimals.',
  },
  {
    id: 'ipcc-high-calcium',
    source: IPCC,
    locator: 'default factor, high-calcium lime of 95 % oxide',
    basis: 'quoted',
    input: '1 kg of lime, 0.95 CaO',
    run: () => calcined(0.95, 0),
    expected: 0.75,
    tolerance: 0.005,
    unit: 'kg CO2',
    why: 'Printed to two decimals.',
  },
  {
    id: 'ipcc-hydraulic',
    source: IPCC,
    locator: 'default factor, hydraulic lime of 75 % oxide',
    basis: 'quoted',
    input: '1 kg of lime, 0.75 CaO',
    run: () => calcined(0.75, 0),
    expected: 0.59,
    tolerance: 0.005,
    unit: 'kg CO2',
    why: 'Printed to two decimals.',
  },
  {
    id: 'ipcc-tier-2',
    source: IPCC,
    locator: 'Tier 2 with the kiln-dust correction of 1.02',
    basis: 'quoted',
    input: '1 kg of high-calcium lime: 0.785 · 0.95 · 1.02',
    run: () => calcined(0.95, 0, 0.02),
    expected: 0.7607,
    tolerance: 0.0005,
    unit: 'kg CO2',
    why: 'Product of three quoted factors.',
  },
  {
    id: 'uptake-low',
    source: 'Grosso and Campo, Lime based construction materials as a carbon sink, 2022',
    locator: 'carbonation rate of pure air-lime mortars, 80 %',
    basis: 'derived',
    input: '0.80 · 0.785 kg per kg of CaO',
    run: () => takenBack(0.8),
    expected: 0.628,
    tolerance: 0.001,
    unit: 'kg CO2',
    why: 'Product of two read figures.',
  },
  ...(
    [
      [10, 1.3097],
      [20, 1.0087],
      [30, 0.8004],
    ] as const
  ).map(
    ([celsius, expected]): OutsideCheck => ({
      id: `viscosity-ict-${celsius}`,
      source: ICT,
      locator: `Table 2, ${celsius} °C`,
      basis: 'read',
      input: `water at ${celsius} °C`,
      run: () => 1000 * waterViscosity(celsius),
      expected,
      tolerance: 0.012,
      unit: 'mPa·s',
      why: 'A table of 1928; our fit claims about 1 %.',
    }),
  ),
  ...(
    [
      [10, 1.307],
      [20, 1.002],
      [40, 0.653],
    ] as const
  ).map(
    ([celsius, expected]): OutsideCheck => ({
      id: `viscosity-lsbu-${celsius}`,
      source: LSBU,
      locator: `${celsius} °C`,
      basis: 'read',
      input: `water at ${celsius} °C`,
      run: () => 1000 * waterViscosity(celsius),
      expected,
      tolerance: expected / 100,
      unit: 'mPa·s',
      why: 'Our fit claims about 1 %.',
    }),
  ),
  ...(
    [
      [4, 1000],
      [20, 998.23],
      [30, 995.68],
    ] as const
  ).map(
    ([celsius, expected]): OutsideCheck => ({
      id: `density-ict-${celsius}`,
      source: ICT,
      locator: `Table 2, ${celsius} °C`,
      basis: 'read',
      input: `water at ${celsius} °C`,
      run: () => waterDensity(celsius),
      expected,
      tolerance: 0.05,
      unit: 'kg/m3',
      why: 'Printed per cm³ to five decimals, on the old litre (1 part in 36 000).',
    }),
  ),
  {
    id: 'effective-depth-0',
    source: 'B. M. Das, Advanced Soil Mechanics',
    locator: 'eq. 3.29: 16.3 cm at a reading of nothing',
    basis: 'read',
    input: '152H hydrometer, R = 0',
    run: () => effectiveDepthCm(0),
    expected: 16.3,
    tolerance: 1e-9,
    unit: 'cm',
    why: 'The constant of the equation.',
  },
  {
    id: 'effective-depth-derived',
    source: ENVALYSIS,
    locator: 'R/texture.R: 10.5 − 0.164 R + (14 − 67/27.8) / 2',
    basis: 'read',
    input: '152H hydrometer, R = 30',
    run: () => effectiveDepthCm(30),
    expected: 10.5 - 0.164 * 30 + (14 - 67 / 27.8) / 2,
    tolerance: 0.02,
    unit: 'cm',
    why: 'The same instrument from its dimensions.',
  },
  ...(
    [
      [0, 0.05155],
      [2, 0.02019],
      [6, 0.00361],
    ] as const
  ).map(
    ([row, expected]): OutsideCheck => ({
      id: `clay-loam-size-${row}`,
      source: ENVALYSIS,
      locator: `clayloam, particle size, row ${row + 1}`,
      basis: 'read',
      input: '152H readings of a clay loam at 23 °C, 50 g/L, 2650 kg/m³',
      run: () => loam(row)?.sizeMm.typical ?? Number.NaN,
      expected,
      tolerance: expected * 0.02,
      unit: 'mm',
      why: 'It takes the depth from the corrected reading and K from the table of D422; both move the size by about 1 %.',
    }),
  ),
  ...(
    [
      [0, 75.4],
      [3, 43.4],
      [6, 33.4],
    ] as const
  ).map(
    ([row, expected]): OutsideCheck => ({
      id: `clay-loam-finer-${row}`,
      source: ENVALYSIS,
      locator: `clayloam, percent passing, row ${row + 1}`,
      basis: 'read',
      input: '152H readings of a clay loam at 23 °C, 50 g/L, 2650 kg/m³',
      run: () => loam(row)?.finer.typical ?? Number.NaN,
      expected,
      tolerance: 0.05,
      unit: '%',
      why: 'Printed to three decimals of one.',
    }),
  ),
  {
    id: 'stokes-k-23',
    source: ENVALYSIS,
    locator: 'clayloam: size over the root of depth by time, row 1',
    basis: 'derived',
    input: 'K of D422 at 23 °C and 2650 kg/m³: 0.05155 / √(10.112 / 0.66)',
    run: () => stokesMm(10.112, 0.66, 2650, 23),
    expected: 0.05155,
    tolerance: 0.0004,
    unit: 'mm',
    why: 'Stokes’ law itself, apart from how the depth is read.',
  },
  {
    id: 'cob-fines',
    source: 'C. Williams-Ellis, Cottage Building in Cob, Pisé, Chalk and Clay, 2nd ed., 1920',
    locator: 'analyst’s report on old Devon cob',
    basis: 'derived',
    input: 'stones 24.4, coarse and fine sand 52.2, clay 20.6 of 97.2 parts, straw and water left out',
    run: () =>
      value(readWetSieve({ dryG: 97.2, gravelG: 24.4, sandG: 52.2 })).shares.find(
        (row) => row.part === 'fines',
      )?.percent.typical ?? Number.NaN,
    expected: (100 * 20.6) / 97.2,
    tolerance: 0.001,
    unit: '%',
    why: 'What neither sieve keeps must be what the analyst called clay.',
  },
  {
    id: 'shrinkage-bar',
    source: 'IS 2720 part 20, linear shrinkage (as quoted by civilblog.org)',
    locator: 'formula: (1 − dried length / first length) · 100',
    basis: 'derived',
    input: 'a bar of 140 mm dried to 126 mm: a gap of 14 mm',
    run: () =>
      value(readShrinkage({ boxMm: 140, bars: [{ additionPerSoil: 0, gapMm: 14 }], markMm: 0.5 })).bars[0]
        ?.percent.typical ?? Number.NaN,
    expected: 100 * (1 - 126 / 140),
    tolerance: 1e-9,
    unit: '%',
    why: 'Their formula takes lengths, ours the gap.',
  },
  {
    id: 'earth-lime-practice',
    source: 'common practice',
    locator: '1 of slaked lime, state not stated, to 5 of earth; 5 to 10 % of quicklime by mass',
    basis: 'practice',
    input: '1 of dry hydrate at 492 kg/m³ to 5 of dry loose earth at 1250 kg/m³, lime of 92 % free CaO',
    run: () =>
      value(
        limeOnSoil({
          soilL: exactly(500),
          soilDensityKgM3: exactly(1250),
          percent: exactly(20),
          by: 'volume',
          state: 'dry-hydrate',
          lime: limeOf({ freeCaO: 0.92, bulkDensityHydrate: 492 }),
        }),
      ).states.find((row) => row.state === 'ground-quicklime')?.percentByMass.typical ?? Number.NaN,
    expected: 7.5,
    tolerance: 2.5,
    unit: '%',
    why: 'The two ways of saying it should be one; bounds as stated.',
  },
  ...(
    [
      ['CL 90', 'caoMgo', 85, 1],
      ['CL 90', 'caoMgo', 84.9, 0],
      ['CL 70', 'co2', 14.1, 0],
      ['NHL 3.5', 'availableLime', 22, 1],
      ['NHL 5', 'strength28d', 20.1, 0],
      ['HL 5', 'so3', 3.5, 1],
    ] as const
  ).map(
    ([limeClass, item, result, expected]): OutsideCheck => ({
      id: `en-459-${limeClass}-${item}-${result}`,
      source: A4,
      locator: `${limeClass}, ${item}`,
      basis: 'quoted',
      input: `a result of ${result}`,
      run: () => certificate(limeClass, item, result),
      expected,
      tolerance: 0,
      unit: 'meets',
      why: 'On the limit it meets; a tenth beyond it breaks.',
    }),
  ),
  {
    id: 'cold-limit',
    source: 'United States National Park Service, Preservation Brief 2',
    locator: 'wall temperatures of 40 to 95 °F',
    basis: 'derived',
    input: '40 °F',
    run: () => COLD_LIMITS[0].celsius,
    expected: 4.44,
    tolerance: 0.005,
    unit: '°C',
    why: 'The copies print 8 °C, which 40 °F is not.',
  },
]
