import { type Agreement, cohenKappa, fleissKappa } from '#lib/evidence/index.ts'
import type { OutsideCheck } from '../mortar/check.ts'
import { DIAGNOSES } from './data.ts'

const STATSMODELS = 'statsmodels test_inter_rater.py'

const figures = (
  name: string,
  found: () => Agreement | null,
  from: Pick<OutsideCheck, 'source' | 'locator' | 'basis' | 'tolerance' | 'why'>,
  expected: Partial<Record<keyof Agreement, number>>,
): OutsideCheck[] =>
  Object.entries(expected).map(([field, value]) => ({
    ...from,
    id: `${name}-${field}`,
    input: 'the table of that source',
    run: () => found()?.[field as keyof Agreement] ?? Number.NaN,
    expected: value,
    unit: '1',
  }))

const SAS = [
  [0, 4, 1],
  [0, 8, 0],
  [0, 1, 5],
]
const FOURTEEN_RATERS = [
  [0, 0, 0, 0, 14],
  [0, 2, 6, 4, 2],
  [0, 0, 3, 5, 6],
  [0, 3, 9, 2, 0],
  [2, 2, 8, 1, 1],
  [7, 7, 0, 0, 0],
  [3, 2, 6, 3, 0],
  [2, 5, 3, 2, 2],
  [6, 5, 2, 1, 0],
  [0, 2, 2, 3, 7],
]
/** Two of three raters of anxiety in R's irr data, steps 1 to 6; irr leaves out step 4, which neither used. */
const [SECOND, THIRD] = ['36462424332333221334', '21443216111233113322']
const ANXIETY = [1, 2, 3, 4, 5, 6].map((one) =>
  [1, 2, 3, 4, 5, 6].map(
    (other) => [...(SECOND ?? '')].filter((s, i) => Number(s) === one && Number(THIRD?.[i]) === other).length,
  ),
)

const four = { tolerance: 6e-5, why: 'four decimals printed' }

export const AGREEMENT_CHECKS: readonly OutsideCheck[] = [
  ...figures(
    'textbook',
    () =>
      cohenKappa([
        [20, 5],
        [10, 15],
      ]),
    {
      source: 'textbook table 20, 5 / 10, 15',
      locator: 'statsmodels 0.13.5 and R psych 2.2.9',
      basis: 'computed',
      ...four,
    },
    { kappa: 0.4, agreed: 0.7, byChance: 0.5, error: 0.127, low: 0.1511, high: 0.6489 },
  ),
  ...figures(
    'margins-one',
    () =>
      cohenKappa([
        [45, 15],
        [25, 15],
      ]),
    { source: 'same agreement, other margins', locator: 'statsmodels 0.13.5', basis: 'computed', ...four },
    { agreed: 0.6, kappa: 0.1304 },
  ),
  ...figures(
    'margins-two',
    () =>
      cohenKappa([
        [25, 35],
        [5, 35],
      ]),
    { source: 'same agreement, other margins', locator: 'statsmodels 0.13.5', basis: 'computed', ...four },
    { agreed: 0.6, kappa: 0.2593 },
  ),
  ...figures(
    'sas',
    () => cohenKappa(SAS),
    { source: STATSMODELS, locator: 'three classes, figures from SAS', basis: 'read', ...four },
    { kappa: 0.4842, error: 0.138, low: 0.2137, high: 0.7547, z: 3.2626 },
  ),
  ...figures(
    'sas-linear',
    () => cohenKappa(SAS, 'linear'),
    {
      source: STATSMODELS,
      locator: 'three classes, linear weights, figures from SAS',
      basis: 'read',
      ...four,
    },
    { kappa: 0.4701, error: 0.1457, low: 0.1845, high: 0.7558 },
  ),
  ...figures(
    'sas-quadratic',
    () => cohenKappa(SAS, 'quadratic'),
    { source: STATSMODELS, locator: 'the same table in statsmodels 0.13.5', basis: 'computed', ...four },
    { kappa: 0.4502 },
  ),
  ...figures(
    'anxiety',
    () => cohenKappa(ANXIETY),
    {
      source: 'R irr, anxiety data',
      locator: STATSMODELS,
      basis: 'quoted',
      tolerance: 6e-7,
      why: 'seven digits',
    },
    { kappa: -0.006289308, z: -0.0604067 },
  ),
  ...figures(
    'fourteen',
    () => fleissKappa(FOURTEEN_RATERS),
    {
      source: STATSMODELS,
      locator: 'ten subjects, fourteen raters',
      basis: 'read',
      tolerance: 6e-4,
      why: 'three decimals',
    },
    { kappa: 0.21 },
  ),
  ...figures(
    'fourteen-parts',
    () => fleissKappa(FOURTEEN_RATERS),
    {
      source: STATSMODELS,
      locator: 'the same table by hand',
      basis: 'derived',
      tolerance: 6e-7,
      why: 'six decimals',
    },
    { agreed: 0.378022, byChance: 0.212755, kappa: 0.209931 },
  ),
  ...figures(
    'diagnoses',
    () => fleissKappa(DIAGNOSES),
    {
      source: 'Fleiss 1971, 30 patients, six raters',
      locator: `R irr, in ${STATSMODELS}`,
      basis: 'quoted',
      tolerance: 6e-6,
      why: 'as printed',
    },
    { kappa: 0.4302445, z: 17.65183 },
  ),
]
