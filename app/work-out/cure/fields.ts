import { COLD_LIMITS } from '#lib/mortar/frost.ts'
import type { Typed } from '../../_http/form.ts'
import {
  type AmountAsked,
  type ChoiceAsked,
  chosenIn,
  type FieldAsked,
  practice,
} from '../../_ui/workshop/asked.ts'
import { words } from '../../_words/index.ts'

/** What is wanted. */
export const ASKED = ['depth', 'frost', 'drying'] as const
export type Asked = (typeof ASKED)[number]
/** Where the coefficient comes from: this site offers none. */
export const KNOWN_FROM = ['measured', 'known'] as const
export const FACES = ['1', '2'] as const
/** Nights colder than this are cold: what sources say, or a figure of one's own. */
export const LIMITS = ['nps-brief-2', 'common', 'own'] as const
/** What hardens it sets how long it must be kept from frost. */
export const HARDENS = ['air', 'water'] as const

/** The question, then the fields that it needs. */
export function fieldsOf(typed: Typed): FieldAsked[] {
  const what = chosenIn<Asked>(typed, 'what', ASKED, 'depth')
  return [{ ...choice('what', ASKED), leads: true }, ...FIELDS[what](typed)]
}

const FIELDS: Readonly<Record<Asked, (typed: Typed) => FieldAsked[]>> = {
  depth: (typed) => [
    { ...choice('from', KNOWN_FROM), leads: true },
    ...(chosenIn(typed, 'from', KNOWN_FROM, 'measured') === 'measured'
      ? [
          { ...figure('measured-depth', 'mm'), example: [4, 6], limits: { above: 0, max: 5000 } } as const,
          { ...figure('measured-age', 'd'), example: 90, limits: { above: 0, max: 400_000 } },
        ]
      : [{ ...figure('k', 'mm/d^0.5'), path: 'kMmPerRootDay', example: [0.4, 0.6] } as const]),
    { ...figure('thickness', 'mm'), path: 'depthMm', example: 25 },
    choice('faces', FACES),
    {
      kind: 'list',
      name: 'ages',
      label: words('workOut')('cure.fields.ages'),
      unit: 'd',
      example: [28, 90, 365, 1825, 3650],
      most: 30,
      limits: { min: 0, max: 400_000 },
    },
  ],
  frost: (typed) => [
    {
      kind: 'list',
      name: 'lows',
      path: 'dailyLowsC',
      label: words('workOut')('cure.fields.lows'),
      hint: words('workOut')('cure.hints.lows'),
      unit: 'C',
      example: [8, 7, 9, 6, 5, 3, 4, 6, 7, -1, 5, 6, 8, 7],
      gaps: true,
      most: 200,
      limits: { min: -90, max: 60 },
    },
    choice('hardens', HARDENS),
    {
      ...figure('protect', 'd'),
      path: 'protectDays',
      usual:
        chosenIn(typed, 'hardens', HARDENS, 'air') === 'air' ? practice(28, 42, 90) : practice(7, 14, 28),
      limits: { min: 1, max: 3650 },
    },
    { ...choice('limit', LIMITS), leads: true },
    ...(chosenIn(typed, 'limit', LIMITS, 'nps-brief-2') === 'own'
      ? [
          {
            ...figure('limit-own', 'C'),
            path: 'coldLimitC',
            single: true,
            example: 5,
            limits: { min: -10, max: 20 },
          },
        ]
      : []),
    {
      ...figure('margin', 'K'),
      path: 'marginK',
      single: true,
      usual: practice(2, 2, 2),
      limits: { min: 0, max: 10 },
    },
  ],
  drying: () => [
    { ...figure('thickness', 'mm'), path: 'thicknessMm', example: 30 },
    { ...figure('density', 'kg/m3'), path: 'densityKgM3', usual: practice(1500, 1700, 1900) },
    { ...figure('wet', '1'), asks: '%', path: 'moistureAtStart', example: [18, 22] },
    { ...figure('dry', '1'), asks: '%', path: 'moistureAtEnd', usual: practice(0.01, 0.02, 0.04) },
    { ...figure('loss', 'kg/(m2.d)'), path: 'lossKgM2Day', example: [0.4, 0.8] },
    choice('faces', FACES),
  ],
}

type Label =
  | 'measured-depth'
  | 'measured-age'
  | 'k'
  | 'thickness'
  | 'protect'
  | 'limit-own'
  | 'margin'
  | 'density'
  | 'wet'
  | 'dry'
  | 'loss'

const HINTED = ['measured-depth', 'k', 'thickness', 'protect', 'margin', 'wet', 'dry', 'loss'] as const
const isHinted = (name: Label): name is (typeof HINTED)[number] => HINTED.some((one) => one === name)

const figure = (name: Label, unit: string): AmountAsked => ({
  kind: 'amount',
  name,
  label: words('workOut')(`cure.fields.${name}`),
  unit,
  ...(isHinted(name) && { hint: words('workOut')(`cure.hints.${name}`) }),
})

type Choice = 'what' | 'from' | 'faces' | 'limit' | 'hardens'

function choice(name: Choice, list: readonly string[]): ChoiceAsked {
  const t = words('workOut')
  const key = (value: string) => `cure.options.${name}.${value}` as 'cure.options.faces.1'
  return {
    kind: 'choice',
    name,
    label: t(`cure.fields.${name}`),
    options: list.map((value) => ({ value, label: t(key(value)) })),
    first: list[0] ?? '',
  }
}

/** The source of a limit, where it has one. */
export const limitSource = (value: string) => COLD_LIMITS.find(({ id }) => id === value)
