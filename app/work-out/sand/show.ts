import { type BenchData, termLabel } from '../../_ui/workshop/brought.ts'
import type { Given } from '../../_ui/workshop/calculation.ts'
import type { Block, Shown } from '../../_ui/workshop/shown.ts'
import { words } from '../../_words/index.ts'
import type { SandFound } from './calculation.ts'

/** What was found of the sand, and what follows from it. */
export function show(found: SandFound, _: Given, data: BenchData): Shown {
  const t = words('workOut')
  if (found.what === 'bulking')
    return { blocks: bulkingBlocks(found.bulking.value), steps: found.bulking.steps }
  if (found.what === 'moisture') {
    const { dryKg, dampKg, waterKg, freeWaterKg, steps } = found.moist
    const kg = (name: 'dry' | 'damp' | 'water' | 'free', value: typeof dryKg) => ({
      name,
      label: t(`sand.results.${name}`),
      value,
      unit: 'kg',
    })
    return {
      steps,
      blocks: [
        {
          kind: 'figures',
          name: 'weights',
          title: t('sand.results.weights'),
          figures: [kg('dry', dryKg), kg('damp', dampKg), kg('water', waterKg), kg('free', freeWaterKg)],
        },
        { kind: 'note', text: t('sand.results.freeNote') },
      ],
    }
  }
  const { voids, leanest } = found
  return {
    steps: [...voids.steps, ...leanest.flatMap((one) => one.found.steps.slice(1))],
    blocks: [
      {
        kind: 'figures',
        name: 'voids',
        title: t('sand.results.voidsTitle'),
        figures: [{ name: 'voids', label: t('sand.results.voids'), value: voids.value, unit: '%' }],
      },
      {
        kind: 'table',
        name: 'leanest',
        title: t('sand.results.leanest'),
        lead: t('sand.results.leanestLead'),
        columns: [
          { key: 'state', head: t('sand.results.state') },
          { key: 'sand', head: t('sand.results.sand') },
          { key: 'paste', head: t('sand.results.paste') },
        ],
        stack: true,
        bars: 'sand',
        rows: leanest.map((one) => ({
          name: one.state,
          cells: {
            state: termLabel(data, 'measured-states', one.state),
            sand: { value: one.found.value, unit: '1', as: 'ratio' },
            paste: { value: one.paste, unit: '1' },
          },
        })),
      },
      { kind: 'notice', tone: 'note', text: t('sand.results.floor') },
    ],
  }
}

function bulkingBlocks(value: { low: number; typical: number; high: number }): Block[] {
  const t = words('workOut')
  const grown = { low: 1 + value.low / 100, typical: 1 + value.typical / 100, high: 1 + value.high / 100 }
  return [
    {
      kind: 'figures',
      name: 'bulking',
      title: t('sand.results.bulkingTitle'),
      figures: [
        { name: 'bulking', label: t('sand.results.bulking'), value, unit: '%' },
        { name: 'damp-per-dry', label: t('sand.results.dampPerDry'), value: grown, unit: '1' },
      ],
    },
    { kind: 'note', text: t('sand.results.bulkingNote') },
  ]
}
