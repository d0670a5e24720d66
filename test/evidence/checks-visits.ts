import { type Counted, estimateTurnbull, type Mass, testIntervals } from '#lib/evidence/index.ts'
import type { OutsideCheck } from '../mortar/check.ts'
import { CHEMOTHERAPY, intervals, RADIATION } from './data.ts'

const COSMESIS = 'Finkelstein and Wolfe 1985, breast cosmesis'
const VIGNETTE = 'Fay and Shaw 2010, J. Stat. Softw. 36(2), and the vignette of R interval'
const NPSURV = 'R 4.2.2, npsurv 0.5-0'

type Known = Omit<OutsideCheck, 'unit' | 'input'>
const check = (known: Known): OutsideCheck => ({ unit: '1', input: 'the data of that source', ...known })

const massIn = (walls: readonly Counted[], from: number, to: number | null): number =>
  estimateTurnbull(walls).masses.find((mass: Mass) => mass.from === from && mass.to === to)?.mass ??
  Number.NaN

const masses = (
  name: string,
  walls: readonly Counted[],
  from: Pick<OutsideCheck, 'source' | 'locator' | 'basis' | 'tolerance' | 'why'>,
  rows: readonly (readonly [from: number, to: number | null, mass: number])[],
): OutsideCheck[] =>
  rows.map(([start, end, expected]) =>
    check({ ...from, id: `${name}-${start}-${end}`, run: () => massIn(walls, start, end), expected }),
  )

const four = { tolerance: 6e-5, why: 'four decimals printed; a loose EM leaves specks elsewhere' }

const TEST = () => {
  const rows = [
    ...RADIATION.map((wall) => ({ ...wall, group: 'radiation' })),
    ...CHEMOTHERAPY.map((wall) => ({ ...wall, group: 'chemotherapy' })),
  ]
  const found = testIntervals(rows, { shuffles: 0 })
  if (found === null) throw new Error('nothing to compare')
  return found
}

export const VISIT_CHECKS: readonly OutsideCheck[] = [
  ...masses('radiation', RADIATION, { source: COSMESIS, locator: VIGNETTE, basis: 'read', ...four }, [
    [4, 5, 0.0463],
    [6, 7, 0.0334],
    [7, 8, 0.0887],
    [11, 12, 0.0708],
    [24, 25, 0.0926],
    [33, 34, 0.0818],
    [38, 40, 0.1209],
    [46, 48, 0.4656],
  ]),
  ...masses('chemotherapy', CHEMOTHERAPY, { source: COSMESIS, locator: VIGNETTE, basis: 'read', ...four }, [
    [4, 5, 0.0433],
    [5, 8, 0.0433],
    [11, 12, 0.0692],
    [16, 17, 0.1454],
    [18, 19, 0.1411],
    [19, 20, 0.1157],
    [24, 25, 0.0999],
    [30, 31, 0.0709],
    [35, 36, 0.1608],
    [44, 48, 0.0552],
    [48, 60, 0.0552],
  ]),
  ...masses(
    'radiation-more',
    RADIATION,
    { source: COSMESIS, locator: NPSURV, basis: 'computed', tolerance: 1e-6, why: 'six decimals' },
    [
      [4, 5, 0.046347],
      [6, 7, 0.033363],
      [7, 8, 0.088667],
      [11, 12, 0.070753],
      [24, 25, 0.092646],
      [33, 34, 0.081786],
      [38, 40, 0.12088],
      [46, 48, 0.465558],
    ],
  ),
  ...(
    [
      ['radiation', RADIATION, -58.06002],
      ['chemotherapy', CHEMOTHERAPY, -65.63696],
      ['pooled', [...RADIATION, ...CHEMOTHERAPY], -136.9638],
    ] as const
  ).map(([name, walls, expected]) =>
    check({
      id: `${name}-likelihood`,
      source: COSMESIS,
      locator: NPSURV,
      basis: 'computed',
      run: () => estimateTurnbull(walls).logLikelihood,
      expected,
      tolerance: 6e-5,
      why: 'log-likelihood as far as it is printed',
    }),
  ),
  check({
    id: 'toy-likelihood',
    source: 'six walls in closed form',
    locator: 'four masses of a quarter: 4 ln ¼ + 2 ln ½',
    basis: 'derived',
    run: () => estimateTurnbull(intervals('0-1 0-5 1-5 5- 5-10 10-')).logLikelihood,
    expected: -6.931471806,
    tolerance: 1e-8,
    why: 'by hand; npsurv gives the same',
  }),
  check({
    id: 'cosmesis-test',
    source: COSMESIS,
    locator: `${VIGNETTE}: permutation log-rank, Sun's scores`,
    basis: 'read',
    run: () => Math.sqrt(TEST().chiSquare),
    expected: 2.6684,
    tolerance: 6e-5,
    why: 'Z as printed, its sign left out',
  }),
  check({
    id: 'cosmesis-test-p',
    source: COSMESIS,
    locator: `${VIGNETTE}: permutation log-rank, Sun's scores`,
    basis: 'read',
    run: () => TEST().p,
    expected: 0.007622,
    tolerance: 6e-7,
    why: 'six decimals printed',
  }),
  check({
    id: 'cosmesis-score',
    source: COSMESIS,
    locator: `${VIGNETTE}: permutation log-rank, Sun's scores`,
    basis: 'read',
    run: () => TEST().groups[0]?.score ?? Number.NaN,
    expected: -9.141846,
    tolerance: 6e-7,
    why: 'six decimals printed; below 0, so later than the others',
  }),
]
