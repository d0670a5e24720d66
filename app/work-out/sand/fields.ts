import type { PropertyName } from '#lib/mortar/material.ts'
import type { Typed } from '../../_http/form.ts'
import {
  type AmountAsked,
  chosenIn,
  type FieldAsked,
  practice,
  type Usual,
  usualOf,
} from '../../_ui/workshop/asked.ts'
import type { BenchData } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { words } from '../../_words/index.ts'

/** What is wanted, and from which measurement. */
export const ASKED = [
  'voids-water',
  'voids-densities',
  'bulking-jar',
  'bulking-moisture',
  'moisture',
] as const
export type Asked = (typeof ASKED)[number]

/** The question, then the fields that it needs. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const what = chosenIn<Asked>(typed, 'what', ASKED, 'voids-water')
  const question: FieldAsked = {
    kind: 'choice',
    name: 'what',
    label: t('sand.what'),
    options: ASKED.map((value) => ({ value, label: t(`sand.asked.${value}`) })),
    first: 'voids-water',
    leads: true,
  }
  return [question, ...FIELDS[what](typed, data)]
}

const FIELDS: Readonly<Record<Asked, (typed: Typed, data: BenchData) => FieldAsked[]>> = {
  'voids-water': (_, data) => [
    { ...bench('sand-ml', 'mL', 1000), path: 'sandMl' },
    { ...bench('water-ml', 'mL', 340), path: 'waterMl' },
    limeChoice(data),
  ],
  'voids-densities': (typed, data) => [
    sandChoice(data),
    { ...figure('bulk', 'kg/m3'), path: 'bulkKgM3', usual: ofSand(typed, data, 'bulkDensity') },
    { ...figure('particle', 'kg/m3'), path: 'particleKgM3', usual: ofSand(typed, data, 'particleDensity') },
    limeChoice(data),
  ],
  'bulking-jar': () => [
    { ...figure('damp-mm', 'mm'), path: 'dampMm', example: 200 },
    { ...figure('flooded-mm', 'mm'), path: 'floodedMm', example: 160 },
  ],
  'bulking-moisture': (typed, data) => [
    sandChoice(data),
    { ...figure('moisture', '%'), path: 'moisturePercent', example: 4 },
    { ...figure('peak', '%'), path: 'peakPercent', usual: inPercent(ofSand(typed, data, 'bulkingPeak')) },
    {
      ...figure('peak-at', '%'),
      path: 'peakMoisturePercent',
      usual: inPercent(ofSand(typed, data, 'bulkingPeakMoisture')),
    },
    {
      ...figure('saturation', '%'),
      path: 'saturationPercent',
      usual: inPercent(ofSand(typed, data, 'saturationMoisture')),
    },
  ],
  moisture: () => {
    const t = words('workOut')
    return [
      { ...figure('kg', 'kg'), example: 300 },
      {
        kind: 'choice',
        name: 'weighed',
        label: t('sand.fields.weighed'),
        options: (['damp', 'dry'] as const).map((value) => ({ value, label: t(`sand.weighed.${value}`) })),
        first: 'damp',
      },
      { ...figure('moisture', '%'), path: 'moisturePercent', example: 4 },
      {
        ...figure('absorption', '%'),
        path: 'absorptionPercent',
        usual: practice(0, 1, 2),
      },
    ]
  },
}

type Label =
  | 'sand-ml'
  | 'water-ml'
  | 'bulk'
  | 'particle'
  | 'damp-mm'
  | 'flooded-mm'
  | 'moisture'
  | 'peak'
  | 'peak-at'
  | 'saturation'
  | 'kg'
  | 'absorption'

const HINTED = ['sand-ml', 'water-ml', 'damp-mm', 'flooded-mm', 'moisture', 'absorption'] as const
const isHinted = (name: Label): name is (typeof HINTED)[number] => HINTED.some((one) => one === name)

const figure = (name: Label, unit: string): AmountAsked => ({
  kind: 'amount',
  name,
  label: words('workOut')(`sand.fields.${name}`),
  unit,
  ...(isHinted(name) && { hint: words('workOut')(`sand.hints.${name}`) }),
})

const bench = (name: Label, unit: string, example: number): AmountAsked => ({
  ...figure(name, unit),
  bench: true,
  example,
})

const sandChoice = (data: BenchData): FieldAsked => ({
  kind: 'choice',
  name: 'sand',
  label: words('workOut')('sand.fields.sand'),
  options: materialOptions(data, ['aggregate']),
  first: 'sand-sharp',
})

const limeChoice = (data: BenchData): FieldAsked => ({
  kind: 'choice',
  name: 'lime',
  label: words('workOut')('sand.fields.lime'),
  hint: words('workOut')('sand.hints.lime'),
  options: materialOptions(data, ['lime']),
  first: 'lime-fat',
})

const ofSand = (typed: Typed, data: BenchData, name: PropertyName): Usual | undefined =>
  usualOf(data.materials[chosenIn(typed, 'sand', Object.keys(data.materials), 'sand-sharp')], name)

const inPercent = (usual: Usual | undefined): Usual | undefined =>
  usual && { ...usual, low: usual.low * 100, typical: usual.typical * 100, high: usual.high * 100 }
