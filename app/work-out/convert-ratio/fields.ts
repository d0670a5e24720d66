import { LIME_STATES, type LimeState, MEASURES } from '#lib/entry/terms.ts'
import { bulkPropertyOf } from '#lib/mortar/ingredient.ts'
import type { Typed } from '../../_http/form.ts'
import { chosenIn, type FieldAsked } from '../../_ui/workshop/asked.ts'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import { materialOptions } from '../../_ui/workshop/options.ts'
import { ownFigures } from '../../_ui/workshop/own-figures.ts'
import { words } from '../../_words/index.ts'

/** States that a ratio may have been measured in; the last three leave something open. */
export const FROM_STATES = [
  ...LIME_STATES,
  'slaked-not-stated',
  'quicklime-not-stated',
  'not-stated',
] as const
export const SAND_STATES = ['dry', 'damp', 'not-stated'] as const
/** What a third part may be. */
export const OTHER_ROLES = ['aggregate', 'earth', 'pozzolan', 'cement', 'gypsum'] as const

/** The mortar as it is stated, how it is wanted, and figures of one's own. */
export function fieldsOf(typed: Typed, data: BenchData): FieldAsked[] {
  const t = words('workOut')
  const stateLabel = (state: string) => ({ value: state, label: termLabel(data, 'measured-states', state) })
  const ids = Object.keys(data.materials)
  const lime = data.materials[chosenIn(typed, 'lime', ids, 'lime-fat')]
  const sand = data.materials[chosenIn(typed, 'sand', ids, 'sand-sharp')]
  const other = chosenIn(typed, 'other', ids, '')
  const from = chosenIn(typed, 'state', FROM_STATES, 'putty')
  const to = chosenIn<LimeState>(typed, 'to-state', LIME_STATES, 'dry-hydrate')
  const stated = t('convertRatio.stated')
  const wanted = t('convertRatio.wanted')
  const own = t('convertRatio.ownGroup')
  const measures = MEASURES.map((by) => ({ value: by, label: t(`convertRatio.by.${by}`) }))
  const parts = { kind: 'amount', unit: '1', limits: { above: 0, max: 1e6 }, group: stated } as const
  return [
    {
      kind: 'choice',
      name: 'lime',
      label: t('convertRatio.lime'),
      group: stated,
      options: materialOptions(data, ['lime']),
      first: 'lime-fat',
    },
    {
      kind: 'choice',
      name: 'state',
      label: t('convertRatio.state'),
      hint: t('convertRatio.stateHint'),
      group: stated,
      options: FROM_STATES.map(stateLabel),
      first: 'putty',
    },
    {
      ...parts,
      name: 'lime-parts',
      path: 'ingredients.0.parts',
      label: t('convertRatio.limeParts'),
      example: 1,
    },
    {
      kind: 'choice',
      name: 'sand',
      label: t('convertRatio.sand'),
      group: stated,
      options: materialOptions(data, ['aggregate']),
      first: 'sand-sharp',
    },
    {
      kind: 'choice',
      name: 'sand-state',
      label: t('convertRatio.sandState'),
      group: stated,
      options: SAND_STATES.map(stateLabel),
      first: 'damp',
    },
    {
      ...parts,
      name: 'sand-parts',
      path: 'ingredients.1.parts',
      label: t('convertRatio.sandParts'),
      example: 3,
    },
    {
      kind: 'choice',
      name: 'by',
      label: t('convertRatio.measured'),
      group: stated,
      options: measures,
      first: 'volume',
    },
    {
      kind: 'choice',
      name: 'other',
      label: t('convertRatio.other'),
      group: stated,
      options: [{ value: '', label: t('convertRatio.none') }, ...materialOptions(data, OTHER_ROLES)],
      first: '',
      leads: true,
    },
    ...(other === ''
      ? []
      : [
          {
            ...parts,
            name: 'other-parts',
            path: 'ingredients.2.parts',
            label: t('convertRatio.otherParts'),
            example: 1,
          },
        ]),
    {
      kind: 'choice',
      name: 'to-state',
      path: 'as.limeState',
      label: t('convertRatio.toState'),
      group: wanted,
      options: LIME_STATES.map(stateLabel),
      first: 'dry-hydrate',
    },
    {
      kind: 'choice',
      name: 'to-sand',
      label: t('convertRatio.toSand'),
      group: wanted,
      options: (['dry', 'damp'] as const).map(stateLabel),
      first: 'damp',
    },
    {
      kind: 'choice',
      name: 'to-by',
      label: t('convertRatio.toBy'),
      group: wanted,
      options: measures,
      first: 'volume',
    },
    ...ownFigures('lime', lime, limeProperties(from, to), own),
    ...ownFigures('sand', sand, SAND_PROPERTIES, own),
  ]
}

export const SAND_PROPERTIES = ['bulkDensity', 'bulkingPeak'] as const

/** Free lime, and the bulk densities of the lime in the state it is measured in and in the one wanted. */
export const limeProperties = (from: string, to: LimeState) =>
  [
    'freeCaO',
    ...new Set(LIME_STATES.filter((state) => state === from || state === to).map(bulkPropertyOf)),
  ] as const
