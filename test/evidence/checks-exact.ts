import {
  estimateExactIncidence,
  estimateKaplanMeier,
  exactQuantileOf,
  type Step,
  type Timed,
  testLogRank,
} from '#lib/evidence/index.ts'
import type { OutsideCheck } from '../mortar/check.ts'
import { GLIOMA, MAINTAINED, NOT_MAINTAINED, PLACEBO, SIX_MP, TEN, TWENTY, TWO_ARMS, timed } from './data.ts'

const FREIREICH = 'Freireich et al. 1963, as in Gehan 1965'
const AML = 'Miller 1997, aml data'
const SAVED = 'R survival, saved output doaml.Rout.save'
const RUN = 'R 4.2.2, survival 3.5-3'
const SCIPY = 'SciPy 1.17.1 test_survival.py'

const at = (walls: readonly Timed[], time: number): Step => {
  const step = estimateKaplanMeier(walls).findLast((each) => each.time <= time)
  if (step === undefined) throw new Error(`no step by ${time}`)
  return step
}
const number = (x: number | null | undefined) => x ?? Number.NaN
const groupsOf = (...arms: readonly (readonly Timed[])[]) =>
  arms.flatMap((arm, i) => arm.map((wall) => ({ ...wall, group: `${i}` })))
const logRank = (...arms: readonly (readonly Timed[])[]) => {
  const found = testLogRank(groupsOf(...arms))
  if (found === null) throw new Error('nothing to compare')
  return found
}

type Known = Omit<OutsideCheck, 'unit' | 'input'> & { readonly input?: string }
const check = (known: Known): OutsideCheck => ({ unit: '1', input: 'the data of that source', ...known })

/** A curve as printed: time, share, error, and limits where given. */
const curve = (
  name: string,
  walls: readonly Timed[],
  from: Pick<OutsideCheck, 'source' | 'locator' | 'basis' | 'tolerance' | 'why'>,
  rows: readonly (readonly [time: number, ...figures: (number | undefined)[]])[],
): OutsideCheck[] =>
  rows.flatMap(([time, ...figures]) =>
    (['survival', 'error', 'low', 'high'] as const).flatMap((field, k) => {
      const expected = figures[k]
      if (expected === undefined) return []
      return [
        check({
          ...from,
          id: `${name}-${time}-${field}`,
          run: () => number(at(walls, time)[field]),
          expected,
        }),
      ]
    }),
  )

const six = { tolerance: 1e-6, why: 'six decimals printed' }
const four = { tolerance: 6e-5, why: 'four decimals printed' }
const three = { tolerance: 6e-4, why: 'three decimals printed' }

const CURVES: readonly OutsideCheck[] = [
  ...curve(
    '6mp',
    SIX_MP,
    { source: FREIREICH, locator: `${RUN}, log-log limits`, basis: 'computed', ...six },
    [
      [6, 0.857143, 0.0763604, 0.619718, 0.951552],
      [7, 0.806723, 0.0869353, 0.563147, 0.922809],
      [10, 0.752941, 0.0963497, 0.5032, 0.889362],
      [13, 0.690196, 0.1068147, 0.43161, 0.849066],
      [16, 0.627451, 0.1140539, 0.367511, 0.804912],
      [22, 0.537815, 0.1282338, 0.267779, 0.746791],
      [23, 0.448179, 0.1345915, 0.188052, 0.680143],
    ],
  ),
  ...curve('placebo', PLACEBO, { source: FREIREICH, locator: RUN, basis: 'computed', ...six }, [
    [3, 0.761905],
    [5, 0.571429],
    [8, 0.380952],
    [12, 0.190476],
    [22, 0.047619],
    [23, 0],
  ]),
  ...curve(
    'placebo-read',
    PLACEBO,
    { source: FREIREICH, locator: 'data.princeton.edu/eco572/KaplanMeier.html', basis: 'read', ...four },
    [
      [1, 0.9048, 0.0641, 0.67, 0.9753],
      [2, 0.8095, 0.0857, 0.5689, 0.9239],
    ],
  ),
  ...curve('aml', MAINTAINED, { source: AML, locator: SAVED, basis: 'read', ...three, tolerance: 6e-4 }, [
    [9, 0.909, 0.0867],
    [13, 0.818, 0.1163],
    [18, 0.716, 0.1397],
    [23, 0.614, 0.1526],
    [31, 0.491, 0.1642],
    [34, 0.368, 0.1627],
    [48, 0.184, 0.1535],
  ]),
  ...curve('aml-not', NOT_MAINTAINED, { source: AML, locator: SAVED, basis: 'read', ...four }, [
    [5, 0.8333, 0.1076],
    [8, 0.6667, 0.1361],
    [12, 0.5833, 0.1423],
    [23, 0.4861, 0.1481],
    [27, 0.3889, 0.147],
    [30, 0.2917, 0.1387],
    [33, 0.1944, 0.1219],
    [43, 0.0972, 0.0919],
    [45, 0],
  ]),
  ...curve(
    'twenty',
    TWENTY,
    { source: SCIPY, locator: 'log-log limits, from Mathematica', basis: 'read', ...six },
    [
      [1, undefined, undefined, 0.694743, 0.992802],
      [3, undefined, undefined, 0.647529, 0.973299],
      [5, undefined, undefined, 0.591142, 0.947073],
      [14, undefined, undefined, 0.464605, 0.906422],
      [17, undefined, undefined, 0.370359, 0.856521],
      [23, undefined, undefined, 0.160489, 0.776724],
    ],
  ),
  ...curve('twenty', TWENTY, { source: SCIPY, locator: 'twenty subjects', basis: 'read', ...three }, [
    [1, 0.95],
    [3, 0.897],
    [5, 0.844],
    [14, 0.76],
    [17, 0.676],
    [23, 0.507],
  ]),
  ...curve('ten', TEN, { source: SCIPY, locator: 'ten subjects, from R and Matlab', basis: 'read', ...six }, [
    [47, 0.875],
    [56, 0.75],
    [77, 0.5],
    [80, 0.25],
    [81, 0],
  ]),
  ...curve(
    'hand',
    timed('1 2 2+ 3 4+ 5 5 6+ 8 10+'),
    { source: 'ten walls by hand', locator: RUN, basis: 'computed', ...six },
    [
      [1, 0.9, 0.094868],
      [2, 0.8, 0.126491],
      [3, 0.685714, 0.151494],
      [5, 0.411429, 0.17559],
      [8, 0.205714, 0.169903],
    ],
  ),
]

const median = (walls: readonly Timed[], share = 0.5) => exactQuantileOf(estimateKaplanMeier(walls), share)
const EXACT = { tolerance: 0, why: 'a day of the data' }
const MEDIANS: readonly OutsideCheck[] = [
  {
    id: '6mp-median',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(SIX_MP).to,
    expected: 23,
  },
  {
    id: '6mp-median-low',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(SIX_MP).low,
    expected: 13,
  },
  {
    id: 'placebo-median',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(PLACEBO).to,
    expected: 8,
  },
  {
    id: 'placebo-median-low',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(PLACEBO).low,
    expected: 4,
  },
  {
    id: 'placebo-median-high',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(PLACEBO).high,
    expected: 11,
  },
  {
    id: '6mp-quarter',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(SIX_MP, 0.25).to,
    expected: 13,
  },
  {
    id: 'placebo-quarter',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(PLACEBO, 0.25).to,
    expected: 4,
  },
  {
    id: 'placebo-three-quarters',
    source: FREIREICH,
    basis: 'computed' as const,
    run: () => median(PLACEBO, 0.75).to,
    expected: 12,
  },
  { id: 'aml-median', source: AML, basis: 'read' as const, run: () => median(MAINTAINED).to, expected: 31 },
  {
    id: 'aml-median-low',
    source: AML,
    basis: 'computed' as const,
    run: () => median(MAINTAINED).low,
    expected: 13,
  },
  {
    id: 'aml-not-median',
    source: AML,
    basis: 'read' as const,
    run: () => median(NOT_MAINTAINED).to,
    expected: 23,
  },
  {
    id: 'aml-not-median-low',
    source: AML,
    basis: 'computed' as const,
    run: () => median(NOT_MAINTAINED).low,
    expected: 5,
  },
  {
    id: 'aml-not-median-high',
    source: AML,
    basis: 'computed' as const,
    run: () => median(NOT_MAINTAINED).high,
    expected: 33,
  },
].map(({ run, basis, ...known }) =>
  check({
    ...EXACT,
    ...known,
    basis,
    locator: basis === 'read' ? SAVED : `${RUN}, log-log limits`,
    run: () => number(run()),
  }),
)

const THREE_ARMS = [timed('3 5 5+ 8 9+ 12'), timed('4 6 6 7+ 10 11+'), timed('2 2+ 5 8 13 15+')] as const

const RANKS: readonly OutsideCheck[] = [
  check({
    id: '6mp-log-rank',
    source: FREIREICH,
    locator: 'public course notes printing survdiff',
    basis: 'quoted',
    run: () => logRank(SIX_MP, PLACEBO).chiSquare,
    expected: 16.8,
    tolerance: 0.051,
    why: 'one decimal printed',
  }),
  check({
    id: '6mp-log-rank-p',
    source: FREIREICH,
    locator: 'public course notes printing survdiff',
    basis: 'quoted',
    run: () => logRank(SIX_MP, PLACEBO).p,
    expected: 4.17e-5,
    tolerance: 6e-8,
    why: 'three digits printed',
  }),
  check({
    id: '6mp-log-rank-more',
    source: FREIREICH,
    locator: RUN,
    basis: 'computed',
    run: () => logRank(SIX_MP, PLACEBO).chiSquare,
    expected: 16.792940989,
    tolerance: 1e-8,
    why: 'more digits; the shortcut over E gives 15.23',
  }),
  check({
    id: '6mp-expected',
    source: FREIREICH,
    locator: RUN,
    basis: 'computed',
    run: () => number(logRank(SIX_MP, PLACEBO).groups[0]?.expected),
    expected: 19.25050095,
    tolerance: 1e-7,
    why: 'eight decimals',
  }),
  check({
    id: 'aml-log-rank',
    source: AML,
    locator: SAVED,
    basis: 'read',
    run: () => logRank(MAINTAINED, NOT_MAINTAINED).chiSquare,
    expected: 3.4,
    tolerance: 0.051,
    why: 'one decimal printed',
  }),
  check({
    id: 'aml-expected',
    source: AML,
    locator: SAVED,
    basis: 'read',
    run: () => number(logRank(MAINTAINED, NOT_MAINTAINED).groups[0]?.expected),
    expected: 10.69,
    tolerance: 0.006,
    why: 'two decimals printed',
  }),
  check({
    id: 'aml-log-rank-p',
    source: AML,
    locator: RUN,
    basis: 'computed',
    run: () => logRank(MAINTAINED, NOT_MAINTAINED).p,
    expected: 0.065339322,
    tolerance: 1e-8,
    why: 'nine decimals',
  }),
  check({
    id: 'two-arms',
    source: SCIPY,
    locator: 'two arms of ten, figures from R',
    basis: 'read',
    run: () => logRank(...TWO_ARMS).chiSquare,
    expected: 6.91598157449,
    tolerance: 1e-9,
    why: 'eleven decimals printed',
  }),
  check({
    id: 'two-arms-p',
    source: SCIPY,
    locator: 'two arms of ten, figures from R',
    basis: 'read',
    run: () => logRank(...TWO_ARMS).p,
    expected: 0.008542873404,
    tolerance: 1e-10,
    why: 'twelve decimals printed',
  }),
  check({
    id: 'glioma',
    source: 'Bland and Altman 2004, BMJ 328:1073',
    locator: 'SciPy 1.17.1 test_survival.py',
    basis: 'quoted',
    run: () => logRank(...GLIOMA).chiSquare,
    expected: 7.49659416854,
    tolerance: 1e-9,
    why: 'eleven decimals printed',
  }),
  check({
    id: 'glioma-expected',
    source: 'Bland and Altman 2004, BMJ 328:1073',
    locator: RUN,
    basis: 'computed',
    run: () => number(logRank(...GLIOMA).groups[0]?.expected),
    expected: 22.481,
    tolerance: 6e-4,
    why: 'three decimals',
  }),
  check({
    id: 'three-arms',
    source: 'three arms of six',
    locator: `${RUN}, survdiff`,
    basis: 'computed',
    run: () => logRank(...THREE_ARMS).chiSquare,
    expected: 0.278683863636,
    tolerance: 1e-10,
    why: 'two degrees of freedom, ties across arms',
  }),
  check({
    id: 'three-arms-p',
    source: 'three arms of six',
    locator: `${RUN}, survdiff`,
    basis: 'computed',
    run: () => logRank(...THREE_ARMS).p,
    expected: 0.869930520673,
    tolerance: 1e-10,
    why: 'the same',
  }),
]

const TWELVE = 'a1 b2 2 a3 4 a5 b5 6 b8 a10 11 b12'.split(' ').map((word) => {
  const cause = /^[ab]/.test(word) ? word.slice(0, 1) : null
  return { time: Number(word.replace(/^[ab]/, '')), cause }
})
const incidence = (cause: string, time: number) => {
  const step = estimateExactIncidence(TWELVE, cause).find((each) => each.time === time)
  if (step === undefined) throw new Error(`no step at ${time}`)
  return step
}
const INCIDENCE = (
  [
    ['a', 3, 0.17592592593, 0.113328778],
    ['a', 5, 0.28174603175, 0.139510854],
    ['a', 10, 0.41402116402, 0.163785784],
    ['b', 5, 0.18915343915, 0.121804641],
    ['b', 8, 0.32142857143, 0.156564138],
    ['b', 12, 0.58597883598, 0.163785784],
  ] as const
).flatMap(([cause, time, share, error]) => {
  const from = {
    source: 'twelve walls, two causes',
    locator: `${RUN}, multi-state survfit`,
    basis: 'computed' as const,
  }
  return [
    check({
      ...from,
      id: `incidence-${cause}-${time}`,
      run: () => incidence(cause, time).share,
      expected: share,
      tolerance: 1e-10,
      why: 'Aalen and Johansen',
    }),
    check({
      ...from,
      id: `incidence-${cause}-${time}-error`,
      run: () => incidence(cause, time).error,
      expected: error,
      tolerance: 1e-9,
      why: 'its error, nine decimals',
    }),
  ]
})

export const EXACT_CHECKS: readonly OutsideCheck[] = [...CURVES, ...MEDIANS, ...RANKS, ...INCIDENCE]
