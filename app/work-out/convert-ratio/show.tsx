import { LIME_STATES } from '#lib/entry/terms.ts'
import type { IngredientInput } from '#lib/mortar/ingredient.ts'
import type { Proportions } from '#lib/mortar/proportions.ts'
import type { Range } from '#lib/mortar/range.ts'
import type { RestatedIngredient } from '#lib/mortar/restate.ts'
import { Composition, compositionSays, drawnFrom } from '../../_ui/drawings/composition.tsx'
import { compositionOf } from '../../_ui/drawings/composition-numbers.ts'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { formatTyped } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'
import type { Converted } from './calculation.ts'

/** The mortar in the measure that is wanted, then in every state of its lime. */
export function show(
  { restated, proportions, ingredients }: Converted,
  given: Given,
  data: BenchData,
): Shown {
  const t = words('workOut')
  const [lime, ...others] = restated
  if (!lime) return { blocks: [], steps: [] }
  const material = (name: string) =>
    data.materials[given.choice(name, Object.keys(data.materials))]?.label ?? ''
  const named = (one: RestatedIngredient) =>
    t(one.by === 'volume' ? 'convertRatio.inVolume' : 'convertRatio.inMass', {
      material: material(one.material),
      state: termLabel(data, 'measured-states', one.state),
    })
  const states = LIME_STATES.flatMap((state) => proportions.states[state] ?? [])
  const blocks: Block[] = [
    {
      kind: 'figures',
      name: 'wanted',
      title: t('convertRatio.wantedTitle'),
      lead: t('convertRatio.wantedLead', { lime: named(lime) }),
      figures: others.map((one) => ({
        name: one.material,
        label: named(one),
        value: one.parts,
        unit: '1',
        as: 'ratio',
      })),
    },
    {
      kind: 'note',
      text: t('convertRatio.turnNote'),
      link: { href: turnedRound(restated, given), words: t('convertRatio.turn') },
    },
    {
      kind: 'table',
      name: 'states',
      title: t('convertRatio.everyState'),
      columns: [
        { key: 'state', head: t('convertRatio.limeAs') },
        { key: 'dry', head: t('convertRatio.fillDry') },
        { key: 'damp', head: t('convertRatio.fillDamp') },
        { key: 'share', head: t('convertRatio.limeShare') },
      ],
      stack: true,
      bars: 'dry',
      rows: states.map((one) => ({
        name: one.state,
        cells: {
          state: termLabel(data, 'measured-states', one.state),
          dry: ratio(one.aggregateDry),
          damp: ratio(one.aggregateDamp),
          share: { value: one.limePercent, unit: '%' },
        },
      })),
    },
    { kind: 'note', text: t('convertRatio.dampNote') },
    ...drawn(proportions, ingredients, material, data),
  ]
  return { blocks, steps: proportions.steps }
}

/** The mix by volume in every state of its lime. */
function drawn(
  proportions: Proportions,
  ingredients: readonly IngredientInput[],
  materialLabel: (name: string) => string,
  data: BenchData,
): Block[] {
  const props = {
    lines: compositionOf(proportions, ingredients),
    stateLabel: (state: string) => termLabel(data, 'measured-states', state),
    materialLabel,
  }
  if (props.lines.length === 0) return []
  return [
    {
      kind: 'drawing',
      name: 'composition',
      title: words('workOut')('drawings.composition.title'),
      says: compositionSays(props),
      draw: <Composition {...props} />,
      drawn: drawnFrom(props),
    },
  ]
}

const ratio = (value: Range | null) => ({ value, unit: '1', as: 'ratio' }) as const

/** The page with the answer as its question: what comes back is the ratio one began with, with a wider range. */
function turnedRound(restated: readonly RestatedIngredient[], given: Given): string {
  const [lime, sand, other] = restated
  const query = new URLSearchParams({ units: given.system })
  const choices = ['lime', 'sand', 'other'] as const
  for (const name of choices) query.set(name, given.chosen(name))
  query.set('state', lime?.state ?? '')
  query.set('by', lime?.by ?? '')
  query.set('sand-state', sand?.state ?? '')
  query.set('lime-parts', '1')
  if (sand) query.set('sand-parts', partsText(sand.parts))
  if (other) query.set('other-parts', partsText(other.parts))
  const from = given.chosen('state')
  query.set('to-state', LIME_STATES.find((state) => state === from) ?? 'putty')
  query.set('to-sand', given.chosen('sand-state') === 'dry' ? 'dry' : 'damp')
  query.set('to-by', given.chosen('by'))
  return `/work-out/convert-ratio?${query}`
}

const partsText = ({ typical }: Range) => formatTyped(Number(typical.toPrecision(3)))
