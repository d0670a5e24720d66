import { FINES_KINDS } from '#lib/mortar/sample.ts'
import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked, practice } from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { LIME_FIGURES, ownFigures } from '../../_ui/workshop/own-figures.ts'
import { words } from '../../_words/index.ts'

/** Was the carbon dioxide measured, or is the carbonation assumed? */
export const CO2 = ['assumed', 'measured'] as const

/** What was weighed, what it is taken to be, and the materials it may have been made of. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const ids = Object.keys(data.materials)
  const lime = data.materials[chosenIn(typed, 'lime', ids, 'lime-fat')]
  const aggregate = data.materials[chosenIn(typed, 'aggregate', ids, 'sand-not-stated')]
  const taken = t('sample.groups.taken')
  const made = t('sample.groups.made')
  const own = t('sample.groups.own')
  return [
    { ...grams('sample-g'), path: 'sampleG', example: 50, limits: { above: 0, max: 1e5 } },
    { ...grams('aggregate-g'), path: 'aggregateG', example: 35.2 },
    { ...grams('fines-g'), path: 'finesG', example: 1.6 },
    { ...grams('balance-g'), path: 'balanceG', usual: practice(0.01, 0.01, 0.01) },
    {
      kind: 'choice',
      name: 'fines',
      label: t('sample.fines'),
      hint: t('sample.finesHint'),
      group: taken,
      options: FINES_KINDS.map((value) => ({ value, label: t(`sample.finesAs.${value}`) })),
      first: 'aggregate',
    },
    {
      kind: 'choice',
      name: 'co2',
      label: t('sample.co2'),
      group: taken,
      options: CO2.map((value) => ({ value, label: t(`sample.co2As.${value}`) })),
      first: 'assumed',
      leads: true,
    },
    chosenIn(typed, 'co2', CO2, 'assumed') === 'measured'
      ? {
          ...figure('co2-g', 'g', taken),
          path: 'co2G',
          bench: true,
          example: 4.6,
          limits: { min: 0, max: 1e5 },
        }
      : { ...share('carbonation', taken), path: 'carbonation', example: [80, 100] },
    {
      ...share('calcareous', taken),
      path: 'calcareousShare',
      example: [0, 4],
      limits: { min: 0, max: 0.95 },
    },
    { ...share('other', taken), path: 'otherSolubleShare', example: [0, 2] },
    {
      kind: 'choice',
      name: 'lime',
      label: t('sample.lime'),
      group: made,
      options: materialOptions(data, ['lime']),
      first: 'lime-fat',
    },
    {
      kind: 'choice',
      name: 'aggregate',
      label: t('sample.aggregate'),
      group: made,
      options: materialOptions(data, ['aggregate', 'earth']),
      first: 'sand-not-stated',
    },
    ...ownFigures('lime', lime, LIME_FIGURES, own),
    ...ownFigures('aggregate', aggregate, ['bulkDensity'], own),
  ]
}

type Label =
  | 'sample-g'
  | 'aggregate-g'
  | 'fines-g'
  | 'balance-g'
  | 'co2-g'
  | 'carbonation'
  | 'calcareous'
  | 'other'

const figure = (name: Label, unit: string, group: string): AmountAsked => ({
  kind: 'amount',
  name,
  label: words('workOut')(`sample.fields.${name}`),
  hint: words('workOut')(`sample.hints.${name}`),
  group,
  unit,
})

const grams = (name: 'sample-g' | 'aggregate-g' | 'fines-g' | 'balance-g'): AmountAsked => ({
  ...figure(name, 'g', words('workOut')('sample.groups.weighed')),
  bench: true,
  single: true,
  limits: { min: 0, max: 1e5 },
})

const share = (name: 'carbonation' | 'calcareous' | 'other', group: string): AmountAsked => ({
  ...figure(name, '1', group),
  asks: '%',
  limits: { min: 0, max: 1 },
})
