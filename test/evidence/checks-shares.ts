import { clopperPearson, shareDifference, wilson } from '#lib/evidence/index.ts'
import type { OutsideCheck } from '../mortar/check.ts'

const NEWCOMBE = 'Newcombe 1998, Stat. Med. 17:857, table I'
const STATSMODELS = 'statsmodels results_proportion.py, from R binom'
const SCIPY_BINOM = 'SciPy 1.17.1 test_morestats.py, R binom.test'
const SCIPY_PROP = 'SciPy 1.17.1 test_morestats.py, R prop.test'

type From = Pick<OutsideCheck, 'source' | 'locator' | 'basis' | 'tolerance' | 'why'>
type Row = readonly [x: number, n: number, low: number, high: number]

const pairs = (
  method: typeof wilson,
  name: string,
  from: From,
  rows: readonly Row[],
  level = 0.95,
): OutsideCheck[] =>
  rows.flatMap(([x, n, low, high]) =>
    (
      [
        ['low', low],
        ['high', high],
      ] as const
    ).map(([end, expected]) => ({
      ...from,
      id: `${name}-${x}-of-${n}-${100 * level}-${end}`,
      input: `${x} of ${n}, ${100 * level} %`,
      run: () => method(x, n, level)?.[end] ?? Number.NaN,
      expected,
      unit: '1',
    })),
  )

const four = { tolerance: 6e-5, why: 'four decimals printed' }
const six = { tolerance: 6e-7, why: 'six decimals printed' }
const seven = { tolerance: 6e-8, why: 'seven decimals printed' }
const read = (source: string, locator: string) => ({ source, locator, basis: 'read' as const })
const computed = (source: string, locator: string) => ({ source, locator, basis: 'computed' as const })

export const SHARE_CHECKS: readonly OutsideCheck[] = [
  ...pairs(
    wilson,
    'newcombe',
    { source: NEWCOMBE, locator: 'as quoted in a public test file', basis: 'quoted', ...four },
    [
      [81, 263, 0.2553, 0.3662],
      [15, 148, 0.0624, 0.1605],
      [0, 20, 0, 0.1611],
      [1, 29, 0.0061, 0.1718],
    ],
  ),
  ...pairs(
    clopperPearson,
    'newcombe-exact',
    { ...computed(NEWCOMBE, 'the same counts in R binom.test and statsmodels 0.13.5'), ...six },
    [
      [81, 263, 0.252737, 0.367622],
      [15, 148, 0.057844, 0.16165],
      [0, 20, 0, 0.168433],
      [1, 29, 0.000873, 0.177644],
    ],
  ),
  ...pairs(wilson, 'sm', { ...read(STATSMODELS, 'wilson'), ...six }, [
    [18, 20, 0.698966, 0.972134],
    [4, 20, 0.080658, 0.416017],
    [4, 200, 0.007804, 0.050287],
    [190, 200, 0.910422, 0.972617],
    [1, 30, 0.005909, 0.166704],
    [29, 30, 0.833296, 0.994091],
    [0, 30, 0, 0.113513],
    [30, 30, 0.886487, 1],
  ]),
  ...pairs(clopperPearson, 'sm-exact', { ...read(STATSMODELS, 'exact'), ...six }, [
    [18, 20, 0.683017, 0.987651],
    [4, 20, 0.057334, 0.436614],
    [4, 200, 0.005476, 0.050414],
    [190, 200, 0.909972, 0.975766],
    [1, 30, 0.000844, 0.172169],
    [29, 30, 0.827831, 0.999156],
    [0, 30, 0, 0.115703],
    [30, 30, 0.884297, 1],
  ]),
  ...pairs(clopperPearson, 'sp-exact', { ...read(SCIPY_BINOM, 'exact'), ...seven }, [
    [20, 100, 0.1266556, 0.2918427],
    [0, 10, 0, 0.3084971],
    [10, 10, 0.6915029, 1],
  ]),
  ...pairs(
    clopperPearson,
    'sp-exact',
    { ...read(SCIPY_BINOM, 'exact, 99 %'), tolerance: 6e-9, why: 'nine decimals printed' },
    [[3, 50, 0.006872485, 0.202706269]],
    0.99,
  ),
  ...pairs(wilson, 'sp', { ...read(SCIPY_PROP, 'wilson'), ...seven }, [
    [0, 10, 0, 0.2775328],
    [10, 10, 0.7224672, 1],
    [3, 10, 0.1077913, 0.6032219],
  ]),
  ...pairs(
    wilson,
    'sp',
    { ...read(SCIPY_PROP, 'wilson, 99 %'), ...seven },
    [[3, 10, 0.0795663, 0.6799753]],
    0.99,
  ),
  ...pairs(wilson, 'small', { ...computed('shares of few', 'R 4.2.2 prop.test'), ...six }, [
    [0, 1, 0, 0.793451],
    [1, 1, 0.206549, 1],
    [0, 5, 0, 0.434482],
    [2, 7, 0.082219, 0.641066],
    [9, 10, 0.59585, 0.982124],
  ]),
  ...pairs(clopperPearson, 'small-exact', { ...computed('shares of few', 'R 4.2.2 binom.test'), ...six }, [
    [0, 1, 0, 0.975],
    [1, 1, 0.025, 1],
    [5, 5, 0.478176, 1],
    [2, 7, 0.036693, 0.709579],
    [9, 10, 0.554984, 0.997471],
  ]),
  ...(
    [
      [56, 70, 48, 80, 0.2, 0.0524, 0.3339],
      [9, 10, 3, 10, 0.6, 0.1705, 0.809],
      [5, 56, 0, 29, 0.0893, -0.0381, 0.1926],
    ] as const
  ).flatMap(([x, n, y, m, difference, low, high]) =>
    Object.entries({ difference, low, high }).map(
      ([field, expected]): OutsideCheck => ({
        id: `difference-${x}-of-${n}-${field}`,
        source: 'Newcombe 1998, Stat. Med. 17:873, table II',
        locator: 'method 10, as quoted in a public test file',
        basis: 'quoted',
        input: `${x} of ${n} less ${y} of ${m}`,
        run: () => shareDifference({ x, n }, { x: y, n: m })?.[field as 'low'] ?? Number.NaN,
        expected,
        unit: '1',
        ...four,
      }),
    ),
  ),
]
