import { LIME_STATES, MEASURES } from '#lib/entry/terms.ts'
import type { Typed } from '../../_http/form.ts'
import {
  type ChoiceAsked,
  chosenIn,
  type FieldAsked,
  practice,
  type Usual,
  usualOf,
} from '../../_ui/workshop/asked.ts'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { LIME_FIGURES, ownFigures } from '../../_ui/workshop/own-figures.ts'
import { words } from '../../_words/index.ts'
import { figure } from './figure.ts'

/** Clay in the soil and in what is added, the clay wanted, and loose densities for boxes. */
export const amendFields = (typed: Typed, data: BenchData): FieldAsked[] => {
  const soil = chosen(typed, data, 'soil', 'earth-clayey')
  const addition = chosen(typed, data, 'addition', 'sand-sharp')
  return [
    materialChoice(data, 'soil', ['earth'], 'earth-clayey'),
    { ...figure('clay', '%'), path: 'clayPercent', example: [25, 35], limits: { min: 0, max: 100 } },
    materialChoice(data, 'addition', ['aggregate', 'earth'], 'sand-sharp'),
    {
      ...figure('addition-clay', '%'),
      path: 'additionClayPercent',
      usual: clayOf(usualOf(addition, 'clayFraction')),
      limits: { min: 0, max: 100 },
    },
    {
      ...figure('target', '%'),
      path: 'targetClayPercent',
      single: true,
      example: 15,
      limits: { min: 0, max: 100 },
    },
    {
      ...figure('soil-density', 'kg/m3'),
      path: 'soilDensityKgM3',
      usual: usualOf(soil, 'bulkDensity'),
      limits: { above: 0, max: 5000 },
    },
    {
      ...figure('addition-density', 'kg/m3'),
      path: 'additionDensityKgM3',
      usual: usualOf(addition, 'bulkDensity'),
      limits: { above: 0, max: 5000 },
    },
  ]
}

/** Soil, the dose of lime as it was measured, fibre, and figures of one's own lime. */
export const limeFields = (typed: Typed, data: BenchData): FieldAsked[] => {
  const t = words('workOut')
  const soil = chosen(typed, data, 'soil', 'earth-clayey')
  const lime = chosen(typed, data, 'lime', 'lime-fat')
  return [
    materialChoice(data, 'soil', ['earth'], 'earth-clayey'),
    { ...figure('soil-l', 'L'), path: 'soilL', example: 100, limits: { above: 0, max: 1e6 } },
    {
      ...figure('soil-density', 'kg/m3'),
      path: 'soilDensityKgM3',
      usual: usualOf(soil, 'bulkDensity'),
      limits: { above: 0, max: 5000 },
    },
    materialChoice(data, 'lime', ['lime'], 'lime-fat'),
    {
      kind: 'choice',
      name: 'state',
      label: t('subsoil.choices.state'),
      options: LIME_STATES.map((value) => ({ value, label: termLabel(data, 'measured-states', value) })),
      first: 'dry-hydrate',
    },
    { ...figure('dose', '%'), path: 'percent', example: [5, 8], limits: { above: 0, max: 1000 } },
    {
      kind: 'choice',
      name: 'by',
      label: t('subsoil.choices.by'),
      options: MEASURES.map((value) => ({ value, label: t(`subsoil.by.${value}`) })),
      first: 'volume',
    },
    { ...figure('fibre', 'kg/m3'), path: 'fibreKgM3', optional: true, limits: { min: 0, max: 200 } },
    {
      ...figure('fibre-density', 'kg/m3'),
      path: 'fibreDensityKgM3',
      optional: true,
      limits: { above: 0, max: 2000 },
    },
    ...ownFigures('lime', lime, LIME_FIGURES, t('subsoil.ownLime')),
  ]
}

const chosen = (typed: Typed, data: BenchData, name: string, first: string) =>
  data.materials[chosenIn(typed, name, Object.keys(data.materials), first)]

/** Clay of a material in per cent; clean sand has next to none. */
const clayOf = (share: Usual | undefined): Usual =>
  share
    ? { ...share, low: share.low * 100, typical: share.typical * 100, high: share.high * 100 }
    : practice(0, 1, 2)

const materialChoice = (
  data: BenchData,
  name: 'soil' | 'addition' | 'lime',
  roles: readonly string[],
  first: string,
): ChoiceAsked => ({
  kind: 'choice',
  name,
  label: words('workOut')(`subsoil.choices.${name}`),
  options: materialOptions(data, roles),
  first,
})
