import { bulkPropertyOf } from '#lib/mortar/ingredient.ts'
import type { LimeState } from '#lib/mortar/lime.ts'
import type { Typed } from '../../_http/form.ts'
import { type AmountAsked, chosenIn, type FieldAsked, practice } from '../../_ui/workshop/asked.ts'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { ownFigures } from '../../_ui/workshop/own-figures.ts'
import { words } from '../../_words/index.ts'

/** Quicklime comes in lumps or ground. */
export const STATES = ['lump-quicklime', 'ground-quicklime'] as const satisfies readonly LimeState[]

type Label = 'quicklime' | 'water' | 'sand' | 'moisture' | 'water-c' | 'heap-c'

/** The batch, its temperatures, and figures of one's own lime. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const state = chosenIn<(typeof STATES)[number]>(typed, 'state', STATES, 'lump-quicklime')
  const lime = data.materials[chosenIn(typed, 'lime', Object.keys(data.materials), 'lime-cl90')]
  const figure = (name: Label, unit: string, path: string): AmountAsked => ({
    kind: 'amount',
    name,
    path,
    label: t(`slaking.fields.${name}`),
    hint: t(`slaking.hints.${name}`),
    unit,
    group: t('slaking.batch'),
  })
  return [
    {
      kind: 'choice',
      name: 'lime',
      label: t('slaking.fields.lime'),
      group: t('slaking.batch'),
      options: materialOptions(data, ['lime']),
      first: 'lime-cl90',
    },
    {
      kind: 'choice',
      name: 'state',
      label: t('slaking.fields.state'),
      group: t('slaking.batch'),
      options: STATES.map((value) => ({ value, label: termLabel(data, 'measured-states', value) })),
      first: 'lump-quicklime',
    },
    { ...figure('quicklime', 'kg', 'quicklimeKg'), example: 25, limits: { above: 0, max: 1e5 } },
    { ...figure('water', 'L', 'waterKg'), liquid: true, example: 60, limits: { min: 0, max: 1e6 } },
    { ...figure('sand', 'kg', 'sandKg'), usual: practice(0, 0, 0), limits: { min: 0, max: 1e6 } },
    {
      ...figure('moisture', '%', 'sandMoisturePercent'),
      usual: practice(2, 4, 7),
      limits: { min: 0, max: 100 },
    },
    { ...figure('water-c', 'C', 'waterC'), usual: practice(8, 15, 22) },
    { ...figure('heap-c', 'C', 'sandC'), usual: practice(5, 15, 25) },
    ...ownFigures('lime', lime, limeProperties(state), t('slaking.own')),
  ]
}

/** What the sums need of the lime: free lime, and its bulk densities as it comes and as it is slaked. */
export const limeProperties = (state: (typeof STATES)[number]) =>
  ['freeCaO', bulkPropertyOf(state), 'bulkDensityHydrate', 'puttyDensity'] as const
