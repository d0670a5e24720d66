import type { SampleAnalysis } from '#lib/mortar/sample.ts'
import { rankNearest } from '#lib/mortar/sample-nearest.ts'
import { ratioText } from '../../_ui/ratio-text.ts'
import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Figure, Shown } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** As many as fit into one look. */
const MOST_NEAR = 8

/** Proportions in every state of the lime, what they rest on, and what the site holds that lies near. */
export function show(found: SampleAnalysis, _: Given, data: BenchData): Shown {
  const t = words('workOut')
  return {
    steps: found.steps,
    blocks: [
      { kind: 'notice', tone: 'hazard', text: t('sample.acid') },
      {
        kind: 'table',
        name: 'ratios',
        title: t('sample.results.ratios'),
        lead: t('sample.results.ratiosLead'),
        stack: true,
        bars: 'volume',
        columns: [
          { key: 'state', head: t('sample.results.state'), words: true },
          { key: 'volume', head: t('sample.results.byVolume') },
          { key: 'mass', head: t('sample.results.byMass') },
          { key: 'share', head: t('sample.results.share') },
        ],
        rows: found.ratios.map(({ state, byVolume, byMass, limePercent }) => ({
          name: state,
          cells: {
            state: termLabel(data, 'measured-states', state),
            volume: { value: byVolume, unit: '1', as: 'ratio' },
            mass: { value: byMass, unit: '1', as: 'ratio' },
            share: { value: limePercent, unit: '%' },
          },
        })),
      },
      { kind: 'figures', name: 'sample', title: t('sample.results.inSample'), figures: figuresOf(found) },
      {
        kind: 'table',
        name: 'doubts',
        title: t('sample.results.doubts'),
        lead: t('sample.results.doubtsLead'),
        stack: true,
        columns: [
          { key: 'doubt', head: t('sample.results.doubt'), words: true },
          { key: 'effect', head: t('sample.results.effect'), words: true },
        ],
        rows: found.doubts.map((doubt) => ({
          name: doubt,
          cells: { doubt: t(`sample.doubts.${doubt}`), effect: t(`sample.effects.${doubt}`) },
        })),
      },
      ...nearest(found, data),
      { kind: 'notice', tone: 'note', text: t('sample.eyeFirst') },
    ],
  }
}

function figuresOf({ hydrateG, caoG, carbonation, aggregateG, clayPercent }: SampleAnalysis): Figure[] {
  const t = words('workOut')
  const grams = (name: 'hydrate' | 'cao' | 'aggregate', value: SampleAnalysis['caoG']): Figure => ({
    name,
    label: t(`sample.results.${name}`),
    value,
    unit: 'g',
    bench: true,
  })
  const percent = {
    low: carbonation.low * 100,
    typical: carbonation.typical * 100,
    high: carbonation.high * 100,
  }
  return [
    grams('hydrate', hydrateG),
    grams('cao', caoG),
    grams('aggregate', aggregateG),
    { name: 'carbonation', label: t('sample.results.carbonation'), value: percent, unit: '%' },
    ...(clayPercent
      ? [{ name: 'clay', label: t('sample.results.clay'), value: clayPercent, unit: '%' } as const]
      : []),
  ]
}

/** Rows and recipes in order of likeness; a page without them leaves this out. */
function nearest({ ratios }: SampleAnalysis, { held, terms }: BenchData): Block[] {
  if (!held || held.length === 0) return []
  const t = words('workOut')
  const near = rankNearest(ratios, held).slice(0, MOST_NEAR)
  const label = (state: string) => terms['measured-states']?.[state] ?? state
  return [
    {
      kind: 'links',
      title: t('sample.near.title'),
      lead: t(near.some(({ overlaps }) => overlaps) ? 'sample.near.lead' : 'sample.near.none'),
      links: near.flatMap(({ id, leanness }) => {
        const one = held.find((row) => row.id === id)
        if (!one) return []
        const note = t(`sample.near.${likeness(leanness)}`, {
          ratio: ratioText(one.aggregatePerLime),
          state: label(one.state),
          times: formatNumber(leanness < 1 ? 1 / leanness : leanness, 1),
        })
        return [
          {
            href: one.href,
            words: one.label,
            note: one.invented ? t('sample.near.invented', { note }) : note,
          },
        ]
      }),
    },
  ]
}

/** Within a twentieth the difference is less than any measuring box can tell. */
const likeness = (leanness: number) =>
  Math.abs(Math.log(leanness)) < 0.05 ? 'same' : leanness < 1 ? 'richer' : 'leaner'
